package org.thirstline.model.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** The soil equations by numbers: worked examples where there are some, else reckoned by hand. */
class SoilEquationsTest {

    private static final Offset<Double> EXACT = within(1.0e-9);

    private static SoilProfile twoLayers() {
        return new SoilProfile(
                List.of(new SoilLayer(0.10, 0.10, 0.30, 0.50, 0.5), new SoilLayer(0.20, 0.10, 0.20, 0.40, 0.5)),
                9.0,
                70.0,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
    }

    /** FAO-56 Examples 32, 33 and 35 (Allen et al. 1998). */
    @Test
    void evaporationCoefficients() {
        assertThat(SurfaceEvaporation.totalEvaporable(0.23, 0.10, 0.1)).isCloseTo(18.0, EXACT);
        assertThat(SurfaceEvaporation.maximumCoefficient(0.9, 0.14, 1.0)).isCloseTo(1.30, within(0.005));
        assertThat(SurfaceEvaporation.maximumCoefficient(1.4, 0.14, 1.0)).isCloseTo(1.45, EXACT);
        assertThat(SurfaceEvaporation.coefficient(1.0, 1.30069, 0.9, 0.47)).isCloseTo(0.40, within(0.005));
        assertThat(SurfaceEvaporation.coefficient(1.0, 1.30069, 0.9, 0.3)).isCloseTo(0.39, within(0.005));
        assertThat(SurfaceEvaporation.reduction(11.229, 9.0, 18.0)).isCloseTo(0.752, within(0.0005));
        assertThat(SurfaceEvaporation.reduction(9.0, 9.0, 18.0)).isEqualTo(1.0);
        assertThat(SurfaceEvaporation.reduction(9.0, 9.0, 9.0)).isEqualTo(1.0);
        assertThat(SurfaceEvaporation.reduction(20.0, 9.0, 18.0)).isZero();
    }

    /** Layer of 30 mm at field capacity, TEW 25, REW 9: 12 mm gone leaves K_r 13/16; half of it is spared by full litter. */
    @Test
    void evaporationOfADay() {
        SurfaceEvaporation surface = new SurfaceEvaporation(twoLayers());
        double bare = 13.0 / 16.0 * (1.2 - 0.2) * 4.0;
        assertThat(surface.daily(18.0, 1.2, 0.2, 1.0, 0.0, 4.0)).isCloseTo(bare, EXACT);
        assertThat(surface.daily(18.0, 1.2, 0.2, 1.0, 1.0, 4.0)).isCloseTo(0.5 * bare, EXACT);
        assertThat(surface.daily(18.0, 1.2, 0.2, 0.25, 0.0, 4.0)).isCloseTo(0.25 * 1.2 * 4.0, EXACT);
        assertThat(surface.daily(40.0, 1.2, 0.2, 1.0, 0.0, 4.0)).isCloseTo(4.0, EXACT);
    }

    /** TR-55 (1986): 6 in on CN 70 give 2.81 in; NEH 630: 5.1 in on CN 75 give 2.53 in; conditions by hand. */
    @Test
    void curveNumbers() {
        assertThat(CurveNumberRunoff.runoffMm(152.4, CurveNumberRunoff.retentionMm(70.0)) / 25.4)
                .isCloseTo(2.81, within(0.005));
        assertThat(CurveNumberRunoff.runoffMm(129.54, CurveNumberRunoff.retentionMm(75.0)) / 25.4)
                .isCloseTo(2.53, within(0.005));
        assertThat(CurveNumberRunoff.runoffMm(10.0, 50.0)).isZero();
        assertThat(CurveNumberRunoff.dryCondition(70.0)).isCloseTo(70.0 / 1.3843, EXACT);
        assertThat(CurveNumberRunoff.wetCondition(70.0)).isCloseTo(70.0 / 0.8281, EXACT);
    }

    @Test
    void theCurveNumberMovesWithWetness() {
        CurveNumberRunoff runoff = new CurveNumberRunoff(70.0);
        double dry = CurveNumberRunoff.dryCondition(70.0);
        double wet = CurveNumberRunoff.wetCondition(70.0);
        assertThat(runoff.daily(80.0, 0.0)).isCloseTo(storm(dry), EXACT);
        assertThat(runoff.daily(80.0, 0.25)).isCloseTo(storm(0.5 * (dry + 70.0)), EXACT);
        assertThat(runoff.daily(80.0, 0.5)).isCloseTo(storm(70.0), EXACT);
        assertThat(runoff.daily(80.0, 0.75)).isCloseTo(storm(0.5 * (wet + 70.0)), EXACT);
        assertThat(runoff.daily(80.0, 1.7)).isCloseTo(storm(wet), EXACT);
        assertThat(runoff.daily(0.0, 1.0)).isZero();
    }

    private static double storm(double curveNumber) {
        return CurveNumberRunoff.runoffMm(80.0, CurveNumberRunoff.retentionMm(curveNumber));
    }

    /** Even roots over 0.3 m: a third in the upper layer, two thirds in the lower. */
    @Test
    void rootsTakeAndBreatheByTheirWeights() {
        LayeredStorage storage = new LayeredStorage(twoLayers());
        RootUptake roots = new RootUptake(storage, 0.0, 1.0);
        roots.setDepth(5.0);
        assertThat(roots.depthM()).isCloseTo(0.3, EXACT);
        double[] water = {20.0, 21.0};
        assertThat(roots.airFilledPorosity(water)).isCloseTo(0.3 / 3.0 + 2.0 / 3.0 * 59.0 / 200.0, EXACT);
        assertThat(roots.takeUnstressed(6.0, water)).isCloseTo(2.0 + 1.0, EXACT);
        assertThat(water).containsExactly(new double[] {18.0, 20.0}, EXACT);
        assertThat(roots.airFilledPorosity(new double[] {60.0, 90.0})).isZero();
    }

    /** With e^(-2 z) the weights are 1 - e^(-0.2) and e^(-0.2) - e^(-0.6), normalized; both layers are unstressed. */
    @Test
    void rootsThinOutWithDepth() {
        LayeredStorage storage = new LayeredStorage(twoLayers());
        RootUptake roots = new RootUptake(storage, 2.0, 1.0);
        roots.setDepth(0.3);
        double[] water = {30.0, 40.0};
        double all = 1.0 - Math.exp(-0.6);
        assertThat(roots.takeUp(3.0, 0.5, water)).isCloseTo(3.0, EXACT);
        assertThat(water[0]).isCloseTo(30.0 - 3.0 * (1.0 - Math.exp(-0.2)) / all, EXACT);
        assertThat(water[1]).isCloseTo(40.0 - 3.0 * (Math.exp(-0.2) - Math.exp(-0.6)) / all, EXACT);
    }

    /** The upper layer holds 0.05 mm above its wilting point: no more than that can be taken from it. */
    @Test
    void nothingIsTakenBelowTheWiltingPoint() {
        LayeredStorage storage = new LayeredStorage(twoLayers());
        RootUptake roots = new RootUptake(storage, 0.0, 0.1);
        roots.setDepth(0.1);
        double[] water = {10.05, 40.0};
        assertThat(roots.takeUp(50.0, 0.8, water)).isCloseTo(0.05, EXACT);
        assertThat(water[0]).isCloseTo(10.0, EXACT);
        assertThat(roots.takeUp(50.0, 0.8, water)).isZero();
    }
}
