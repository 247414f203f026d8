package org.thirstline.calibration.posterior;

import java.util.Arrays;

/** Quantiles of a sample, interpolated between order statistics (type 7 of Hyndman and Fan 1996). Immutable and thread-safe. */
public final class SampleQuantiles {

    private final double[] sorted;

    private SampleQuantiles(double[] sorted) {
        this.sorted = sorted;
    }

    /**
     * Sorts a sample.
     *
     * @param values at least one; not modified
     */
    public static SampleQuantiles of(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return new SampleQuantiles(sorted);
    }

    /** Returns the quantile at a probability from 0 to 1. */
    public double at(double probability) {
        double position = probability * (sorted.length - 1);
        int below = (int) position;
        int above = Math.min(below + 1, sorted.length - 1);
        double share = position - below;
        return share == 0.0 ? sorted[below] : sorted[below] + share * (sorted[above] - sorted[below]);
    }
}
