package org.thirstline.model.soil;

/**
 * Snow on the ground. Precipitation falls as snow by temperature and melts by degree-days: M = C_m (T_a - T_b), NEH 630 chapter 11 (2004).
 * Depends on weather alone, so it is computed once for a series. Stateless and thread-safe.
 */
public final class Snowpack {

    /** Melt factor C_m [mm °C⁻¹ d⁻¹], NEH 630 ch. 11, the default 0.060 in per °F day. */
    public static final double MELT_FACTOR_MM = 2.74;

    /** Base temperature of melt T_b [°C], NEH 630 ch. 11. */
    public static final double MELT_BASE_C = 0.0;

    /** Mean temperature at and below which all precipitation is snow [°C] (common practice, no source). */
    private static final double ALL_SNOW_C = 0.0;

    /** Mean temperature at and above which none is [°C] (common practice, no source). */
    private static final double ALL_RAIN_C = 2.0;

    private Snowpack() {}

    /**
     * Snowfall.
     *
     * @param precipitationMm precipitation [mm/d]
     * @param meanTemperatureC daily mean temperature [°C]
     * @return the part that falls as snow, as water [mm/d]
     */
    public static double snowfall(double precipitationMm, double meanTemperatureC) {
        double share = (ALL_RAIN_C - meanTemperatureC) / (ALL_RAIN_C - ALL_SNOW_C);
        return precipitationMm * Math.max(0.0, Math.min(1.0, share));
    }

    /**
     * Melt.
     *
     * @param snowWaterMm water held in snow [mm]
     * @param meanTemperatureC daily mean temperature T_a [°C]
     * @return melt, not more than there is [mm/d]
     */
    public static double melt(double snowWaterMm, double meanTemperatureC) {
        return Math.min(snowWaterMm, Math.max(0.0, MELT_FACTOR_MM * (meanTemperatureC - MELT_BASE_C)));
    }
}
