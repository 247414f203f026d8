package org.thirstline.model.evapotranspiration;

import org.thirstline.model.units.FixedPower;
import org.thirstline.model.units.Rise;

/** Crop coefficients of FAO-56 chapters 6 to 9 (Allen et al. 1998). Stateless and thread-safe. */
public final class CropCoefficient {

    /** Extinction in the density form of eq. 97. */
    private static final double DENSITY_EXTINCTION = 0.7;

    /** Power of the height in eqs 62, 70 and 72. */
    private static final FixedPower HEIGHT_POWER = new FixedPower(0.3);

    private CropCoefficient() {}

    /**
     * Climate term 0.04 (u_2 - 2) - 0.004 (RH_min - 45) of FAO-56 eqs 62, 65, 70 and 72.
     *
     * @param windMs u_2 [m/s]
     * @param minimumHumidityPct RH_min [%]
     */
    public static double climateTerm(double windMs, double minimumHumidityPct) {
        return 0.04 * (windMs - 2.0) - 0.004 * (minimumHumidityPct - 45.0);
    }

    /**
     * Factor (h / 3)^0.3 by which a crop's height raises the climate term, FAO-56 eqs 62, 70 and 72.
     *
     * @param heightM h [m]
     */
    public static double heightFactor(double heightM) {
        return HEIGHT_POWER.of(heightM / 3.0);
    }

    /**
     * Crop coefficient in a climate that is not subhumid, FAO-56 eqs 62 and 70.
     *
     * @param tableValue K_c or K_cb of the table, 0.45 or more
     * @param climate {@link #climateTerm}
     * @param heightM h [m]
     */
    public static double inClimate(double tableValue, double climate, double heightM) {
        return tableValue + climate * heightFactor(heightM);
    }

    /**
     * Basal crop coefficient at full cover by height, FAO-56 eq. 101.
     *
     * @param heightM h [m]
     * @return 1.0 + 0.1 h, not above 1.2
     */
    public static double fullCoverByHeight(double heightM) {
        return Math.min(1.2, 1.0 + 0.1 * heightM);
    }

    /**
     * Basal crop coefficient of an incomplete canopy, FAO-56 eq. 97.
     *
     * @param minimum K_c min of bare soil
     * @param full K_cb at full cover
     * @param leafAreaIndex LAI [m² m⁻²]
     */
    public static double fromLeafArea(double minimum, double full, double leafAreaIndex) {
        return minimum + (full - minimum) * Rise.of(DENSITY_EXTINCTION * leafAreaIndex);
    }

    /**
     * Crop coefficient between two stages, FAO-56 eq. 66.
     *
     * @param previous K_c at the end of the previous stage
     * @param next K_c at the beginning of the next stage
     * @param dayInStage days since the previous stage ended [d]
     * @param stageDays length of this stage [d]
     */
    public static double between(double previous, double next, double dayInStage, double stageDays) {
        return previous + dayInStage / stageDays * (next - previous);
    }

    /**
     * Share of soil covered by vegetation f_c, FAO-56 eq. 76.
     *
     * @param basal K_cb
     * @param minimum K_c min
     * @param maximum K_c max
     * @param heightM h [m]
     */
    public static double coverFraction(double basal, double minimum, double maximum, double heightM) {
        double ratio = Math.max(0.01, basal - minimum) / (maximum - minimum);
        return Math.min(0.99, Math.pow(ratio, 1.0 + 0.5 * heightM));
    }
}
