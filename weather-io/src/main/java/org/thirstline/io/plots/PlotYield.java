package org.thirstline.io.plots;

/**
 * Dry matter harvested from one plot in one growth year. Immutable and thread-safe.
 *
 * @param line line of the file
 * @param zone zone of the study
 * @param plot name of the plot, its block in front if there is one
 * @param plantingYear growth year of planting, which is stand age 1
 * @param growthYear growth year of the yield
 * @param yieldMgHa harvested dry matter [Mg/ha]
 * @param errorMgHa standard error of it [Mg/ha], NaN if not given
 */
public record PlotYield(
        int line, String zone, String plot, int plantingYear, int growthYear, double yieldMgHa, double errorMgHa) {

    /** Returns the stand age; the planting year is age 1. */
    public int standAge() {
        return growthYear - plantingYear + 1;
    }
}
