package org.thirstline.model.crop;

/** What the machine takes and what it leaves. Immutable and thread-safe. */
public final class Cut {

    /** Exponent of stem mass below a relative height; stems taper, so the lowest tenth holds more than a tenth (judgement). */
    private static final double TAPER = 1.5;

    private final double stubbleM;
    private final double pickUpShare;

    /**
     * Creates the process.
     *
     * @param stubbleM height of the cut [m]
     * @param pickUpShare share of the cut dry matter picked up [1]
     */
    public Cut(double stubbleM, double pickUpShare) {
        this.stubbleM = stubbleM;
        this.pickUpShare = pickUpShare;
    }

    /**
     * Dry matter harvested.
     *
     * @param stem standing stem [g m⁻²]
     * @param leaf attached leaf, above the stubble [g m⁻²]
     * @param heightM height of the stand [m]
     * @return [g m⁻²]
     */
    public double harvested(double stem, double leaf, double heightM) {
        double above = heightM > stubbleM ? Math.pow(1.0 - stubbleM / heightM, TAPER) : 0.0;
        return pickUpShare * (stem * above + leaf);
    }
}
