package org.thirstline.model.climate;

import org.hipparchus.special.Gamma;
import org.thirstline.model.error.Check;

/**
 * Two-parameter gamma distribution of positive rain totals. Immutable and thread-safe.
 *
 * @param shape α [-]
 * @param scale β, in the unit of the totals
 */
public record GammaFit(double shape, double scale) {

    /** How the parameters are estimated. */
    public enum Method {
        /** Closed approximation to maximum likelihood by Thom (1966), as in Edwards and McKee (1997). */
        THOM,
        /** Maximum likelihood, solved by iteration. */
        MAXIMUM_LIKELIHOOD
    }

    private static final int MAXIMUM_ITERATIONS = 100;
    private static final double RELATIVE_TOLERANCE = 1.0e-14;

    /** Refuses parameters that are not positive. */
    public GammaFit {
        Check.range("gamma shape", shape, "", Double.MIN_NORMAL, Double.MAX_VALUE);
        Check.range("gamma scale", scale, "", Double.MIN_NORMAL, Double.MAX_VALUE);
    }

    /**
     * Fits positive totals, of which at least two must differ.
     *
     * @param totals each above zero; not modified
     * @param method how
     * @throws org.thirstline.model.error.InputException if a total is not positive or all are the same
     */
    public static GammaFit of(double[] totals, Method method) {
        Check.range("number of totals for a gamma fit", totals.length, "", 2.0, Integer.MAX_VALUE);
        double mean = 0.0;
        double meanLogarithm = 0.0;
        for (double total : totals) {
            Check.range("total for a gamma fit", total, "", Double.MIN_NORMAL, Double.MAX_VALUE);
            mean += total / totals.length;
            meanLogarithm += Math.log(total) / totals.length;
        }
        return ofMeans(mean, Math.log(mean) - meanLogarithm, method);
    }

    /**
     * Fits from the two statistics that hold all that a sample says.
     *
     * @param mean arithmetic mean
     * @param logarithmGap A: logarithm of the mean minus mean of the logarithms, above 0 unless all totals are the same
     * @param method how
     */
    public static GammaFit ofMeans(double mean, double logarithmGap, Method method) {
        Check.range("logarithm of the mean minus mean logarithm", logarithmGap, "", 1.0e-12, Double.MAX_VALUE);
        double thom = (1.0 + Math.sqrt(1.0 + 4.0 * logarithmGap / 3.0)) / (4.0 * logarithmGap);
        double shape = method == Method.THOM ? thom : likelihoodShape(thom, logarithmGap);
        return new GammaFit(shape, mean / shape);
    }

    /** Solves ln α - ψ(α) = A by Newton's method in ln α, which keeps α positive. */
    private static double likelihoodShape(double start, double logarithmGap) {
        double shape = start;
        for (int iteration = 0; iteration < MAXIMUM_ITERATIONS; iteration++) {
            double error = Math.log(shape) - Gamma.digamma(shape) - logarithmGap;
            double slope = 1.0 - shape * Gamma.trigamma(shape);
            double next = shape * Math.exp(-error / slope);
            if (Math.abs(next - shape) <= RELATIVE_TOLERANCE * shape) {
                return next;
            }
            shape = next;
        }
        return shape;
    }

    /**
     * Returns the probability of a total not above a value.
     *
     * @param total value, in the unit of the scale
     */
    public double cumulativeProbability(double total) {
        return total <= 0.0 ? 0.0 : Gamma.regularizedGammaP(shape, total / scale);
    }
}
