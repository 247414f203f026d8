package org.thirstline.model.evapotranspiration;

/** Short- and longwave radiation at the reference surface, FAO-56 eqs 35 to 51 (Allen et al. 1998). Radiation in MJ m⁻² d⁻¹. */
public final class NetRadiation {

    /** Stefan-Boltzmann constant σ [MJ K⁻⁴ m⁻² d⁻¹], FAO-56 eq. 39. */
    static final double STEFAN_BOLTZMANN = 4.903e-9;

    /** Zero of the Celsius scale as FAO-56 eq. 39 has it [K]. */
    private static final double ZERO_CELSIUS_K = 273.16;

    /** Albedo α of the grass reference, FAO-56 eq. 38. */
    private static final double REFERENCE_ALBEDO = 0.23;

    private NetRadiation() {}

    /**
     * Solar radiation R_s from sunshine, FAO-56 eq. 35 with a_s 0.25 and b_s 0.50.
     *
     * @param sunshineHours n [h]
     * @param dayLengthHours N [h]; 0 gives no radiation
     * @param extraterrestrial R_a
     * @return R_s
     */
    public static double solarFromSunshine(double sunshineHours, double dayLengthHours, double extraterrestrial) {
        if (dayLengthHours <= 0.0) {
            return 0.0;
        }
        return (0.25 + 0.50 * Math.min(1.0, sunshineHours / dayLengthHours)) * extraterrestrial;
    }

    /**
     * Solar radiation R_s from the temperature range, FAO-56 eq. 50, not above clear sky.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param extraterrestrial R_a
     * @param coefficient k_Rs [°C⁻⁰·⁵], 0.16 inland, 0.19 at coasts
     * @param elevationM z [m]
     * @return R_s
     */
    public static double solarFromTemperatureRange(
            double tminC, double tmaxC, double extraterrestrial, double coefficient, double elevationM) {
        double estimate = coefficient * Math.sqrt(Math.max(0.0, tmaxC - tminC)) * extraterrestrial;
        return Math.min(estimate, clearSky(extraterrestrial, elevationM));
    }

    /**
     * Clear-sky solar radiation R_so, FAO-56 eq. 37.
     *
     * @param extraterrestrial R_a
     * @param elevationM z [m]
     * @return R_so
     */
    public static double clearSky(double extraterrestrial, double elevationM) {
        return (0.75 + 2.0e-5 * elevationM) * extraterrestrial;
    }

    /**
     * Net shortwave radiation R_ns, FAO-56 eq. 38.
     *
     * @param solar R_s
     * @return R_ns
     */
    public static double netShortwave(double solar) {
        return (1.0 - REFERENCE_ALBEDO) * solar;
    }

    /**
     * Radiation of a black body σT⁴, FAO-56 Table 2.8.
     *
     * @param temperatureC T [°C]
     * @return σT⁴
     */
    public static double blackBody(double temperatureC) {
        double kelvin = temperatureC + ZERO_CELSIUS_K;
        double squared = kelvin * kelvin;
        return STEFAN_BOLTZMANN * squared * squared;
    }

    /**
     * Net longwave radiation R_nl, FAO-56 eq. 39. R_s/R_so is limited to 1 (FAO-56 p. 52) and taken as 1 in polar night, when there
     * is no ratio.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param vapourPressureKpa e_a [kPa]
     * @param solar R_s
     * @param clearSky R_so
     * @return R_nl, positive upwards
     */
    public static double netLongwave(
            double tminC, double tmaxC, double vapourPressureKpa, double solar, double clearSky) {
        double relative = clearSky > 0.0 ? Math.min(1.0, solar / clearSky) : 1.0;
        return 0.5
                * (blackBody(tminC) + blackBody(tmaxC))
                * (0.34 - 0.14 * Math.sqrt(vapourPressureKpa))
                * (1.35 * relative - 0.35);
    }
}
