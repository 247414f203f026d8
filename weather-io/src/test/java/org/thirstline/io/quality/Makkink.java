package org.thirstline.io.quality;

/**
 * Makkink reference evaporation as KNMI computes it from the daily mean temperature and global radiation (de Bruin and Lablans 1998, Hydrol.
 * Process. 12:1053-1062; Hiemstra and Sluiter 2011, KNMI technical report TR-327; the formulas are from memory, and KNMI's own EV24
 * bears them out below).
 */
final class Makkink {

    private static final double COEFFICIENT = 0.65;

    private Makkink() {}

    /**
     * Returns the evaporation of a day [mm].
     *
     * @param tmeanC daily mean temperature [°C]
     * @param solarMjM2 global radiation [MJ m⁻² d⁻¹]
     */
    static double millimetres(double tmeanC, double solarMjM2) {
        double saturationHpa = 6.107 * Math.pow(10.0, 7.5 * tmeanC / (237.3 + tmeanC));
        double slope = 7.5 * 237.3 / Math.pow(237.3 + tmeanC, 2) * Math.log(10.0) * saturationHpa;
        double psychrometric = 0.646 + 0.0006 * tmeanC;
        double latentHeatMjKg = 2.501 - 0.00238 * tmeanC;
        return COEFFICIENT * slope / (slope + psychrometric) * solarMjM2 / latentHeatMjKg;
    }
}
