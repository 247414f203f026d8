package org.thirstline.charts;

/**
 * One observation of a plot, or mean of plots, beside its simulation, in SI units. Immutable and thread-safe.
 *
 * @param site where
 * @param year growth year
 * @param standAge age of the stand [yr]; 0 if not known
 * @param seasonRainMm rain of the growing season [mm]; NaN if not known
 * @param observed what was measured
 * @param observedError standard error of it; NaN if not known
 * @param simulated what the fitted model says
 * @param simulatedLow lower end of the simulation's interval; NaN for none
 * @param simulatedHigh upper end; NaN for none
 */
public record FitPoint(
        String site,
        int year,
        int standAge,
        double seasonRainMm,
        double observed,
        double observedError,
        double simulated,
        double simulatedLow,
        double simulatedHigh) {

    double residual() {
        return observed - simulated;
    }
}
