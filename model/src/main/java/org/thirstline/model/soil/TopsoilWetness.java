package org.thirstline.model.soil;

/** Available water of the soil down to a fixed depth as a share of its capacity, its sums made ready once. Immutable and thread-safe. */
public final class TopsoilWetness {

    private final double[] weights;
    private final double atWiltingPoint;

    /**
     * Creates the measure.
     *
     * @param storage the soil
     * @param depthM depth [m], above 0
     */
    public TopsoilWetness(LayeredStorage storage, double depthM) {
        int reached = 0;
        double capacity = 0.0;
        for (int i = 0; i < storage.layers(); i++) {
            double share = storage.shareWithin(i, depthM);
            capacity += share * (storage.fieldCapacityMm(i) - storage.wiltingMm(i));
            reached = share > 0.0 ? i + 1 : reached;
        }
        weights = new double[reached];
        double dry = 0.0;
        for (int i = 0; i < reached; i++) {
            weights[i] = storage.shareWithin(i, depthM) / capacity;
            dry += weights[i] * storage.wiltingMm(i);
        }
        atWiltingPoint = dry;
    }

    /**
     * Returns the share.
     *
     * @param water water by layer [mm]. Not modified.
     * @return 0 at the wilting point, 1 at field capacity, above 1 when wetter
     */
    public double of(double[] water) {
        double sum = -atWiltingPoint;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * water[i];
        }
        return sum;
    }
}
