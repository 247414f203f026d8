package org.thirstline.calibration.fit;

import java.util.List;
import java.util.Locale;

/**
 * How the fit worsens as one parameter moves away from its best value while the others follow. Immutable and thread-safe.
 *
 * @param name the parameter
 * @param estimate its best value
 * @param points by value, the best one among them
 * @param limit size of the signed root at the ends of the interval
 * @param lower lower end of the profile interval; the lowest value tried if the profile stays open
 * @param upper upper end; the highest value tried if the profile stays open
 * @param lowerOpen whether the data do not rule out the lowest value that may be tried
 * @param upperOpen whether the data do not rule out the highest value that may be tried
 */
public record Profile(
        String name,
        double estimate,
        List<ProfilePoint> points,
        double limit,
        double lower,
        double upper,
        boolean lowerOpen,
        boolean upperOpen) {

    /** A profile this much below the best sum of squares, relatively, shows that the fit had not found the minimum. */
    private static final double BETTER = 1.0e-6;

    /** What a profile says. */
    public enum Verdict {
        /** The interval ends on both sides. */
        DETERMINED,
        /** The data rule out values on one side only. */
        ONE_SIDED,
        /** The data rule out no value. */
        FLAT
    }

    /** Copies the points. */
    public Profile {
        points = List.copyOf(points);
    }

    /** Returns what the profile says. */
    public Verdict verdict() {
        if (lowerOpen && upperOpen) {
            return Verdict.FLAT;
        }
        return lowerOpen || upperOpen ? Verdict.ONE_SIDED : Verdict.DETERMINED;
    }

    /** Returns whether a point of the profile fits better than the fit it started from, so that this should be repeated from there. */
    public boolean foundBetterFit() {
        double best = points.stream()
                .filter(point -> point.value() == estimate)
                .mapToDouble(ProfilePoint::residualSumOfSquares)
                .findFirst()
                .orElseThrow();
        return points.stream().anyMatch(point -> point.residualSumOfSquares() < best * (1.0 - BETTER));
    }

    /** Returns the verdict in words. */
    public String words() {
        return switch (verdict()) {
            case DETERMINED -> text("%s is determined: %.4g (%.4g to %.4g)", name, estimate, lower, upper);
            case FLAT ->
                text(
                        "%s is not determined: every value from %.4g to %.4g fits about as well; fix it, or add data that bear on it",
                        name, lower, upper);
            case ONE_SIDED ->
                lowerOpen
                        ? text(
                                "%s is bounded from above only: values above %.4g are ruled out, none below",
                                name, upper)
                        : text(
                                "%s is bounded from below only: values below %.4g are ruled out, none above",
                                name, lower);
        };
    }

    private static String text(String template, Object... values) {
        return String.format(Locale.ROOT, template, values);
    }
}
