package org.thirstline.model.crop;

/**
 * Thermal time of a day between a base and an upper threshold, temperature following a single sine through the day's extremes
 * (Baskerville and Emin 1969, Ecology 50:514-517). Above the upper threshold nothing is added. Stateless and thread-safe.
 */
public final class ThermalTime {

    private ThermalTime() {}

    /**
     * Thermal time of a day.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C], not below the minimum
     * @param baseC base temperature [°C]
     * @param upperC upper threshold [°C], above the base
     * @return [°C d]
     */
    public static double singleSine(double tminC, double tmaxC, double baseC, double upperC) {
        return above(tminC, tmaxC, baseC) - above(tminC, tmaxC, upperC);
    }

    /**
     * Thermal time above a threshold without an upper limit.
     *
     * @param tminC daily minimum [°C]
     * @param tmaxC daily maximum [°C], not below the minimum
     * @param thresholdC threshold [°C]
     * @return [°C d]
     */
    public static double above(double tminC, double tmaxC, double thresholdC) {
        double mean = 0.5 * (tminC + tmaxC);
        if (tmaxC <= thresholdC) {
            return 0.0;
        }
        if (tminC >= thresholdC) {
            return mean - thresholdC;
        }
        double amplitude = 0.5 * (tmaxC - tminC);
        double theta = Math.asin((thresholdC - mean) / amplitude);
        return ((mean - thresholdC) * (0.5 * Math.PI - theta) + amplitude * Math.cos(theta)) / Math.PI;
    }
}
