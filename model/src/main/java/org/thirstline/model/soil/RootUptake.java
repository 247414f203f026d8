package org.thirstline.model.soil;

/**
 * Water uptake by roots that thin out exponentially with depth, compensated between layers (Jarvis 1989, J. Hydrol. 107:57-72):
 * T = T_pot min(1, Σ w_i s_i / ω_c), with the layer stress s of FAO-56 eq. 84. One layer with ω_c = 1 is FAO-56's K_s exactly. Confined to
 * one run: it holds the root weights of the current stand.
 */
public final class RootUptake {

    /** ET_c at which depletion fractions are tabulated [mm/d], FAO-56 Table 22. */
    private static final double TABLE_ET_MM = 5.0;

    private final LayeredStorage storage;
    private final double decayPerM;
    private final double criticalIndex;
    private final double[] weights;
    private double depthM;

    /**
     * Creates the process.
     *
     * @param storage the soil
     * @param decayPerM exponential decrease of root density with depth [m⁻¹]
     * @param criticalIndex ω_c, 1 without compensation
     */
    public RootUptake(LayeredStorage storage, double decayPerM, double criticalIndex) {
        this.storage = storage;
        this.decayPerM = decayPerM;
        this.criticalIndex = criticalIndex;
        this.weights = new double[storage.layers()];
    }

    /**
     * Exponential decrease with depth that puts a given share of the roots into the top 0.3 m.
     *
     * @param shareTop share of roots above 0.3 m
     * @param maximumDepthM rooting depth [m], above 0.3
     * @return decay [m⁻¹], 0 or more
     */
    public static double decayForShare(double shareTop, double maximumDepthM) {
        double low = 0.0;
        double high = 50.0;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            double share = Math.expm1(-0.3 * middle) / Math.expm1(-maximumDepthM * middle);
            if (share < shareTop) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /**
     * Water stress coefficient K_s, FAO-56 eq. 84.
     *
     * @param depletionMm D_r at the start of the day [mm]
     * @param totalAvailableMm TAW [mm]
     * @param depletionFraction p
     * @return K_s, 0 to 1
     */
    public static double waterStressCoefficient(double depletionMm, double totalAvailableMm, double depletionFraction) {
        double factor = (totalAvailableMm - depletionMm) / ((1.0 - depletionFraction) * totalAvailableMm);
        return Math.max(0.0, Math.min(1.0, factor));
    }

    /**
     * Depletion fraction p for a day's demand, FAO-56 p. 162: p = p_table + 0.04 (5 - ET_c), within 0.1 to 0.8.
     *
     * @param tableFraction p at ET_c 5 mm/d
     * @param cropEvapotranspirationMm ET_c [mm/d]
     * @return p
     */
    public static double depletionFraction(double tableFraction, double cropEvapotranspirationMm) {
        return Math.max(0.1, Math.min(0.8, tableFraction + 0.04 * (TABLE_ET_MM - cropEvapotranspirationMm)));
    }

    /**
     * Sets the rooting depth of the stand.
     *
     * @param newDepthM depth of uptake [m]; below the profile counts as the profile's depth
     */
    public void setDepth(double newDepthM) {
        int layers = storage.layers();
        depthM = Math.min(newDepthM, storage.bottomM(layers - 1));
        double sum = 0.0;
        for (int i = 0; i < layers; i++) {
            double top = storage.bottomM(i) - storage.thicknessM(i);
            double bottom = Math.min(storage.bottomM(i), depthM);
            weights[i] = bottom > top ? density(bottom) - density(top) : 0.0;
            sum += weights[i];
        }
        for (int i = 0; i < layers; i++) {
            weights[i] /= sum;
        }
    }

    /** Roots between the surface and a depth, not normalized. */
    private double density(double depth) {
        return decayPerM > 0.0 ? -Math.expm1(-decayPerM * depth) : depth;
    }

    /** Returns the current depth of uptake [m]. */
    public double depthM() {
        return depthM;
    }

    /**
     * Share of potential transpiration that the soil can supply, min(1, Σ w_i s_i / ω_c).
     *
     * @param water water by layer [mm]. Not modified.
     * @param depletionFraction p of the day
     * @return 0 to 1
     */
    public double supply(double[] water, double depletionFraction) {
        return Math.min(1.0, stressIndex(water, depletionFraction) / criticalIndex);
    }

    private double stressIndex(double[] water, double depletionFraction) {
        double sum = 0.0;
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] > 0.0) {
                sum += weights[i] * layerStress(water[i], i, depletionFraction);
            }
        }
        return sum;
    }

    private double layerStress(double waterMm, int layer, double depletionFraction) {
        double capacity = storage.fieldCapacityMm(layer) - storage.wiltingMm(layer);
        return waterStressCoefficient(storage.fieldCapacityMm(layer) - waterMm, capacity, depletionFraction);
    }

    /**
     * Takes up a day's transpiration.
     *
     * @param potentialMm T_pot [mm/d]
     * @param depletionFraction p of the day
     * @param water water by layer [mm]. Modified.
     * @return transpiration [mm/d]
     */
    public double takeUp(double potentialMm, double depletionFraction, double[] water) {
        double index = stressIndex(water, depletionFraction);
        if (index <= 0.0 || potentialMm <= 0.0) {
            return 0.0;
        }
        double perUnit = potentialMm / Math.max(index, criticalIndex);
        double sum = 0.0;
        for (int i = 0; i < weights.length; i++) {
            if (weights[i] > 0.0) {
                double wanted = perUnit * weights[i] * layerStress(water[i], i, depletionFraction);
                double taken = Math.max(0.0, Math.min(wanted, water[i] - storage.wiltingMm(i)));
                water[i] -= taken;
                sum += taken;
            }
        }
        return sum;
    }

    /**
     * Takes what roots can reach without regard to stress, for the run with unlimited water.
     *
     * @param potentialMm T_pot [mm/d]
     * @param water water by layer [mm]. Modified.
     * @return what the soil gave [mm/d]; the rest comes from outside
     */
    public double takeUnstressed(double potentialMm, double[] water) {
        double sum = 0.0;
        for (int i = 0; i < weights.length; i++) {
            double taken = Math.max(0.0, Math.min(potentialMm * weights[i], water[i] - storage.wiltingMm(i)));
            water[i] -= taken;
            sum += taken;
        }
        return sum;
    }

    /**
     * Air-filled porosity of the root zone, weighted by roots.
     *
     * @param water water by layer [mm]. Not modified.
     * @return [m³ m⁻³]
     */
    public double airFilledPorosity(double[] water) {
        double sum = 0.0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * (storage.saturationMm(i) - water[i]) / (1000.0 * storage.thicknessM(i));
        }
        return Math.max(0.0, sum);
    }
}
