package org.thirstline.model.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RootUptakeTest {

    private static LayeredStorage storage(SoilLayer... layers) {
        return new LayeredStorage(
                new SoilProfile(List.of(layers), 2.0, 60.0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
    }

    private static RootUptake oneLayer(LayeredStorage storage) {
        RootUptake roots = new RootUptake(storage, 1.0, 1.0);
        roots.setDepth(0.3);
        return roots;
    }

    /** Profiles are split, so one layer here is one of 0.1 m and two of 0.1 m at the same water content: the weights cancel. */
    @Test
    void evenlyWetSoilWithoutCompensationIsFao56() {
        LayeredStorage storage = storage(new SoilLayer(0.3, 0.10, 0.25, 0.45, 0.7));
        RootUptake roots = oneLayer(storage);
        Random random = new Random(2);
        for (int i = 0; i < 1000; i++) {
            double depletionShare = random.nextDouble();
            double potential = 10.0 * random.nextDouble();
            double p = RootUptake.depletionFraction(0.55, potential);
            double[] water = new double[storage.layers()];
            double taw = 0.0;
            for (int layer = 0; layer < water.length; layer++) {
                double capacity = storage.fieldCapacityMm(layer) - storage.wiltingMm(layer);
                water[layer] = storage.fieldCapacityMm(layer) - depletionShare * capacity;
                taw += capacity;
            }
            double ks = RootUptake.waterStressCoefficient(depletionShare * taw, taw, p);
            assertThat(roots.supply(water, p)).isCloseTo(ks, within(1e-12));
        }
    }

    @Test
    void aSingleLayerTakesExactlyKsTimesDemand() {
        LayeredStorage storage = storage(new SoilLayer(0.15, 0.10, 0.30, 0.45, 0.7));
        RootUptake roots = new RootUptake(storage, 0.0, 1.0);
        roots.setDepth(0.05);
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        double capacity = storage.fieldCapacityMm(0) - storage.wiltingMm(0);
        water[0] -= 0.75 * capacity;
        double ks = RootUptake.waterStressCoefficient(0.75 * capacity, capacity, 0.5);
        assertThat(roots.takeUp(3.0, 0.5, water)).isCloseTo(3.0 * ks, within(1e-12));
    }

    @Test
    void compensationDrawsOnWetLayers() {
        LayeredStorage storage = storage(new SoilLayer(1.2, 0.10, 0.30, 0.45, 0.7));
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        water[0] = storage.wiltingMm(0);
        water[1] = storage.wiltingMm(1);
        RootUptake compensated = new RootUptake(storage, 1.0, 0.5);
        RootUptake plain = new RootUptake(storage, 1.0, 1.0);
        compensated.setDepth(1.2);
        plain.setDepth(1.2);
        assertThat(plain.supply(water, 0.5)).isLessThan(1.0);
        assertThat(compensated.supply(water, 0.5)).isEqualTo(1.0);
        assertThat(compensated.takeUp(5.0, 0.5, water)).isCloseTo(5.0, within(1e-12));
        assertThat(water[0]).isEqualTo(storage.wiltingMm(0));
    }

    @Test
    void rootsStopAtTheirDepth() {
        LayeredStorage storage = storage(new SoilLayer(1.0, 0.10, 0.30, 0.45, 0.7));
        RootUptake roots = new RootUptake(storage, 1.0, 1.0);
        roots.setDepth(0.4);
        double[] water = new double[storage.layers()];
        storage.fillToFieldCapacity(water);
        double deepest = water[water.length - 1];
        roots.takeUp(8.0, 0.5, water);
        assertThat(water[water.length - 1]).isEqualTo(deepest);
    }

    @Test
    void theDecayPutsTheStatedShareIntoTheTop() {
        double decay = RootUptake.decayForShare(0.30, 1.8);
        double share = Math.expm1(-0.3 * decay) / Math.expm1(-1.8 * decay);
        assertThat(share).isCloseTo(0.30, within(1e-9));
    }

    @Test
    void depletionFractionFollowsDemandWithinItsLimits() {
        assertThat(RootUptake.depletionFraction(0.55, 5.0)).isEqualTo(0.55);
        assertThat(RootUptake.depletionFraction(0.55, 7.5)).isCloseTo(0.45, within(1e-12));
        assertThat(RootUptake.depletionFraction(0.75, 0.0)).isEqualTo(0.8);
        assertThat(RootUptake.depletionFraction(0.15, 9.0)).isEqualTo(0.1);
    }
}
