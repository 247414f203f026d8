package org.thirstline.model.evapotranspiration;

/** Pressure, humidity and wind, FAO-56 chapter 3 (Allen et al. 1998). Temperatures in °C, pressures in kPa. */
public final class Atmosphere {

    /** Wind below this speed counts as this speed, FAO-56 p. 63 [m/s]. */
    private static final double LOWEST_WIND_M_S = 0.5;

    private Atmosphere() {}

    /**
     * Atmospheric pressure P, FAO-56 eq. 7.
     *
     * @param elevationM z [m]
     * @return P [kPa]
     */
    public static double pressure(double elevationM) {
        return 101.3 * Math.pow((293.0 - 0.0065 * elevationM) / 293.0, 5.26);
    }

    /**
     * Psychrometric constant γ, FAO-56 eq. 8.
     *
     * @param pressureKpa P [kPa]
     * @return γ [kPa °C⁻¹]
     */
    public static double psychrometricConstant(double pressureKpa) {
        return 0.665e-3 * pressureKpa;
    }

    /**
     * Saturation vapour pressure e°(T), FAO-56 eq. 11.
     *
     * @param temperatureC T [°C]
     * @return e° [kPa]
     */
    public static double saturationVapourPressure(double temperatureC) {
        return 0.6108 * Math.exp(17.27 * temperatureC / (temperatureC + 237.3));
    }

    /**
     * Mean saturation vapour pressure e_s of a day, FAO-56 eq. 12.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @return e_s [kPa]
     */
    public static double meanSaturationVapourPressure(double tminC, double tmaxC) {
        return 0.5 * (saturationVapourPressure(tminC) + saturationVapourPressure(tmaxC));
    }

    /**
     * Slope Δ of the saturation vapour pressure curve, FAO-56 eq. 13.
     *
     * @param temperatureC T [°C]
     * @return Δ [kPa °C⁻¹]
     */
    public static double saturationSlope(double temperatureC) {
        double denominator = temperatureC + 237.3;
        return 4098.0 * saturationVapourPressure(temperatureC) / (denominator * denominator);
    }

    /**
     * Actual vapour pressure e_a from wet and dry bulb, FAO-56 eqs 15 and 16.
     *
     * @param dryBulbC dry bulb [°C]
     * @param wetBulbC wet bulb [°C]
     * @param pressureKpa P [kPa]
     * @param psychrometerCoefficient a_psy [°C⁻¹], 0.000662 for an aspirated psychrometer
     * @return e_a [kPa]
     */
    public static double vapourPressureFromWetBulb(
            double dryBulbC, double wetBulbC, double pressureKpa, double psychrometerCoefficient) {
        return saturationVapourPressure(wetBulbC) - psychrometerCoefficient * pressureKpa * (dryBulbC - wetBulbC);
    }

    /**
     * Actual vapour pressure e_a from the extremes of relative humidity, FAO-56 eq. 17.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param humidityMinPct RH_min [%]
     * @param humidityMaxPct RH_max [%]
     * @return e_a [kPa]
     */
    public static double vapourPressureFromHumidity(
            double tminC, double tmaxC, double humidityMinPct, double humidityMaxPct) {
        return 0.5
                * (saturationVapourPressure(tminC) * humidityMaxPct / 100.0
                        + saturationVapourPressure(tmaxC) * humidityMinPct / 100.0);
    }

    /**
     * Actual vapour pressure e_a from mean relative humidity, FAO-56 eq. 19.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param humidityMeanPct RH_mean [%]
     * @return e_a [kPa]
     */
    public static double vapourPressureFromMeanHumidity(double tminC, double tmaxC, double humidityMeanPct) {
        return humidityMeanPct / 100.0 * meanSaturationVapourPressure(tminC, tmaxC);
    }

    /**
     * Wind speed at 2 m u_2 from another height, FAO-56 eq. 47.
     *
     * @param windMs u_z [m/s]
     * @param heightM z [m], above about 0.1
     * @return u_2 [m/s]
     */
    public static double windAtTwoMetres(double windMs, double heightM) {
        return windMs * 4.87 / Math.log(67.8 * heightM - 5.42);
    }

    /**
     * Wind speed as the equations may use it, not below 0.5 m/s (FAO-56 p. 63).
     *
     * @param windMs u_2 [m/s]
     * @return u_2 [m/s]
     */
    public static double usableWind(double windMs) {
        return Math.max(LOWEST_WIND_M_S, windMs);
    }
}
