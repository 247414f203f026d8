package org.thirstline.calibration.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.calibration.response.Interval;

/**
 * One planting of a trial: its yields by age at its own level, weather left in and taken out, beside the decline fitted to all plantings together.
 * Immutable and thread-safe.
 *
 * @param site where it is
 * @param plantingYear growth year of planting
 * @param plots number of plots
 * @param points one for each growth year, in order
 * @param levelMgHa yield of its mean plot before the onset, in the mean weather of its own years where weather is taken out [Mg/ha]
 * @param fit the decline fitted to all plantings, weather taken out where that was simulated
 */
public record PlantingCurve(
        String site, int plantingYear, int plots, List<Point> points, double levelMgHa, Optional<DeclineFit> fit) {

    /** Copies the list. */
    public PlantingCurve {
        points = List.copyOf(points);
    }

    /**
     * Mean of its plots in one year, differences between plots taken out.
     *
     * @param growthYear growth year
     * @param standAge stand age, planting year = 1
     * @param harvestedMgHa as harvested [Mg/ha]
     * @param weatherOutMgHa in the mean weather of the planting's years [Mg/ha]; NaN without a simulation
     * @param plots plots harvested
     * @param fitted whether the age is established, so that the fit uses it
     */
    public record Point(
            int growthYear, int standAge, double harvestedMgHa, double weatherOutMgHa, int plots, boolean fitted) {}

    /** Returns the curves of a trial's plantings, by site and planting year. */
    public static List<PlantingCurve> of(
            TrialData data, Optional<DeclineFit> leftIn, Optional<DeclineFit> takenOut, int establishedAge) {
        Map<String, List<PlotYear>> plantings = data.rows().stream()
                .collect(Collectors.groupingBy(
                        row -> row.site() + '\u0000' + String.format(Locale.ROOT, "%05d", row.plantingYear()),
                        TreeMap::new,
                        Collectors.toList()));
        return plantings.values().stream()
                .map(rows -> new Builder(rows, data.hasSimulation(), establishedAge).curve(leftIn, takenOut))
                .toList();
    }

    /** Returns its name. */
    public String name() {
        return site + ", planted " + plantingYear;
    }

    /** Returns the fitted yield at an age [Mg/ha]; the level where nothing could be fitted. */
    public double at(int standAge) {
        return levelMgHa * fit.map(decline -> decline.kept(standAge)).orElse(1.0);
    }

    /** Returns the band of the fitted yield at an age [Mg/ha], its own level taken as known; empty where there is none. */
    public Optional<Interval> band(int standAge) {
        return fit.map(decline -> decline.keptByAge().get(standAge))
                .map(kept -> new Interval(levelMgHa * kept.lower(), levelMgHa * kept.upper()));
    }

    private static final class Builder {

        private final List<PlotYear> rows;
        private final List<PlotYear> established;
        private final boolean simulated;
        private final int establishedAge;

        Builder(List<PlotYear> rows, boolean simulated, int establishedAge) {
            this.rows = rows;
            this.simulated = simulated;
            this.establishedAge = establishedAge;
            List<PlotYear> old = rows.stream()
                    .filter(row -> row.standAge() >= establishedAge)
                    .toList();
            established = old.isEmpty() ? rows : old;
        }

        PlantingCurve curve(Optional<DeclineFit> leftIn, Optional<DeclineFit> takenOut) {
            PlotLevels raw = PlotLevels.of(established, leftIn, Builder::observed);
            PlotLevels fair = simulated ? PlotLevels.of(established, takenOut, Builder::ratio) : raw;
            double weather = established.stream()
                    .filter(row -> simulated)
                    .mapToDouble(row -> Math.log(row.simulatedMgHa()))
                    .average()
                    .orElse(0.0);
            List<Point> points = new ArrayList<>();
            Map<Integer, List<PlotYear>> years = rows.stream()
                    .filter(raw::knows)
                    .collect(Collectors.groupingBy(PlotYear::growthYear, TreeMap::new, Collectors.toList()));
            years.forEach((year, plots) -> points.add(point(year, plots, raw, fair, weather)));
            PlotYear first = rows.get(0);
            int plots = (int) rows.stream().map(PlotYear::plot).distinct().count();
            return new PlantingCurve(
                    first.site(),
                    first.plantingYear(),
                    plots,
                    points,
                    Math.exp(fair.mean() + weather),
                    simulated ? takenOut : leftIn);
        }

        private Point point(int year, List<PlotYear> plots, PlotLevels raw, PlotLevels fair, double weather) {
            int age = plots.get(0).standAge();
            double harvested = mean(plots, row -> observed(row) - raw.of(row)) + raw.mean();
            double weatherOut =
                    simulated ? mean(plots, row -> ratio(row) - fair.of(row)) + fair.mean() + weather : Double.NaN;
            return new Point(year, age, Math.exp(harvested), Math.exp(weatherOut), plots.size(), age >= establishedAge);
        }

        private static double mean(List<PlotYear> rows, ToDoubleFunction<PlotYear> log) {
            return rows.stream().mapToDouble(log).average().orElseThrow();
        }

        private static double observed(PlotYear row) {
            return Math.log(row.observedMgHa());
        }

        private static double ratio(PlotYear row) {
            return Math.log(row.observedMgHa() / row.simulatedMgHa());
        }
    }
}
