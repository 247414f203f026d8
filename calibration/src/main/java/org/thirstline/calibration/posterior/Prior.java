package org.thirstline.calibration.posterior;

import java.util.Locale;
import org.hipparchus.distribution.RealDistribution;
import org.hipparchus.distribution.continuous.LogNormalDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TriangularDistribution;
import org.hipparchus.distribution.continuous.UniformRealDistribution;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;

/** What is believed of one parameter before the data: a distribution cut off at finite bounds. Immutable and thread-safe. */
public final class Prior {

    /** Share of the uncut distribution that must lie between the bounds; below it rounding spoils the rest. */
    private static final double LEAST_MASS = 1.0e-9;

    /** Half-width, in standard deviations, of a published range read as holding 95 % of the values. */
    private static final double HALF_WIDTH_95 = 1.959963984540054;

    private final Shape shape;
    private final RealDistribution uncut;
    private final String description;
    private final double lower;
    private final double upper;
    private final double below;
    private final double mass;
    private final double logMass;
    private final double logWidth;

    /** Forms of prior. */
    public enum Shape {
        /** Every value between the bounds alike. */
        UNIFORM,
        /** Symmetric about a mean. */
        NORMAL,
        /** Normal on the log scale: factors rather than differences. */
        LOGNORMAL,
        /** Straight lines up to a best value and down again. */
        TRIANGULAR
    }

    private Prior(Shape shape, RealDistribution uncut, double lower, double upper, String centre) {
        Check.range("lower bound of a prior", lower, "", -Double.MAX_VALUE, Double.MAX_VALUE);
        Check.range("upper bound of a prior", upper, "", -Double.MAX_VALUE, Double.MAX_VALUE);
        Check.below("lower bound", lower, "upper bound", upper, "");
        this.shape = shape;
        this.uncut = uncut;
        this.lower = lower;
        this.upper = upper;
        below = uncut.cumulativeProbability(lower);
        mass = uncut.cumulativeProbability(upper) - below;
        String name = shape.name().toLowerCase(Locale.ROOT);
        if (!(mass >= LEAST_MASS)) {
            throw new InputException(CalibrationError.PRIOR_WITHOUT_MASS, name, lower, upper);
        }
        logMass = Math.log(mass);
        logWidth = Math.log(upper - lower);
        description = name + centre + " between " + lower + " and " + upper;
    }

    /**
     * Returns a prior without preference.
     *
     * @param lower lower bound
     * @param upper upper bound
     */
    public static Prior uniform(double lower, double upper) {
        Check.below("lower bound", lower, "upper bound", upper, "");
        return new Prior(Shape.UNIFORM, new UniformRealDistribution(lower, upper), lower, upper, "");
    }

    /**
     * Returns a normal prior cut off at bounds.
     *
     * @param mean mean before the cut
     * @param standardDeviation standard deviation before the cut, above 0
     * @param lower lower bound
     * @param upper upper bound
     */
    public static Prior normal(double mean, double standardDeviation, double lower, double upper) {
        positive("standard deviation of a prior", standardDeviation);
        Check.range("mean of a prior", mean, "", -Double.MAX_VALUE, Double.MAX_VALUE);
        return new Prior(
                Shape.NORMAL,
                new NormalDistribution(mean, standardDeviation),
                lower,
                upper,
                " (mean " + mean + ", standard deviation " + standardDeviation + ")");
    }

    /**
     * Returns a lognormal prior cut off at bounds.
     *
     * @param median median before the cut, above 0
     * @param logDeviation standard deviation of the natural log, above 0
     * @param lower lower bound
     * @param upper upper bound
     */
    public static Prior lognormal(double median, double logDeviation, double lower, double upper) {
        positive("median of a lognormal prior", median);
        positive("log standard deviation of a prior", logDeviation);
        return new Prior(
                Shape.LOGNORMAL,
                new LogNormalDistribution(Math.log(median), logDeviation),
                lower,
                upper,
                " (median " + median + ", log standard deviation " + logDeviation + ")");
    }

    /**
     * Returns a triangular prior cut off at bounds.
     *
     * @param smallest where the triangle starts
     * @param best its peak, from smallest to largest
     * @param largest where it ends
     * @param lower lower bound
     * @param upper upper bound
     */
    public static Prior triangular(double smallest, double best, double largest, double lower, double upper) {
        Check.below("smallest value", smallest, "largest value", largest, "");
        Check.range("best value of a triangular prior", best, "", smallest, largest);
        return new Prior(
                Shape.TRIANGULAR,
                new TriangularDistribution(smallest, best, largest),
                lower,
                upper,
                " (from " + smallest + " by " + best + " to " + largest + ")");
    }

    /**
     * Reads a published range as a prior. For a normal and a lognormal the range is taken to hold 95 % of the values, and its middle
     * (on the log scale for a lognormal) replaces the best value; a uniform and a triangular end where the range ends.
     *
     * @param shape form
     * @param low published low value
     * @param best published best value, used by the triangular
     * @param high published high value
     * @param lower hard lower bound
     * @param upper hard upper bound
     */
    public static Prior ofPublishedRange(
            Shape shape, double low, double best, double high, double lower, double upper) {
        Check.below("low end of a published range", low, "high end", high, "");
        return switch (shape) {
            case UNIFORM -> uniform(Math.max(low, lower), Math.min(high, upper));
            case NORMAL -> normal(0.5 * (low + high), 0.5 * (high - low) / HALF_WIDTH_95, lower, upper);
            case LOGNORMAL -> {
                positive("low end of a published range", low);
                yield lognormal(Math.sqrt(low * high), 0.5 * Math.log(high / low) / HALF_WIDTH_95, lower, upper);
            }
            case TRIANGULAR -> triangular(low, best, high, lower, upper);
        };
    }

    private static void positive(String name, double value) {
        Check.range(name, value, "", Double.MIN_NORMAL, Double.MAX_VALUE);
    }

    /** Returns the form. */
    public Shape shape() {
        return shape;
    }

    /** Returns the lower bound. */
    public double lower() {
        return lower;
    }

    /** Returns the upper bound. */
    public double upper() {
        return upper;
    }

    /**
     * Returns the natural log of the density, which integrates to one between the bounds; minus infinity outside.
     *
     * @param value of the parameter
     */
    public double logDensity(double value) {
        if (!(value >= lower && value <= upper)) {
            return Double.NEGATIVE_INFINITY;
        }
        return shape == Shape.UNIFORM ? -logWidth : uncut.logDensity(value) - logMass;
    }

    /**
     * Returns the probability of a smaller value.
     *
     * @param value of the parameter
     */
    public double cumulative(double value) {
        if (value <= lower) {
            return 0.0;
        }
        return value >= upper ? 1.0 : Math.min(1.0, (uncut.cumulativeProbability(value) - below) / mass);
    }

    /**
     * Returns the value that a given share of the distribution lies below.
     *
     * @param probability 0 to 1
     */
    public double quantile(double probability) {
        Check.range("probability", probability, "", 0.0, 1.0);
        double value = uncut.inverseCumulativeProbability(Math.min(1.0, below + probability * mass));
        return Math.max(lower, Math.min(upper, value));
    }

    /** Returns the prior in words. */
    @Override
    public String toString() {
        return description;
    }
}
