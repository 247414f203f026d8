package org.thirstline.calibration.age;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;

/** Who grew where, when and how old: the established years of a trial as numbered groups. Immutable and thread-safe. */
final class TrialDesign {

    /** Variance of log yield under which simulated weather is the same every year. */
    private static final double NO_WEATHER = 1.0e-8;

    private final List<PlotYear> rows;
    private final Grouping plantings;
    private final Grouping plots;
    private final Grouping years;
    private final Grouping sites;
    private final Grouping siteYears;

    private TrialDesign(List<PlotYear> rows) {
        this.rows = rows;
        plantings = Grouping.of(rows, PlotYear::planting);
        plots = Grouping.of(rows, PlotYear::plotKey);
        years = Grouping.of(rows, PlotYear::growthYear);
        sites = Grouping.of(rows, PlotYear::site);
        siteYears = Grouping.of(rows, row -> List.of(row.site(), row.growthYear()));
    }

    static TrialDesign of(TrialData data, int establishedAge) {
        return new TrialDesign(data.from(establishedAge));
    }

    /** Returns the design of some of its plot years. */
    TrialDesign only(int[] kept) {
        return new TrialDesign(IntStream.of(kept).mapToObj(rows::get).toList());
    }

    boolean hasSimulation() {
        return !rows.isEmpty() && rows.get(0).hasSimulation();
    }

    boolean weatherVaries() {
        double[] weather = simulatedWeather();
        return ModelColumns.dot(weather, weather) > NO_WEATHER * weather.length;
    }

    int size() {
        return rows.size();
    }

    PlotYear row(int i) {
        return rows.get(i);
    }

    Grouping plantings() {
        return plantings;
    }

    Grouping plots() {
        return plots;
    }

    Grouping years() {
        return years;
    }

    Grouping sites() {
        return sites;
    }

    Grouping siteYears() {
        return siteYears;
    }

    /** Returns log(observed / simulated). */
    double[] logRatio() {
        return rows.stream()
                .mapToDouble(row -> Math.log(row.observedMgHa() / row.simulatedMgHa()))
                .toArray();
    }

    /** Returns log(observed). */
    double[] logObserved() {
        return rows.stream().mapToDouble(row -> Math.log(row.observedMgHa())).toArray();
    }

    /** Returns log(simulated) around the mean of its planting; all zero without weather. */
    double[] simulatedWeather() {
        if (!hasSimulation()) {
            return new double[rows.size()];
        }
        double[] log =
                rows.stream().mapToDouble(row -> Math.log(row.simulatedMgHa())).toArray();
        double[] means = plantings.means(log);
        return IntStream.range(0, log.length)
                .mapToDouble(i -> log[i] - means[plantings.of(i)])
                .toArray();
    }

    /** Returns simulated yields over the median simulated yield of their planting. */
    double[] shareOfMedianYear() {
        double[] medians = new double[plantings.count()];
        for (int p = 0; p < medians.length; p++) {
            int planting = p;
            double[] sorted = IntStream.range(0, rows.size())
                    .filter(i -> plantings.of(i) == planting)
                    .mapToDouble(i -> rows.get(i).simulatedMgHa())
                    .sorted()
                    .toArray();
            medians[p] = 0.5 * (sorted[sorted.length / 2] + sorted[(sorted.length - 1) / 2]);
        }
        return IntStream.range(0, rows.size())
                .mapToDouble(i -> rows.get(i).simulatedMgHa() / medians[plantings.of(i)])
                .toArray();
    }

    /** Returns the years of age past an onset, none before it. */
    double[] yearsPast(int onset) {
        return rows.stream()
                .mapToDouble(row -> Math.max(0, row.standAge() - onset))
                .toArray();
    }

    /** Returns the onset ages that have enough ages past them; the youngest established age is one. */
    int[] onsets(int agesPastOnset) {
        TreeSet<Integer> ages = new TreeSet<>();
        rows.forEach(row -> ages.add(row.standAge()));
        return ages.isEmpty()
                ? new int[0]
                : IntStream.rangeClosed(ages.first(), ages.last())
                        .filter(age -> ages.tailSet(age, false).size() >= agesPastOnset)
                        .toArray();
    }

    int oldestAge() {
        return rows.stream().mapToInt(PlotYear::standAge).max().orElse(0);
    }

    /** Returns log yields of a trial without decline whose plots and years scatter as given. */
    double[] noise(VarianceParts parts, RandomGenerator random) {
        double[] plot = gaussians(plots.count(), parts.plotSd(), random);
        double[] year = gaussians(years.count(), parts.yearSd(), random);
        double[] siteYear = gaussians(siteYears.count(), parts.siteYearSd(), random);
        return IntStream.range(0, rows.size())
                .mapToDouble(i -> plot[plots.of(i)]
                        + year[years.of(i)]
                        + siteYear[siteYears.of(i)]
                        + parts.residualSd() * random.nextGaussian())
                .toArray();
    }

    private static double[] gaussians(int count, double sd, RandomGenerator random) {
        return IntStream.range(0, count)
                .mapToDouble(i -> sd * random.nextGaussian())
                .toArray();
    }

    /** Plot years numbered by group. */
    record Grouping(int[] numbers, int count) {

        static Grouping of(List<PlotYear> rows, Function<PlotYear, Object> name) {
            Map<Object, Integer> known = new HashMap<>();
            int[] numbers = new int[rows.size()];
            for (int i = 0; i < numbers.length; i++) {
                Integer number = known.putIfAbsent(name.apply(rows.get(i)), known.size());
                numbers[i] = number == null ? known.size() - 1 : number;
            }
            return new Grouping(numbers, known.size());
        }

        int of(int row) {
            return numbers[row];
        }

        double[] means(double[] values) {
            double[] sum = new double[count];
            int[] n = new int[count];
            for (int i = 0; i < values.length; i++) {
                sum[numbers[i]] += values[i];
                n[numbers[i]]++;
            }
            for (int g = 0; g < count; g++) {
                sum[g] /= n[g];
            }
            return sum;
        }
    }
}
