package org.thirstline.calibration.problem;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.plots.PlotVariable;

/**
 * One measured value, of one plot of one site. Immutable and thread-safe.
 *
 * @param site name of the site
 * @param zone zone of its study
 * @param plot name of the plot
 * @param plantingYear growth year of planting, which is stand age 1
 * @param growthYear growth year it belongs to
 * @param variable what was measured
 * @param date day of the measurement, null where it holds for the harvest
 * @param depthM depth of soil water [m], NaN for the whole profile and everything else
 * @param value in the unit of the variable
 * @param statedError standard error as the file states it, NaN if it does not
 * @param file name of the file
 * @param line its line there
 */
public record Observation(
        String site,
        String zone,
        String plot,
        int plantingYear,
        int growthYear,
        PlotVariable variable,
        @Nullable LocalDate date,
        double depthM,
        double value,
        double statedError,
        String file,
        int line) {

    /** Returns the stand age; the planting year is age 1. */
    public int standAge() {
        return growthYear - plantingYear + 1;
    }

    StandKey stand() {
        return new StandKey(site, zone, plantingYear);
    }

    /** What is simulated once, however many plots share it. */
    record StandKey(String site, String zone, int plantingYear) {}
}
