package org.thirstline.model.units;

/**
 * The smaller, the larger, and what lies between bounds, for the day loop. {@link Math#min} and {@link Math#max} tell 0.0 from -0.0 and look at both
 * values for NaN, which costs several times the comparison; here a first argument that is NaN stays NaN, so that none is ever hidden. Stateless
 * and thread-safe.
 */
public final class Bound {

    private Bound() {}

    /** Returns the smaller of a value and a limit. */
    public static double atMost(double value, double limit) {
        return value > limit ? limit : value;
    }

    /** Returns the larger of a value and a limit. */
    public static double atLeast(double value, double limit) {
        return value < limit ? limit : value;
    }

    /** Returns a value, or 0 if it is negative. */
    public static double notNegative(double value) {
        return value < 0.0 ? 0.0 : value;
    }

    /** Returns a value within 0 and 1. */
    public static double share(double value) {
        return value < 0.0 ? 0.0 : value > 1.0 ? 1.0 : value;
    }
}
