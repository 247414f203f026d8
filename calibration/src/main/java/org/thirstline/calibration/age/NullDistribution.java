package org.thirstline.calibration.age;

import java.util.Arrays;
import java.util.List;

/**
 * Likelihood ratios of the best decline in simulated trials that have none: the parametric bootstrap. It carries the search for an
 * onset, the few years and the shared year effects into the test, where chi-square would not. Immutable and thread-safe.
 */
final class NullDistribution {

    private final double[] sorted;

    private NullDistribution(double[] sorted) {
        this.sorted = sorted;
    }

    /** Simulates trials that differ only in plots, years and chance; the test is against decline, so half the two-sided size is its size. */
    static NullDistribution of(MixedModel model, VarianceParts parts, int replicates, long seed, long stream) {
        List<Double> ratios = Replicates.of(
                replicates, seed, stream, random -> model.profile(model.design().noise(parts, random))
                        .declineRatio());
        double[] sorted =
                ratios.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        return new NullDistribution(sorted);
    }

    /** Returns the share of trials without decline that look at least as much like one, the trial itself counted in. */
    double chance(double ratio) {
        if (ratio <= 0.0) {
            return 1.0;
        }
        int at = Arrays.binarySearch(sorted, ratio);
        int below = at < 0 ? -at - 1 : at;
        return (1.0 + sorted.length - below) / (1.0 + sorted.length);
    }

    /** Returns whether a decline is called. */
    boolean calls(double ratio) {
        return chance(ratio) <= 0.5 * AgeOptions.SIZE;
    }
}
