package org.thirstline.io.plots;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Something measured on one plot that is no yield. Immutable and thread-safe.
 *
 * @param line line of the file
 * @param zone zone of the study
 * @param plot name of the plot, its block in front if there is one
 * @param plantingYear growth year of planting, which is stand age 1
 * @param growthYear growth year it belongs to
 * @param variable what was measured
 * @param date day of the measurement; null where it holds for the harvest, and the date itself where that was measured
 * @param depthM depth of soil water [m], NaN for the whole profile and for everything else
 * @param value in the unit of the variable
 * @param error standard error of the value, NaN if not given
 */
public record PlotObservation(
        int line,
        String zone,
        String plot,
        int plantingYear,
        int growthYear,
        PlotVariable variable,
        @Nullable LocalDate date,
        double depthM,
        double value,
        double error) {}
