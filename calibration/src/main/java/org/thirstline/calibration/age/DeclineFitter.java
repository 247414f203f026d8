package org.thirstline.calibration.age;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.thirstline.calibration.response.Interval;

/** Fits a decline, tests it in every reading and resamples its years. */
final class DeclineFitter {

    /** Year-level parameters without decline: a mean and a variance. */
    private static final int PLAIN_PARAMETERS = 2;

    /** With decline, its rate and its onset too. */
    private static final int DECLINE_PARAMETERS = 4;

    private final TrialDesign design;
    private final AgeOptions options;
    private final double[] logYield;
    private final List<ReadingModel> readings;

    DeclineFitter(TrialDesign design, double[] logYield, AgeOptions options) {
        this.design = design;
        this.options = options;
        this.logYield = logYield;
        this.readings = ReadingModel.of(design, options);
    }

    /** Returns the fit; absent with too few years or no age past an onset. */
    Optional<DeclineFit> fit() {
        if (readings.isEmpty() || design.years().count() < AgeAnalysis.FEWEST_YEARS) {
            return Optional.empty();
        }
        MixedModel model = readings.get(0).model();
        Profile profile = model.profile(logYield);
        int best = profile.best();
        Estimate estimate = estimate(model, profile);
        List<Estimate> resampled = resampled(model, best, profile.slope(best));
        Map<Reading, Double> chances = chances();
        boolean decline = chances.values().stream().allMatch(chance -> chance <= 0.5 * AgeOptions.SIZE);
        return Optional.of(new DeclineFit(
                estimate.onset(),
                interval(resampled, Estimate::onset),
                estimate.rate(),
                interval(resampled, Estimate::rate),
                estimate.meanDecline(),
                interval(resampled, Estimate::meanDecline),
                keptByAge(resampled),
                profile.declineRatio() - penalty(design.years().count()),
                chances,
                decline ? model.variancesWithDecline(logYield, best) : model.variancesWithoutDecline(logYield),
                design.years().count()));
    }

    private Map<Reading, Double> chances() {
        Map<Reading, Double> chances = new EnumMap<>(Reading.class);
        for (ReadingModel reading : readings) {
            double[] selected = reading.selected(logYield);
            MixedModel model = reading.model();
            double ratio = model.profile(selected).declineRatio();
            // Without a ratio there is no decline to test, and the simulation of trials without one would be idle.
            chances.put(
                    reading.reading(),
                    ratio <= 0.0
                            ? 1.0
                            : NullDistribution.of(
                                            model,
                                            model.variancesWithoutDecline(selected),
                                            options.nullReplicates(),
                                            options.seed(),
                                            reading.reading().ordinal())
                                    .chance(ratio));
        }
        return Collections.unmodifiableMap(chances);
    }

    private Estimate estimate(MixedModel model, Profile profile) {
        int best = profile.best();
        int onset = model.onsets()[best];
        double slope = profile.slope(best);
        double span = Math.max(1.0, design.oldestAge() - options.establishedAge());
        double lost = slope * (design.oldestAge() - onset);
        return new Estimate(onset, -Math.expm1(-slope), -Math.expm1(-lost / span));
    }

    private List<Estimate> resampled(MixedModel model, int onset, double slope) {
        double[] expected = model.decline(onset).clone();
        for (int i = 0; i < expected.length; i++) {
            expected[i] *= slope;
        }
        YearResampling years = new YearResampling(design, logYield, expected);
        return Replicates.of(
                options.intervalReplicates(),
                options.seed(),
                Reading.values().length,
                random -> estimate(model, model.profile(years.draw(random))));
    }

    private SortedMap<Integer, Interval> keptByAge(List<Estimate> resampled) {
        SortedMap<Integer, Interval> kept = new TreeMap<>();
        for (int age = options.establishedAge(); age <= design.oldestAge(); age++) {
            int past = age;
            kept.put(
                    age,
                    interval(
                            resampled,
                            estimate -> Math.pow(1.0 - estimate.rate(), Math.max(0, past - estimate.onset()))));
        }
        return kept;
    }

    private static Interval interval(List<Estimate> estimates, ToDoubleFunction<Estimate> value) {
        double[] sorted = estimates.stream().mapToDouble(value).sorted().toArray();
        int outside = (int) Math.floor(0.5 * (1.0 - AgeOptions.COVERAGE) * sorted.length);
        return new Interval(sorted[outside], sorted[sorted.length - 1 - outside]);
    }

    /** What AICc (Hurvich and Tsai 1989) charges for a decline; infinite where so few years cannot pay it. */
    private static double penalty(int years) {
        return charge(years, DECLINE_PARAMETERS) - charge(years, PLAIN_PARAMETERS);
    }

    private static double charge(int years, int parameters) {
        double left = years - parameters - 1.0;
        return left <= 0.0 ? Double.POSITIVE_INFINITY : 2.0 * parameters + 2.0 * parameters * (parameters + 1.0) / left;
    }

    private record Estimate(int onset, double rate, double meanDecline) {}
}
