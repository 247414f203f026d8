package org.thirstline.calibration.trial;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.age.PlotYear;
import org.thirstline.calibration.age.TrialData;
import org.thirstline.calibration.response.Interval;

/**
 * Yield against stand age, differences between plots taken out, with the weather of each year left in or taken out. Immutable and thread-safe.
 *
 * @param points one for each planting and growth year, in order of age
 * @param levelMgHa yield of the mean plot before the onset [Mg/ha], in the mean weather of the years where weather is taken out
 * @param fit the fitted decline, if years suffice
 */
public record AgeCurve(List<Point> points, double levelMgHa, Optional<DeclineFit> fit) {

    /** Copies the list. */
    public AgeCurve {
        points = List.copyOf(points);
    }

    /**
     * Mean of the plots of a planting in one year.
     *
     * @param planting name of the planting
     * @param growthYear growth year
     * @param standAge stand age, planting year = 1
     * @param yieldMgHa geometric mean of its plots [Mg/ha]
     * @param plots number of plots
     * @param fitted whether the age is established, so that the fit uses it
     */
    public record Point(String planting, int growthYear, int standAge, double yieldMgHa, int plots, boolean fitted) {}

    /** Returns the curve of the yields as harvested. */
    public static AgeCurve asHarvested(TrialData data, Optional<DeclineFit> fit, int establishedAge) {
        return new Builder(data, fit, establishedAge, false).curve();
    }

    /** Returns the curve of observed over simulated yields, in the mean weather of the years. */
    public static AgeCurve weatherTakenOut(TrialData data, Optional<DeclineFit> fit, int establishedAge) {
        return new Builder(data, fit, establishedAge, true).curve();
    }

    /** Returns the fitted yield at an age [Mg/ha]; the level where nothing could be fitted. */
    public double at(int standAge) {
        return levelMgHa * fit.map(decline -> decline.kept(standAge)).orElse(1.0);
    }

    /** Returns the band of the fitted yield at an age [Mg/ha]; empty where there is none. */
    public Optional<Interval> band(int standAge) {
        return fit.map(decline -> decline.keptByAge().get(standAge))
                .map(kept -> new Interval(levelMgHa * kept.lower(), levelMgHa * kept.upper()));
    }

    /** Levels of plots, and what is left of the yields once they are taken out. */
    private static final class Builder {

        private final TrialData data;
        private final Optional<DeclineFit> fit;
        private final int establishedAge;
        private final boolean withoutWeather;

        Builder(TrialData data, Optional<DeclineFit> fit, int establishedAge, boolean withoutWeather) {
            this.data = data;
            this.fit = fit;
            this.establishedAge = establishedAge;
            this.withoutWeather = withoutWeather;
        }

        private double log(PlotYear row) {
            return Math.log(withoutWeather ? row.observedMgHa() / row.simulatedMgHa() : row.observedMgHa());
        }

        AgeCurve curve() {
            List<PlotYear> established = established();
            PlotLevels levels = PlotLevels.of(established, fit, this::log);
            double weather = withoutWeather
                    ? established.stream()
                            .mapToDouble(row -> Math.log(row.simulatedMgHa()))
                            .average()
                            .orElse(0.0)
                    : 0.0;
            double level = levels.mean() + weather;
            Map<List<Object>, List<PlotYear>> groups = new LinkedHashMap<>();
            data.rows().stream().filter(levels::knows).forEach(row -> groups.computeIfAbsent(
                            List.of(row.planting(), row.growthYear()), key -> new ArrayList<>())
                    .add(row));
            List<Point> points = groups.values().stream()
                    .map(rows -> point(rows, levels, level))
                    .sorted(Comparator.comparingInt(Point::standAge).thenComparing(Point::planting))
                    .toList();
            return new AgeCurve(points, Math.exp(level), fit);
        }

        /** Without an established year the young ones stand alone. */
        private List<PlotYear> established() {
            List<PlotYear> established = data.rows().stream()
                    .filter(row -> row.standAge() >= establishedAge)
                    .toList();
            return established.isEmpty() ? data.rows() : established;
        }

        private Point point(List<PlotYear> rows, PlotLevels levels, double level) {
            PlotYear first = rows.get(0);
            double mean = rows.stream()
                    .mapToDouble(row -> log(row) - levels.of(row))
                    .average()
                    .orElseThrow();
            return new Point(
                    first.planting(),
                    first.growthYear(),
                    first.standAge(),
                    Math.exp(mean + level),
                    rows.size(),
                    first.standAge() >= establishedAge);
        }
    }
}
