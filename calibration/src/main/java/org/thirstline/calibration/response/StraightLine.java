package org.thirstline.calibration.response;

import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.regression.SimpleRegression;

/**
 * Straight line by ordinary least squares, with the intervals of normal theory at 95 %. Immutable and thread-safe.
 *
 * @param n number of points
 * @param slope b
 * @param intercept a
 * @param slopeError standard error of b
 * @param interceptError standard error of a
 * @param residualDeviation s, residual standard deviation on n - 2 degrees of freedom
 * @param rSquared share of the variance of y that the line takes up; NaN if y does not vary
 * @param meanX mean of x
 * @param sumSquaresX sum of squares of x about its mean
 */
public record StraightLine(
        int n,
        double slope,
        double intercept,
        double slopeError,
        double interceptError,
        double residualDeviation,
        double rSquared,
        double meanX,
        double sumSquaresX) {

    /**
     * Fits y = a + b x.
     *
     * @param x at least three values that are not all the same; not modified
     * @param y as many values; not modified
     */
    public static StraightLine fit(double[] x, double[] y) {
        SimpleRegression regression = new SimpleRegression();
        double meanX = 0.0;
        for (int i = 0; i < x.length; i++) {
            regression.addData(x[i], y[i]);
            meanX += x[i] / x.length;
        }
        return new StraightLine(
                x.length,
                regression.getSlope(),
                regression.getIntercept(),
                regression.getSlopeStdErr(),
                regression.getInterceptStdErr(),
                Math.sqrt(Math.max(0.0, regression.getMeanSquareError())),
                regression.getTotalSumSquares() > 0.0 ? regression.getRSquare() : Double.NaN,
                meanX,
                regression.getXSumSquares());
    }

    /** Returns the line's height at a point. */
    public double at(double x) {
        return intercept + slope * x;
    }

    /** Returns the 95 % confidence interval of the slope. */
    public Interval slopeInterval() {
        return Interval.around(slope, TwoSided95.t(n - 2) * slopeError);
    }

    /** Returns the 95 % confidence interval of the intercept. */
    public Interval interceptInterval() {
        return Interval.around(intercept, TwoSided95.t(n - 2) * interceptError);
    }

    /** Returns the 95 % confidence interval of the mean of y at a point: where the line may run. */
    public Interval confidenceBand(double x) {
        return Interval.around(at(x), TwoSided95.t(n - 2) * residualDeviation * Math.sqrt(leverage(x)));
    }

    /** Returns the 95 % prediction interval of one new y at a point: where a single year may fall. */
    public Interval predictionBand(double x) {
        return Interval.around(at(x), TwoSided95.t(n - 2) * residualDeviation * Math.sqrt(1.0 + leverage(x)));
    }

    /** Returns the two-sided probability of so steep a slope if there were none; 0 for a line without scatter. */
    public double slopeProbability() {
        if (slopeError == 0.0) {
            return slope == 0.0 ? 1.0 : 0.0;
        }
        double t = Math.abs(slope / slopeError);
        return 2.0 * new TDistribution(n - 2.0).cumulativeProbability(-t);
    }

    double leverage(double x) {
        double distance = x - meanX;
        return 1.0 / n + distance * distance / sumSquaresX;
    }

    double residualSumOfSquares() {
        return residualDeviation * residualDeviation * (n - 2);
    }
}
