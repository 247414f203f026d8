package org.thirstline.model.soil;

import org.thirstline.model.units.Bound;

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
    private final double[] airWeights;
    private int rooted;
    private double airOfDrySoil;
    private double depthM;
    private double leafSupply = 1.0;

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
        this.airWeights = new double[storage.layers()];
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
        return Bound.share(factor);
    }

    /**
     * Depletion fraction p for a day's demand, FAO-56 p. 162: p = p_table + 0.04 (5 - ET_c), within 0.1 to 0.8.
     *
     * @param tableFraction p at ET_c 5 mm/d
     * @param cropEvapotranspirationMm ET_c [mm/d]
     * @return p
     */
    public static double depletionFraction(double tableFraction, double cropEvapotranspirationMm) {
        return Bound.atLeast(Bound.atMost(tableFraction + 0.04 * (TABLE_ET_MM - cropEvapotranspirationMm), 0.8), 0.1);
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
        rooted = 0;
        airOfDrySoil = 0.0;
        for (int i = 0; i < layers; i++) {
            weights[i] /= sum;
            airWeights[i] = weights[i] / (1000.0 * storage.thicknessM(i));
            airOfDrySoil += airWeights[i] * storage.saturationMm(i);
            rooted = weights[i] > 0.0 ? i + 1 : rooted;
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
        return Bound.atMost(stressIndex(water, 1.0 / (1.0 - depletionFraction)) / criticalIndex, 1.0);
    }

    private double stressIndex(double[] water, double slope) {
        double sum = 0.0;
        for (int i = 0; i < rooted; i++) {
            sum += weights[i] * layerStress(water[i], i, slope);
        }
        return sum;
    }

    /** {@link #waterStressCoefficient} with TAW divided out: share left over (1 - p). */
    private double layerStress(double waterMm, int layer, double slope) {
        return Bound.share(storage.availableShareOfLayer(waterMm, layer) * slope);
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
        return takeUp(potentialMm, depletionFraction, depletionFraction, water);
    }

    /**
     * Takes up a day's transpiration and keeps what leaf growth, which feels drought earlier, finds in the soil before: {@link #leafSupply}.
     *
     * @param potentialMm T_pot [mm/d]
     * @param depletionFraction p of the day
     * @param leafDepletionFraction p of the day for leaf growth
     * @param water water by layer [mm]. Modified.
     * @return transpiration [mm/d]
     */
    public double takeUp(double potentialMm, double depletionFraction, double leafDepletionFraction, double[] water) {
        double slope = 1.0 / (1.0 - depletionFraction);
        double leafSlope = 1.0 / (1.0 - leafDepletionFraction);
        double index = 0.0;
        double leafIndex = 0.0;
        for (int i = 0; i < rooted; i++) {
            double filled = storage.availableShareOfLayer(water[i], i);
            index += weights[i] * Bound.share(filled * slope);
            leafIndex += weights[i] * Bound.share(filled * leafSlope);
        }
        leafSupply = Bound.atMost(leafIndex / criticalIndex, 1.0);
        if (index <= 0.0 || potentialMm <= 0.0) {
            return 0.0;
        }
        return take(potentialMm / Bound.atLeast(index, criticalIndex), slope, water);
    }

    private double take(double perUnit, double slope, double[] water) {
        double sum = 0.0;
        for (int i = 0; i < rooted; i++) {
            double wanted = perUnit * weights[i] * layerStress(water[i], i, slope);
            double taken = Bound.notNegative(Bound.atMost(wanted, water[i] - storage.wiltingMm(i)));
            water[i] -= taken;
            sum += taken;
        }
        return sum;
    }

    /** Returns the share of its full rate at which the soil let leaves grow at the last {@link #takeUp}, 0 to 1. */
    public double leafSupply() {
        return leafSupply;
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
            double taken = Bound.notNegative(Bound.atMost(potentialMm * weights[i], water[i] - storage.wiltingMm(i)));
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
        double air = airOfDrySoil;
        for (int i = 0; i < rooted; i++) {
            air -= airWeights[i] * water[i];
        }
        return Bound.notNegative(air);
    }
}
