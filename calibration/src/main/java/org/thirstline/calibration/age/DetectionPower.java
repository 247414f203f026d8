package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How often a design finds a decline, by simulating trials of that design and testing each as a real one is tested. Thread-safe.
 */
public final class DetectionPower {

    /** Largest decline looked at [fraction per year]. */
    private static final double LARGEST = 0.5;

    /** To which the smallest decline found is worked out [fraction per year]. */
    private static final double RESOLUTION = 0.001;

    private static final long NOISE_STREAM = 100L;

    private static final long NULL_STREAM = 200L;

    private final List<ReadingModel> readings;
    private final List<NullDistribution> nulls;
    private final List<double[]> noise;
    private final TrialDesign design;

    private DetectionPower(TrialData data, VarianceParts scatter, AgeOptions options) {
        design = TrialDesign.of(data, options.establishedAge());
        readings = design.years().count() < AgeAnalysis.FEWEST_YEARS ? List.of() : ReadingModel.of(design, options);
        nulls = new ArrayList<>();
        for (ReadingModel reading : readings) {
            nulls.add(NullDistribution.of(
                    reading.model(),
                    scatter,
                    options.nullReplicates(),
                    options.seed(),
                    NULL_STREAM + reading.reading().ordinal()));
        }
        noise = Replicates.of(
                options.powerReplicates(), options.seed(), NOISE_STREAM, random -> design.noise(scatter, random));
    }

    /**
     * Prepares a design.
     *
     * @param data who grew where and when, with simulated yields; observed yields are not looked at
     * @param scatter between plots, between years, and the rest
     * @param options how decline is tested
     */
    public static DetectionPower of(TrialData data, VarianceParts scatter, AgeOptions options) {
        return new DetectionPower(data, scatter, options);
    }

    /**
     * Returns the share of trials in which the decline is found.
     *
     * @param onsetAge last stand age before the decline
     * @param declinePerYear fraction of yield lost in each year past it
     */
    public double of(int onsetAge, double declinePerYear) {
        if (readings.isEmpty()) {
            return 0.0;
        }
        double[] past = design.yearsPast(onsetAge);
        double slope = -Math.log1p(-declinePerYear);
        long found = IntStream.range(0, noise.size())
                .parallel()
                .filter(trial -> finds(noise.get(trial), past, slope))
                .count();
        return found / (double) noise.size();
    }

    private boolean finds(double[] scatter, double[] past, double slope) {
        double[] logYield = IntStream.range(0, past.length)
                .mapToDouble(i -> scatter[i] - slope * past[i])
                .toArray();
        return IntStream.range(0, readings.size())
                .allMatch(r -> nulls.get(r).calls(readings.get(r).declineRatio(logYield)));
    }

    /**
     * Returns the smallest decline found in 80 % of trials [fraction per year], by bisection on the same simulated scatter; empty if not even half
     * the yield lost each year would be.
     */
    public OptionalDouble smallestFound(int onsetAge) {
        if (of(onsetAge, LARGEST) < AgeOptions.WANTED_POWER) {
            return OptionalDouble.empty();
        }
        double missed = 0.0;
        double found = LARGEST;
        while (found - missed > RESOLUTION) {
            double middle = 0.5 * (missed + found);
            if (of(onsetAge, middle) < AgeOptions.WANTED_POWER) {
                missed = middle;
            } else {
                found = middle;
            }
        }
        return OptionalDouble.of(found);
    }
}
