package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.random.RandomGenerator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Designs that do not exist yet: who would grow where and when. Their observed yields mean nothing; coming weather repeats past weather. */
public final class TrialPlans {

    /** Stands for any yield: power does not depend on it [Mg/ha]. */
    private static final double ANY_YIELD = 10.0;

    private TrialPlans() {}

    /** Returns a trial kept on for more years. */
    public static TrialData continued(TrialData data, int moreYears) {
        List<PlotYear> rows = new ArrayList<>(data.rows());
        Map<String, PlotYear> last = data.rows().stream()
                .collect(Collectors.toMap(
                        PlotYear::plotKey,
                        row -> row,
                        (a, b) -> a.growthYear() > b.growthYear() ? a : b,
                        TreeMap::new));
        int until = data.lastYear() + moreYears;
        for (PlotYear plot : last.values()) {
            if (plot.growthYear() == data.lastYear()) {
                SiteWeather site = SiteWeather.of(data, plot.site());
                for (int year = data.lastYear() + 1; year <= until; year++) {
                    rows.add(planned(plot.site(), plot.planting(), plot.plot(), plot.plantingYear(), year, site));
                }
            }
        }
        return TrialData.of(rows);
    }

    /** Returns the trial as it would have been with several times as many plots. */
    public static TrialData withPlotsTimes(TrialData data, int times) {
        List<PlotYear> rows = new ArrayList<>(data.rows());
        for (int copy = 2; copy <= times; copy++) {
            for (PlotYear row : data.rows()) {
                rows.add(new PlotYear(
                        row.site(),
                        row.planting(),
                        row.plot() + " x" + copy,
                        row.plantingYear(),
                        row.growthYear(),
                        row.observedMgHa(),
                        row.simulatedMgHa(),
                        row.errorMgHa()));
            }
        }
        return TrialData.of(rows);
    }

    /** Returns a trial kept on for more years beside new plantings, the first in the coming year, each of as many plots as the first planting. */
    public static TrialData withNewPlantings(TrialData data, int plantings, int yearsApart, int moreYears) {
        List<PlotYear> rows = new ArrayList<>(continued(data, moreYears).rows());
        PlotYear first = data.rows().get(0);
        TreeSet<String> plots = data.rows().stream()
                .filter(row -> row.planting().equals(first.planting()))
                .map(PlotYear::plot)
                .collect(Collectors.toCollection(TreeSet::new));
        SiteWeather weather = SiteWeather.of(data, first.site());
        int until = data.lastYear() + moreYears;
        for (int p = 0; p < plantings; p++) {
            int planted = data.lastYear() + 1 + p * yearsApart;
            for (String plot : plots) {
                for (int year = planted; year <= until; year++) {
                    rows.add(planned(first.site(), "new planting " + (p + 1), plot, planted, year, weather));
                }
            }
        }
        return TrialData.of(rows);
    }

    /**
     * Returns a trial from bare ground at one site.
     *
     * @param plots plots of each planting
     * @param years growth years from the first planting
     * @param plantings number of plantings
     * @param yearsApart years between plantings
     * @param weatherSd standard deviation of log simulated yield between years
     * @param random where the weather comes from
     */
    public static TrialData fresh(
            int plots, int years, int plantings, int yearsApart, double weatherSd, RandomGenerator random) {
        double[] share = IntStream.range(0, years)
                .mapToDouble(year -> Math.exp(weatherSd * random.nextGaussian()))
                .toArray();
        List<PlotYear> rows = new ArrayList<>();
        for (int p = 0; p < plantings; p++) {
            for (int plot = 1; plot <= plots; plot++) {
                for (int year = p * yearsApart; year < years; year++) {
                    rows.add(PlotYear.simulated(
                            "site",
                            "planting " + (p + 1),
                            "plot " + plot,
                            1 + p * yearsApart,
                            1 + year,
                            ANY_YIELD,
                            ANY_YIELD * share[year]));
                }
            }
        }
        return TrialData.of(rows);
    }

    private static PlotYear planned(
            String site, String planting, String plot, int planted, int year, SiteWeather weather) {
        return PlotYear.simulated(site, planting, plot, planted, year, ANY_YIELD, weather.yieldOf(year));
    }

    /** Simulated yields of the oldest stand of a site, repeated in order once they run out. */
    private record SiteWeather(TreeMap<Integer, Double> known) {

        static SiteWeather of(TrialData data, String site) {
            TreeMap<Integer, Double> known = new TreeMap<>();
            data.rows().stream()
                    .filter(row -> row.site().equals(site) && row.hasSimulation())
                    .sorted(Comparator.comparingInt(PlotYear::standAge))
                    .forEach(row -> known.put(row.growthYear(), row.simulatedMgHa()));
            if (known.size() > 2) {
                // Planting year and the next are build-up, not weather.
                known.pollFirstEntry();
                known.pollFirstEntry();
            }
            return new SiteWeather(known);
        }

        double yieldOf(int year) {
            if (known.isEmpty()) {
                return ANY_YIELD;
            }
            List<Double> yields = List.copyOf(known.values());
            return known.getOrDefault(year, yields.get(Math.floorMod(year - known.lastKey() - 1, yields.size())));
        }
    }
}
