package org.thirstline.model.evapotranspiration;

/**
 * Daily reference evapotranspiration: FAO-56 Penman-Monteith (eq. 6), the ASCE-EWRI 2005 standardized forms for a short and a tall
 * reference, and the temperature-only form of FAO-56 (eq. 52). Depths in mm/d, radiation in MJ m⁻² d⁻¹.
 */
public final class ReferenceEvapotranspiration {

    /** Water evaporated by one megajoule, 1/λ at 20 °C [kg/MJ], FAO-56 eq. 20. */
    private static final double INVERSE_LATENT_HEAT = 0.408;

    /** Stefan-Boltzmann constant of ASCE-EWRI 2005 [MJ K⁻⁴ m⁻² d⁻¹]. */
    private static final double ASCE_STEFAN_BOLTZMANN = 4.901e-9;

    private ReferenceEvapotranspiration() {}

    /**
     * Grass reference evapotranspiration ET_0, FAO-56 eq. 6 with G = 0.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param solar R_s
     * @param clearSky R_so
     * @param windMs u_2 [m/s]
     * @param vapourPressureKpa e_a [kPa]
     * @param psychrometricConstant γ [kPa °C⁻¹]
     * @return ET_0 [mm/d], not below 0
     */
    public static double penmanMonteith(
            double tminC,
            double tmaxC,
            double solar,
            double clearSky,
            double windMs,
            double vapourPressureKpa,
            double psychrometricConstant) {
        double net = NetRadiation.netShortwave(solar)
                - NetRadiation.netLongwave(tminC, tmaxC, vapourPressureKpa, solar, clearSky);
        return penmanMonteith(tminC, tmaxC, net, windMs, vapourPressureKpa, psychrometricConstant, 900.0, 0.34);
    }

    private static double penmanMonteith(
            double tminC,
            double tmaxC,
            double netRadiation,
            double windMs,
            double vapourPressureKpa,
            double gamma,
            double numerator,
            double denominator) {
        double mean = 0.5 * (tminC + tmaxC);
        double slope = Atmosphere.saturationSlope(mean);
        double wind = Atmosphere.usableWind(windMs);
        double deficit = Math.max(0.0, Atmosphere.meanSaturationVapourPressure(tminC, tmaxC) - vapourPressureKpa);
        double energy = INVERSE_LATENT_HEAT * slope * netRadiation;
        double aerodynamic = gamma * numerator / (mean + 273.0) * wind * deficit;
        return Math.max(0.0, (energy + aerodynamic) / (slope + gamma * (1.0 + denominator * wind)));
    }

    /**
     * Standardized reference evapotranspiration ET_os (short) or ET_rs (tall), ASCE-EWRI (2005) eq. 1, daily step.
     *
     * @param tall whether the reference is tall (alfalfa-like) instead of short (clipped grass)
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param solar R_s
     * @param clearSky R_so
     * @param windMs u_2 [m/s]
     * @param vapourPressureKpa e_a [kPa]
     * @param psychrometricConstant γ [kPa °C⁻¹]
     * @return ET [mm/d], not below 0
     */
    public static double standardized(
            boolean tall,
            double tminC,
            double tmaxC,
            double solar,
            double clearSky,
            double windMs,
            double vapourPressureKpa,
            double psychrometricConstant) {
        double net = standardizedNetRadiation(tminC, tmaxC, solar, clearSky, vapourPressureKpa);
        return tall
                ? penmanMonteith(tminC, tmaxC, net, windMs, vapourPressureKpa, psychrometricConstant, 1600.0, 0.38)
                : penmanMonteith(tminC, tmaxC, net, windMs, vapourPressureKpa, psychrometricConstant, 900.0, 0.34);
    }

    /**
     * Net radiation R_n, ASCE-EWRI (2005) eqs 15 to 18: R_s/R_so limited to 0.3 to 1.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param solar R_s
     * @param clearSky R_so
     * @param vapourPressureKpa e_a [kPa]
     * @return R_n
     */
    public static double standardizedNetRadiation(
            double tminC, double tmaxC, double solar, double clearSky, double vapourPressureKpa) {
        double relative = clearSky > 0.0 ? Math.max(0.3, Math.min(1.0, solar / clearSky)) : 1.0;
        double cloudiness = 1.35 * relative - 0.35;
        double blackBody = 0.5
                * (NetRadiation.blackBody(tminC) + NetRadiation.blackBody(tmaxC))
                * ASCE_STEFAN_BOLTZMANN
                / NetRadiation.STEFAN_BOLTZMANN;
        double longwave = blackBody * (0.34 - 0.14 * Math.sqrt(vapourPressureKpa)) * cloudiness;
        return NetRadiation.netShortwave(solar) - longwave;
    }

    /**
     * Reference evapotranspiration from temperature alone, FAO-56 eq. 52 (Hargreaves and Samani 1985).
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C]
     * @param extraterrestrial R_a
     * @return ET_0 [mm/d], not below 0
     */
    public static double temperatureOnly(double tminC, double tmaxC, double extraterrestrial) {
        double mean = 0.5 * (tminC + tmaxC);
        double range = Math.max(0.0, tmaxC - tminC);
        return Math.max(0.0, 0.0023 * (mean + 17.8) * Math.sqrt(range) * INVERSE_LATENT_HEAT * extraterrestrial);
    }
}
