package org.thirstline.model.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.thirstline.model.error.InputException;
import org.thirstline.model.evapotranspiration.CropCoefficient;

/** How profiles are cut into layers, scaled and refused; numbers by hand. */
class SoilLimitsTest {

    private static final Offset<Double> EXACT = within(1.0e-12);
    private static final double NONE = Double.POSITIVE_INFINITY;

    private static SoilProfile profile(double... thicknessM) {
        return new SoilProfile(
                Arrays.stream(thicknessM)
                        .mapToObj(thickness -> new SoilLayer(thickness, 0.12, 0.30, 0.45, 0.6))
                        .toList(),
                9.0,
                61.0,
                4.0,
                1.7);
    }

    private static double[] layers(double... thicknessM) {
        return profile(thicknessM).layers().stream()
                .mapToDouble(SoilLayer::thicknessM)
                .toArray();
    }

    /** The evaporating layer of 0.1 m comes first unless less than 5 mm would be left over, and no layer is thicker than 0.3 m. */
    @Test
    void horizonsAreCut() {
        assertThat(layers(0.4)).containsExactly(new double[] {0.1, 0.3}, EXACT);
        assertThat(layers(0.5)).containsExactly(new double[] {0.1, 0.2, 0.2}, EXACT);
        assertThat(layers(0.11, 0.2)).containsExactly(new double[] {0.1, 0.01, 0.2}, EXACT);
        assertThat(layers(0.104, 0.2)).containsExactly(new double[] {0.104, 0.2}, EXACT);
        assertThat(layers(0.06, 0.7)).containsExactly(new double[] {0.06, 0.7 / 3.0, 0.7 / 3.0, 0.7 / 3.0}, EXACT);
    }

    @Test
    void aProfileKeepsWhatItWasGiven() {
        SoilProfile soil = profile(1.0);
        assertThat(soil.readilyEvaporableMm()).isEqualTo(9.0);
        assertThat(soil.curveNumber()).isEqualTo(61.0);
        assertThat(soil.maxDrainageMmPerDay()).isEqualTo(4.0);
        assertThat(soil.waterTableM()).isEqualTo(1.7);
        LayeredStorage storage = new LayeredStorage(soil);
        double[] water = {10.0, 20.0, 30.0, 40.0};
        assertThat(storage.layers()).isEqualTo(4);
        assertThat(storage.total(water)).isEqualTo(100.0);
    }

    /** FAO-56 eq. 73: TEW = 1000 (0.30 - 0.5 x 0.12) 0.1 = 24 mm bounds what evaporates readily. */
    @Test
    void noMoreEvaporatesReadilyThanInAll() {
        List<SoilLayer> horizon = List.of(new SoilLayer(1.0, 0.12, 0.30, 0.45, 0.6));
        assertThat(new SoilProfile(horizon, 23.99, 61.0, NONE, NONE).readilyEvaporableMm())
                .isEqualTo(23.99);
        assertThatThrownBy(() -> new SoilProfile(horizon, 24.01, 61.0, NONE, NONE))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("readily evaporable water");
    }

    /** Available water is scaled from the wilting point up, drainable pores stay as wide; half of it leaves 15 mm to evaporate. */
    @Test
    void availableWaterIsScaled() {
        SoilLayer changed = profile(1.0).withAvailableWaterTimes(0.5).layers().get(1);
        assertThat(changed.wiltingPoint()).isEqualTo(0.12);
        assertThat(changed.fieldCapacity()).isCloseTo(0.21, EXACT);
        assertThat(changed.saturation()).isCloseTo(0.36, EXACT);
        assertThat(profile(1.0).withAvailableWaterTimes(0.5).availableWaterMm()).isCloseTo(90.0, within(1.0e-9));
        // 1000 (0.138 - 0.06) 0.1 = 7.8 mm is less than the 9 mm of before.
        assertThat(profile(1.0).withAvailableWaterTimes(0.1).readilyEvaporableMm())
                .isCloseTo(7.8, within(1.0e-9));
        assertThatThrownBy(() -> profile(1.0).withAvailableWaterTimes(0.01)).hasMessageContaining("factor");
    }

    @Test
    void depthIsScaledBelowTheEvaporatingLayer() {
        SoilProfile deeper = profile(1.0).withDepthTimes(1.9);
        assertThat(deeper.depthM()).isCloseTo(1.9, EXACT);
        assertThat(deeper.layers().get(0).thicknessM()).isEqualTo(0.1);
        assertThat(deeper.readilyEvaporableMm()).isEqualTo(9.0);
        assertThat(profile(1.0).withDepthTimes(0.55).layers().get(1).thicknessM())
                .isCloseTo(0.15, EXACT);
    }

    /** However strong the demand, what the air-dry layer holds stays: half of 12 % of 100 mm. */
    @Test
    void evaporationLeavesTheAirDrySoil() {
        SurfaceEvaporation surface = new SurfaceEvaporation(profile(1.0));
        assertThat(surface.daily(20.0, 1.2, 0.15, 1.0, 0.0, 1000.0)).isCloseTo(14.0, EXACT);
        assertThat(surface.daily(5.0, 1.2, 0.15, 1.0, 0.0, 1000.0)).isZero();
    }

    /** FAO-56 eq. 97: K_cb = K_c min + (K_cb full - K_c min)(1 - exp(-0.7 LAI)). */
    @Test
    void theBasalCoefficientRisesFromThatOfBareSoil() {
        assertThat(CropCoefficient.fromLeafArea(0.15, 1.15, 0.0)).isEqualTo(0.15);
        assertThat(CropCoefficient.fromLeafArea(0.15, 1.15, 2.0)).isCloseTo(0.15 + (1.0 - Math.exp(-1.4)), EXACT);
    }

    @Test
    void texturesThatCannotBeAreRefused() {
        assertThat(TextureEstimate.of(60.0, 40.0, 2.5).wiltingPoint()).isPositive();
        assertThatThrownBy(() -> TextureEstimate.of(60.1, 40.0, 2.5)).hasMessageContaining("exceed 100 %");
        assertThatThrownBy(() -> TextureEstimate.of(100.0, 0.0, 8.5)).hasMessageContaining("organic matter");
    }
}
