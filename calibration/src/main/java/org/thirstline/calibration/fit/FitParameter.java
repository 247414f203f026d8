package org.thirstline.calibration.fit;

import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;

/**
 * A parameter to fit. Immutable and thread-safe.
 *
 * @param name what it is
 * @param start where the first search starts
 * @param lower lower bound, may be infinite
 * @param upper upper bound, may be infinite
 * @param scale typical size, above 0: what counts as a small change
 */
public record FitParameter(String name, double start, double lower, double upper, double scale) {

    /** Refuses a start outside the bounds and a scale that is not positive. */
    public FitParameter {
        if (!(lower < upper && start >= lower && start <= upper && Double.isFinite(start))) {
            throw new InputException(CalibrationError.START_OUTSIDE_BOUNDS, name, lower, start, upper);
        }
        Check.range("scale of " + name, scale, "", Double.MIN_NORMAL, Double.MAX_VALUE);
    }

    /**
     * Returns a parameter without bounds, as large as its start.
     *
     * @param name what it is
     * @param start where the search starts
     */
    public static FitParameter free(String name, double start) {
        return new FitParameter(
                name, start, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, start == 0.0 ? 1.0 : Math.abs(start));
    }

    /**
     * Returns a parameter between finite bounds, scaled by a tenth of their distance.
     *
     * @param name what it is
     * @param start where the search starts
     * @param lower lower bound
     * @param upper upper bound
     */
    public static FitParameter between(String name, double start, double lower, double upper) {
        return new FitParameter(name, start, lower, upper, 0.1 * (upper - lower));
    }

    boolean hasFiniteBounds() {
        return Double.isFinite(lower) && Double.isFinite(upper);
    }

    double clamp(double value) {
        return Math.max(lower, Math.min(upper, value));
    }
}
