package org.thirstline.model.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class SoilProcessesTest {

    private static final SoilLayer LOAM = new SoilLayer(0.6, 0.14, 0.30, 0.45, 0.7);

    private static SoilProfile profile(double drainageLimit, double waterTable) {
        return new SoilProfile(List.of(LOAM), 9.0, 60.0, drainageLimit, waterTable);
    }

    @Test
    void profilesStartWithTheEvaporatingLayerAndKeepTheirWater() {
        SoilProfile profile = profile(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        assertThat(profile.layers().get(0).thicknessM()).isEqualTo(SoilProfile.EVAPORATING_DEPTH_M);
        assertThat(profile.depthM()).isCloseTo(0.6, within(1e-12));
        assertThat(profile.availableWaterMm()).isCloseTo(0.16 * 600.0, within(1e-9));
    }

    @Test
    void impossibleLayersAreRefused() {
        assertThatThrownBy(() -> new SoilLayer(0.3, 0.35, 0.30, 0.45, 0.7))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(ModelError.VALUES_OUT_OF_ORDER))
                .hasMessageContaining("wilting point");
        assertThatThrownBy(() -> new SoilLayer(0.3, 0.10, 0.30, 0.25, 0.7)).hasMessageContaining("saturation");
        assertThatThrownBy(() -> new SoilProfile(List.of(), 9.0, 60.0, 1.0, 1.0))
                .isInstanceOf(InputException.class);
    }

    @Test
    void waterAboveFieldCapacityDrainsAtTheLayersRate() {
        LayeredStorage storage = new LayeredStorage(profile(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        double drained = storage.infiltrateAndDrain(10.0, water);
        assertThat(drained).isCloseTo(10.0 * Math.pow(0.7, storage.layers()), within(1e-9));
    }

    @Test
    void aRestrictingLayerPerchesWaterAndThenSendsItOff() {
        LayeredStorage storage = new LayeredStorage(profile(1.0, Double.POSITIVE_INFINITY));
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        double room = 0.15 * 600.0;
        double drained = storage.infiltrateAndDrain(200.0, water);
        double surplus = storage.perch(water);
        assertThat(drained).isEqualTo(1.0);
        assertThat(surplus).isCloseTo(200.0 - 1.0 - room, within(1e-9));
        for (int layer = 0; layer < water.length; layer++) {
            assertThat(water[layer]).isCloseTo(storage.saturationMm(layer), within(1e-9));
        }
    }

    @Test
    void aWaterTableKeepsTheLayersBelowItFull() {
        LayeredStorage storage = new LayeredStorage(profile(Double.POSITIVE_INFINITY, 0.3));
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        double before = DoubleStream.of(water).sum();
        double taken = storage.fillFromGroundwater(water);
        assertThat(taken).isGreaterThan(0.0);
        assertThat(DoubleStream.of(water).sum() - before).isCloseTo(taken, within(1e-9));
        assertThat(water[water.length - 1]).isEqualTo(storage.saturationMm(water.length - 1));
        assertThat(water[0]).isEqualTo(storage.fieldCapacityMm(0));
    }

    @Test
    void evaporationStopsAtTheAirDrySoil() {
        SurfaceEvaporation evaporation =
                new SurfaceEvaporation(profile(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
        double airDry = 0.5 * 0.14 * 100.0;
        assertThat(evaporation.daily(airDry + 0.2, 1.2, 0.0, 1.0, 0.0, 8.0)).isLessThanOrEqualTo(0.2 + 1e-12);
        assertThat(evaporation.daily(30.0, 1.2, 0.0, 1.0, 0.0, 5.0)).isCloseTo(6.0, within(1e-9));
        assertThat(evaporation.daily(30.0, 1.2, 0.0, 1.0, 1.0, 5.0)).isCloseTo(3.0, within(1e-9));
        assertThat(evaporation.daily(30.0, 1.2, 1.1, 0.05, 0.0, 5.0)).isLessThan(0.5);
    }

    @Test
    void wetTopsoilRunsOffMore() {
        CurveNumberRunoff runoff = new CurveNumberRunoff(75.0);
        double average = CurveNumberRunoff.runoffMm(80.0, CurveNumberRunoff.retentionMm(75.0));
        assertThat(runoff.daily(80.0, 0.5)).isCloseTo(average, within(1e-9));
        assertThat(runoff.daily(80.0, 0.0)).isLessThan(average);
        assertThat(runoff.daily(80.0, 1.0)).isGreaterThan(average);
        assertThat(runoff.daily(0.0, 1.0)).isZero();
        assertThat(runoff.daily(5.0, 1.0)).isZero();
    }

    @Test
    void snowFallsInTheColdAndMeltsByDegreeDays() {
        assertThat(Snowpack.snowfall(10.0, -3.0)).isEqualTo(10.0);
        assertThat(Snowpack.snowfall(10.0, 1.0)).isEqualTo(5.0);
        assertThat(Snowpack.snowfall(10.0, 4.0)).isZero();
        assertThat(Snowpack.melt(50.0, 5.0)).isCloseTo(13.7, within(1e-9));
        assertThat(Snowpack.melt(2.0, 5.0)).isEqualTo(2.0);
        assertThat(Snowpack.melt(2.0, -5.0)).isZero();
    }

    @Test
    void aerationStressNeedsTimeAndEndsAtOnce() {
        Aeration aeration = new Aeration(0.10, 3.0, 0.6);
        double days = aeration.days(0.0, 0.0);
        assertThat(aeration.factor(0.0, days)).isCloseTo(1.0 - 0.6 / 3.0, within(1e-12));
        days = aeration.days(0.0, aeration.days(0.0, days));
        assertThat(aeration.factor(0.0, days)).isCloseTo(0.4, within(1e-12));
        assertThat(aeration.factor(0.05, days)).isCloseTo(0.7, within(1e-12));
        assertThat(aeration.days(0.2, days)).isZero();
        assertThat(aeration.factor(0.2, 0.0)).isEqualTo(1.0);
    }

    @Test
    void litterCoversAndDecays() {
        Litter litter = new Litter(0.004, 0.0015);
        assertThat(litter.cover(0.0)).isZero();
        assertThat(litter.cover(500.0)).isCloseTo(1.0 - Math.exp(-2.0), within(1e-12));
        assertThat(litter.decayed(1000.0, 2.0)).isCloseTo(3.0, within(1e-12));
    }

    @Test
    void availableWaterCountsPartOfALayer() {
        LayeredStorage storage = new LayeredStorage(profile(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        assertThat(storage.availableShare(water, 0.25)).isCloseTo(1.0, within(1e-12));
        assertThat(storage.shareOfFieldCapacity(water, 0.2)).isCloseTo(1.0, within(1e-12));
        water[0] = storage.wiltingMm(0);
        assertThat(storage.availableShare(water, 0.2)).isCloseTo(0.5, within(1e-12));
        assertThat(new TopsoilWetness(storage, 0.2).of(water)).isCloseTo(0.5, within(1e-12));
        water[1] += 7.0;
        for (double depthM : new double[] {0.05, 0.1, 0.25, 0.6}) {
            assertThat(new TopsoilWetness(storage, depthM).of(water))
                    .isCloseTo(storage.availableShare(water, depthM), within(1e-12));
        }
        water[1] -= 7.0;
        assertThat(storage.depletionMm(water, 0.05)).isCloseTo(0.5 * 16.0, within(1e-9));
    }
}
