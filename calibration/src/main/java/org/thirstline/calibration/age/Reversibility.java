package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.StatUtils;
import org.thirstline.calibration.response.Interval;

/**
 * Whether yield came back in good years after an apparent decline began. A year is good if it was simulated at least as high as the plot's mean
 * year up to the onset. Shortfalls are of log yield as harvested against the plot's mean up to the onset. Immutable and thread-safe.
 *
 * @param finding what the good years say
 * @param onsetAge last stand age before the apparent decline
 * @param goodYears growth years past the onset with good weather
 * @param poorYears growth years past the onset with poor weather
 * @param shortfallInGoodYears share of yield missing in good years; NaN without any
 * @param shortfallInPoorYears share of yield missing in poor years; NaN without any
 * @param interval 90 % interval of the shortfall in good years, from the scatter between years; NaN with too few
 */
public record Reversibility(
        Finding finding,
        int onsetAge,
        List<Integer> goodYears,
        List<Integer> poorYears,
        double shortfallInGoodYears,
        double shortfallInPoorYears,
        Interval interval) {

    /** Share of the poor years' shortfall under which good years count as recovered (our choice). */
    private static final double RECOVERED = 0.5;

    private static final Interval UNKNOWN = new Interval(Double.NaN, Double.NaN);

    /** What the good years say. */
    public enum Finding {
        /** Yields past the onset were not lower than before. */
        NOTHING_TO_COME_BACK_FROM,
        /** No year past the onset had good weather. */
        NO_GOOD_YEAR_SINCE,
        /** Good years gave full yields again, as weather would have it. */
        CAME_BACK,
        /** Good years gave too little too, as age would have it. */
        STAYED_DOWN,
        /** Neither is sure. */
        UNCLEAR
    }

    /** Looks at the years past an onset, such as the one fitted to the raw yields. */
    public static Reversibility of(TrialData data, int onsetAge, AgeOptions options) {
        TreeMap<Integer, List<double[]>> before = new TreeMap<>();
        TreeMap<Integer, List<double[]>> past = new TreeMap<>();
        data.from(options.establishedAge()).stream()
                .filter(PlotYear::hasSimulation)
                .collect(Collectors.groupingBy(PlotYear::plotKey, TreeMap::new, Collectors.toList()))
                .values()
                .forEach(plot -> compare(plot, onsetAge, before, past));
        List<Integer> good = new ArrayList<>();
        List<Integer> poor = new ArrayList<>();
        past.forEach((year, plots) -> (mean(plots, 1) >= 0.0 ? good : poor).add(year));
        double[] base =
                before.values().stream().mapToDouble(plots -> mean(plots, 0)).toArray();
        return judged(onsetAge, good, poor, base, changes(past, good), changes(past, poor));
    }

    /** Notes each year of a plot as change of log observed and of log simulated yield against the years up to the onset. */
    private static void compare(
            List<PlotYear> plot,
            int onsetAge,
            TreeMap<Integer, List<double[]>> before,
            TreeMap<Integer, List<double[]>> past) {
        List<PlotYear> base =
                plot.stream().filter(row -> row.standAge() <= onsetAge).toList();
        if (base.isEmpty()) {
            return;
        }
        double observed = base.stream()
                .mapToDouble(row -> Math.log(row.observedMgHa()))
                .average()
                .orElseThrow();
        double simulated = base.stream()
                .mapToDouble(row -> Math.log(row.simulatedMgHa()))
                .average()
                .orElseThrow();
        for (PlotYear row : plot) {
            double[] change = {Math.log(row.observedMgHa()) - observed, Math.log(row.simulatedMgHa()) - simulated};
            (row.standAge() <= onsetAge ? before : past)
                    .computeIfAbsent(row.growthYear(), year -> new ArrayList<>())
                    .add(change);
        }
    }

    private static double mean(List<double[]> changes, int which) {
        return changes.stream().mapToDouble(change -> change[which]).average().orElseThrow();
    }

    private static double[] changes(TreeMap<Integer, List<double[]>> past, List<Integer> years) {
        return past.entrySet().stream()
                .filter(entry -> years.contains(entry.getKey()))
                .mapToDouble(entry -> mean(entry.getValue(), 0))
                .toArray();
    }

    private static Reversibility judged(
            int onsetAge, List<Integer> good, List<Integer> poor, double[] base, double[] inGood, double[] inPoor) {
        double goodLoss = inGood.length == 0 ? Double.NaN : -Math.expm1(StatUtils.mean(inGood));
        double poorLoss = inPoor.length == 0 ? Double.NaN : -Math.expm1(StatUtils.mean(inPoor));
        Interval interval = interval(base, inGood);
        Finding finding = finding(goodLoss, poorLoss, interval);
        return new Reversibility(finding, onsetAge, List.copyOf(good), List.copyOf(poor), goodLoss, poorLoss, interval);
    }

    private static Finding finding(double goodLoss, double poorLoss, Interval interval) {
        double largest = Double.isNaN(goodLoss) || poorLoss > goodLoss ? poorLoss : goodLoss;
        if (!(largest > 0.0)) {
            return Finding.NOTHING_TO_COME_BACK_FROM;
        }
        if (Double.isNaN(goodLoss)) {
            return Finding.NO_GOOD_YEAR_SINCE;
        }
        if (interval.lower() > 0.0) {
            return Finding.STAYED_DOWN;
        }
        boolean recovered = goodLoss < RECOVERED * poorLoss && interval.upper() < poorLoss;
        return recovered ? Finding.CAME_BACK : Finding.UNCLEAR;
    }

    /** Student's interval of a difference of two means of years with a common variance, turned from logs into a share lost. */
    private static Interval interval(double[] base, double[] inGood) {
        int freedom = base.length + inGood.length - 2;
        if (inGood.length == 0 || base.length == 0 || freedom < 1) {
            return UNKNOWN;
        }
        double squares = squares(base) + squares(inGood);
        double error = Math.sqrt(squares / freedom * (1.0 / base.length + 1.0 / inGood.length));
        double half =
                new TDistribution(freedom).inverseCumulativeProbability(0.5 * (1.0 + AgeOptions.COVERAGE)) * error;
        double centre = StatUtils.mean(inGood) - StatUtils.mean(base);
        return new Interval(-Math.expm1(centre + half), -Math.expm1(centre - half));
    }

    private static double squares(double[] values) {
        double mean = StatUtils.mean(values);
        return StatUtils.sumSq(values) - values.length * mean * mean;
    }
}
