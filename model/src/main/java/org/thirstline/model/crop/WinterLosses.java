package org.thirstline.model.crop;

/** What a dead stand loses until it is cut: leaf falls fast, stem tops break slowly, snow breaks more. Immutable and thread-safe. */
public final class WinterLosses {

    /** Water in snow above which a day counts as snowy [mm] (judgement). */
    private static final double SNOWY_MM = 10.0;

    private final double leafFall;
    private final double stemLoss;
    private final double snowLoss;

    /**
     * Creates the process.
     *
     * @param crop the grass
     */
    public WinterLosses(CropParameters crop) {
        leafFall = crop.get(CropParameter.DEAD_LEAF_FALL);
        stemLoss = crop.get(CropParameter.STEM_LOSS);
        snowLoss = crop.get(CropParameter.STEM_LOSS_SNOW);
    }

    /** Returns the share of attached dead leaf that falls in a day [d⁻¹]. */
    public double leafFallShare() {
        return leafFall;
    }

    /**
     * Share of dead stem lost in a day.
     *
     * @param snowWaterMm water held in snow [mm]
     * @return [d⁻¹]
     */
    public double stemLossShare(double snowWaterMm) {
        return stemLoss + (snowWaterMm > SNOWY_MM ? snowLoss : 0.0);
    }
}
