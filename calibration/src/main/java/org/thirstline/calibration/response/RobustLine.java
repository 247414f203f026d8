package org.thirstline.calibration.response;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Theil-Sen line: the median of the slopes between all pairs of points, little moved by single odd years. Immutable and thread-safe.
 *
 * @param slope median of the pairwise slopes (Theil 1950)
 * @param intercept median of y - slope x
 * @param slopeInterval 95 % interval of the slope from the rank statistic of Sen (1968), normal approximation with ties in x, limits
 *     interpolated between ordered slopes
 * @param pairs number of pairwise slopes; pairs at the same x have none
 */
public record RobustLine(double slope, double intercept, Interval slopeInterval, int pairs) {

    private static final double LEVEL = 0.95;

    /**
     * Fits the line.
     *
     * @param x at least two values that are not all the same; not modified
     * @param y as many values; not modified
     */
    static RobustLine fit(double[] x, double[] y) {
        double[] slopes = pairwiseSlopes(x, y);
        double slope = median(slopes);
        double[] offsets = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            offsets[i] = y[i] - slope * x[i];
        }
        Arrays.sort(offsets);
        return new RobustLine(slope, median(offsets), interval(slopes, x), slopes.length);
    }

    /** Returns the line's height at a point. */
    public double at(double x) {
        return intercept + slope * x;
    }

    private static double[] pairwiseSlopes(double[] x, double[] y) {
        double[] slopes = new double[x.length * (x.length - 1) / 2];
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[i] != x[j]) {
                    slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
                }
            }
        }
        double[] kept = Arrays.copyOf(slopes, count);
        Arrays.sort(kept);
        return kept;
    }

    private static double median(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
    }

    /** Ranks (N - C)/2 and (N + C)/2 + 1 of the N ordered slopes, C = z √Var(S). */
    private static Interval interval(double[] sortedSlopes, double[] x) {
        double z = new NormalDistribution(0.0, 1.0).inverseCumulativeProbability(0.5 * (1.0 + LEVEL));
        double spread = z * Math.sqrt(kendallVariance(x));
        double lowerRank = 0.5 * (sortedSlopes.length - spread);
        double upperRank = 0.5 * (sortedSlopes.length + spread) + 1.0;
        return new Interval(atRank(sortedSlopes, lowerRank), atRank(sortedSlopes, upperRank));
    }

    /** Variance of Kendall's S without trend: n (n - 1)(2n + 5)/18, less the same for each group of equal x. */
    private static double kendallVariance(double[] x) {
        Map<Double, Integer> groups = new HashMap<>();
        for (double value : x) {
            groups.merge(value, 1, Integer::sum);
        }
        double variance = kendallTerm(x.length);
        for (int size : groups.values()) {
            variance -= kendallTerm(size);
        }
        return variance / 18.0;
    }

    private static double kendallTerm(int n) {
        return n * (n - 1.0) * (2.0 * n + 5.0);
    }

    private static double atRank(double[] sorted, double rank) {
        double position = Math.max(1.0, Math.min(sorted.length, rank)) - 1.0;
        int below = (int) Math.floor(position);
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }
}
