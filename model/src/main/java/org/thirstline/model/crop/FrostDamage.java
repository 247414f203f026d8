package org.thirstline.model.crop;

import org.thirstline.model.units.Bound;

/**
 * What frost does: spring frost kills leaf, autumn frost ends the canopy, a frozen rhizome zone kills plants. Ramp and logistic are
 * our reading of the published half-lethal temperatures (Clifton-Brown and Lewandowski 2000, New Phytol. 148:287; Zub and
 * Brancourt-Hulmel 2010, Agron. Sustain. Dev. 30:201). Immutable and thread-safe.
 */
public final class FrostDamage {

    private final double shootHalfLethalC;
    private final double shootHalfRangeC;
    private final double killingFrostC;
    private final double firstWinterHalfLethalC;
    private final double laterHalfLethalC;
    private final double killWidthC;

    /**
     * Creates the process.
     *
     * @param crop the grass
     */
    public FrostDamage(CropParameters crop) {
        shootHalfLethalC = crop.get(CropParameter.SHOOT_LT50);
        shootHalfRangeC = crop.get(CropParameter.SHOOT_FROST_HALF_RANGE);
        killingFrostC = crop.get(CropParameter.KILLING_FROST);
        firstWinterHalfLethalC = crop.get(CropParameter.RHIZOME_LT50_FIRST_WINTER);
        laterHalfLethalC = crop.get(CropParameter.RHIZOME_LT50);
        killWidthC = crop.get(CropParameter.RHIZOME_KILL_WIDTH);
    }

    /**
     * Share of emerged leaf area killed in a spring night.
     *
     * @param tminC night minimum [°C]
     * @return 0 to 1, a ramp centred on the half-lethal temperature
     */
    public double leafKilled(double tminC) {
        double share = (shootHalfLethalC + shootHalfRangeC - tminC) / (2.0 * shootHalfRangeC);
        return Bound.share(share);
    }

    /**
     * Whether a night after midsummer ends the canopy.
     *
     * @param tminC night minimum [°C]
     */
    public boolean endsCanopy(double tminC) {
        return tminC <= killingFrostC;
    }

    /**
     * Share of plants that live through a winter.
     *
     * @param coldestC lowest rhizome-zone temperature of the winter [°C]
     * @param firstWinter whether it is the stand's first
     * @return 0 to 1
     */
    public double winterSurvival(double coldestC, boolean firstWinter) {
        double halfLethal = firstWinter ? firstWinterHalfLethalC : laterHalfLethalC;
        return 1.0 / (1.0 + Math.exp((halfLethal - coldestC) / killWidthC));
    }
}
