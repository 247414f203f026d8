package org.thirstline.calibration.response;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.stat.regression.SimpleRegression;

/**
 * Flat up to a threshold, then rising: y = a + b max(0, x - c), by least squares over a, b and c. Immutable and thread-safe.
 *
 * @param level a, y up to the threshold
 * @param slope b, beyond the threshold
 * @param threshold c
 * @param thresholdInterval thresholds whose sum of squares an F test at 95 % cannot tell from the best (profile interval, searched
 *     between the second lowest and the third highest x)
 * @param residualSumOfSquares at the best threshold
 */
public record BrokenLine(
        double level, double slope, double threshold, Interval thresholdInterval, double residualSumOfSquares) {

    /** Different x needed on the flat part, and beyond the threshold. */
    private static final int FLAT_POINTS = 2;

    private static final int RISING_POINTS = 3;
    private static final int PROFILE_STEPS = 400;
    private static final double LEVEL = 0.95;

    /** Best level and slope at one threshold. */
    private record Hinge(double threshold, double level, double slope, double residualSumOfSquares) {}

    /**
     * Fits the line by the profile over the threshold: every knot and the inner minimum between each two.
     *
     * @param x values; not modified
     * @param y as many values; not modified
     * @return the fit; absent when x takes too few different values or no threshold gives a rising line
     */
    static Optional<BrokenLine> fit(double[] x, double[] y) {
        double[] different = Arrays.stream(x).distinct().sorted().toArray();
        if (different.length < FLAT_POINTS + RISING_POINTS) {
            return Optional.empty();
        }
        double lowest = different[FLAT_POINTS - 1];
        double highest = different[different.length - RISING_POINTS];
        Hinge best = best(x, y, Arrays.copyOfRange(different, FLAT_POINTS - 1, different.length - RISING_POINTS + 1));
        if (!(best.slope > 0.0)) {
            return Optional.empty();
        }
        Interval thresholds = thresholdInterval(x, y, best, lowest, highest);
        return Optional.of(
                new BrokenLine(best.level, best.slope, best.threshold, thresholds, best.residualSumOfSquares));
    }

    /** Returns the line's height at a point. */
    public double at(double x) {
        return level + slope * excess(x);
    }

    /**
     * Returns the 95 % prediction interval of one new y at a point, with the threshold taken as known: its own doubt is in
     * {@link #thresholdInterval}. The residual variance has n - 3 degrees of freedom.
     *
     * @param x the point
     * @param fittedX the x the line was fitted to; not modified
     */
    Interval predictionBand(double x, double[] fittedX) {
        int n = fittedX.length;
        double mean = 0.0;
        for (double value : fittedX) {
            mean += excess(value) / n;
        }
        double squares = 0.0;
        for (double value : fittedX) {
            squares += (excess(value) - mean) * (excess(value) - mean);
        }
        double distance = excess(x) - mean;
        double variance = residualSumOfSquares / (n - 3.0);
        return Interval.around(
                at(x), TwoSided95.t(n - 3) * Math.sqrt(variance * (1.0 + 1.0 / n + distance * distance / squares)));
    }

    private double excess(double x) {
        return Math.max(0.0, x - threshold);
    }

    private static Hinge best(double[] x, double[] y, double[] knots) {
        Hinge best = hinge(x, y, knots[0]);
        for (int i = 1; i < knots.length; i++) {
            best = better(best, hinge(x, y, knots[i]));
            best = better(best, hinge(x, y, meeting(x, y, knots[i - 1], knots[i])));
        }
        return best;
    }

    private static Hinge better(Hinge one, Hinge other) {
        return other.residualSumOfSquares < one.residualSumOfSquares ? other : one;
    }

    /**
     * Threshold at which the mean of the points on the left meets the line through the points on the right: if it lies between the two
     * knots, it is the only inner minimum there (Hinkley 1969); if not, the nearer knot.
     */
    private static double meeting(double[] x, double[] y, double from, double to) {
        SimpleRegression right = new SimpleRegression();
        double sum = 0.0;
        int left = 0;
        for (int i = 0; i < x.length; i++) {
            if (x[i] <= from) {
                sum += y[i];
                left++;
            } else {
                right.addData(x[i], y[i]);
            }
        }
        double meeting = (sum / left - right.getIntercept()) / right.getSlope();
        return meeting >= from && meeting <= to ? meeting : from;
    }

    private static Hinge hinge(double[] x, double[] y, double threshold) {
        double[] excess =
                Arrays.stream(x).map(value -> Math.max(0.0, value - threshold)).toArray();
        StraightLine line = StraightLine.fit(excess, y);
        return new Hinge(threshold, line.intercept(), line.slope(), line.residualSumOfSquares());
    }

    private static Interval thresholdInterval(double[] x, double[] y, Hinge best, double lowest, double highest) {
        double freedom = x.length - 3.0;
        double factor = 1.0 + new FDistribution(1.0, freedom).inverseCumulativeProbability(LEVEL) / freedom;
        double limit = best.residualSumOfSquares * factor;
        double from = best.threshold;
        double to = best.threshold;
        for (int step = 0; step <= PROFILE_STEPS; step++) {
            double threshold = lowest + (highest - lowest) * step / PROFILE_STEPS;
            if (hinge(x, y, threshold).residualSumOfSquares <= limit) {
                from = Math.min(from, threshold);
                to = Math.max(to, threshold);
            }
        }
        return new Interval(from, to);
    }
}
