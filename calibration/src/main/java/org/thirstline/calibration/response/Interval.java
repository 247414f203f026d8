package org.thirstline.calibration.response;

/**
 * A closed interval. Immutable and thread-safe.
 *
 * @param lower smaller end
 * @param upper larger end
 */
public record Interval(double lower, double upper) {

    /** Returns whether a value lies inside, ends included. */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    static Interval around(double centre, double halfWidth) {
        return new Interval(centre - halfWidth, centre + halfWidth);
    }
}
