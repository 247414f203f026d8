package org.thirstline.calibration.age;

import org.thirstline.model.error.Check;

/**
 * Yield of one plot in one growth year. Immutable and thread-safe.
 *
 * @param site where the plot is; plots of a site share the simulation error of a year
 * @param planting name of the planting, unique over all sites
 * @param plot name of the plot, unique in its planting
 * @param plantingYear growth year of planting, which is stand age 1
 * @param growthYear growth year of the yield
 * @param observedMgHa harvested dry matter [Mg/ha]
 * @param simulatedMgHa simulated yield [Mg/ha] of the same year as a stand that establishes but never declines; NaN where the weather is not known
 * @param errorMgHa standard error of the observed yield [Mg/ha], NaN if not known; shown beside the scatter found, not used as a weight
 */
public record PlotYear(
        String site,
        String planting,
        String plot,
        int plantingYear,
        int growthYear,
        double observedMgHa,
        double simulatedMgHa,
        double errorMgHa) {

    /** Smallest yield whose logarithm is taken [Mg/ha] (our choice: a tenth of what a plot balance resolves). */
    public static final double SMALLEST_YIELD = 0.01;

    private static final double LARGEST_YIELD = 200.0;

    private static final double OLDEST_AGE = 100.0;

    /** Refuses an age under one and yields whose logarithm means nothing. */
    public PlotYear {
        Check.range("stand age", growthYear - plantingYear + 1.0, "years", 1.0, OLDEST_AGE);
        Check.range("observed yield", observedMgHa, "Mg/ha", SMALLEST_YIELD, LARGEST_YIELD);
        if (!Double.isNaN(simulatedMgHa)) {
            Check.range("simulated yield", simulatedMgHa, "Mg/ha", SMALLEST_YIELD, LARGEST_YIELD);
        }
        if (!Double.isNaN(errorMgHa)) {
            Check.range("error of the observed yield", errorMgHa, "Mg/ha", 0.0, LARGEST_YIELD);
        }
    }

    /** Returns a plot year with a simulated yield and no stated error. */
    public static PlotYear simulated(
            String site,
            String planting,
            String plot,
            int plantingYear,
            int growthYear,
            double observedMgHa,
            double simulatedMgHa) {
        return new PlotYear(site, planting, plot, plantingYear, growthYear, observedMgHa, simulatedMgHa, Double.NaN);
    }

    /** Returns a plot year of which only the yield is known. */
    public static PlotYear yieldOnly(
            String site, String planting, String plot, int plantingYear, int growthYear, double observedMgHa) {
        return new PlotYear(site, planting, plot, plantingYear, growthYear, observedMgHa, Double.NaN, Double.NaN);
    }

    /** Returns the stand age; the planting year is age 1. */
    public int standAge() {
        return growthYear - plantingYear + 1;
    }

    boolean hasSimulation() {
        return !Double.isNaN(simulatedMgHa);
    }

    /** Returns the name of the plot over all plantings. */
    String plotKey() {
        return planting + '\u0000' + plot;
    }
}
