package org.thirstline.model.crop;

import org.thirstline.model.units.Bound;

/**
 * Leaf area: grows with thermal time towards what the stand can carry, slowed by lack of water, ages, and is shed in drought and in
 * autumn. Immutable and thread-safe.
 */
public final class CanopyGrowth {

    private final double growthRate;
    private final double lifeSpan;
    private final double droughtLoss;
    private final double droughtOnset;
    private final double autumnLoss;
    private final double emergingLeafAreaM2;
    private final double gramsPerLeafArea;

    /**
     * Creates the process.
     *
     * @param crop the grass
     */
    public CanopyGrowth(CropParameters crop) {
        growthRate = crop.get(CropParameter.LEAF_GROWTH_RATE);
        lifeSpan = crop.get(CropParameter.LEAF_LIFE_SPAN);
        droughtLoss = crop.get(CropParameter.DROUGHT_LEAF_LOSS);
        droughtOnset = crop.get(CropParameter.DROUGHT_LEAF_LOSS_ONSET);
        autumnLoss = crop.get(CropParameter.AUTUMN_LEAF_LOSS);
        emergingLeafAreaM2 = crop.get(CropParameter.EMERGING_LEAF_AREA);
        gramsPerLeafArea = 1000.0 / crop.get(CropParameter.SPECIFIC_LEAF_AREA);
    }

    /** Returns leaf dry matter per leaf area [g m⁻²]. */
    public double gramsPerLeafArea() {
        return gramsPerLeafArea;
    }

    /**
     * Leaf area index of shoots that just emerged.
     *
     * @param shootsM2 shoots [m⁻²]
     * @return [m² m⁻²]
     */
    public double emergingLeafAreaIndex(double shootsM2) {
        return shootsM2 * emergingLeafAreaM2;
    }

    /**
     * Leaf area that temperature and water would let grow in a day. After frost or drought took the leaves, buds start again from the
     * area of newly emerged shoots.
     *
     * @param leafAreaIndex L [m² m⁻²]
     * @param emerging leaf area index of newly emerged shoots [m² m⁻²]
     * @param largest what the stand can carry [m² m⁻²]
     * @param thermalTime of the day [°C d]
     * @param waterFactor of leaf expansion, 0 to 1
     * @return [m² m⁻² d⁻¹], 0 or more
     */
    public double potentialIncrease(
            double leafAreaIndex, double emerging, double largest, double thermalTime, double waterFactor) {
        double room = Bound.notNegative(1.0 - leafAreaIndex / largest);
        return growthRate * thermalTime * Bound.atLeast(leafAreaIndex, emerging) * room * waterFactor;
    }

    /**
     * Share of green leaf that dies in a day of age, drought and autumn.
     *
     * @param thermalTime of the day [°C d]
     * @param waterFactor actual over potential transpiration, 0 to 1
     * @param autumn whether autumn senescence has begun
     * @return 0 to 1
     */
    public double dyingShare(double thermalTime, double waterFactor, boolean autumn) {
        double ageing = thermalTime / lifeSpan;
        double drought = droughtOnset > 0.0 ? droughtLoss * Bound.notNegative(1.0 - waterFactor / droughtOnset) : 0.0;
        return Bound.atMost(ageing + drought + (autumn ? autumnLoss : 0.0), 1.0);
    }
}
