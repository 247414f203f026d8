package org.thirstline.calibration.fit;

import org.thirstline.model.error.Check;

/**
 * How to search. Immutable and thread-safe.
 *
 * @param starts number of searches; the first starts where the parameters say, the others at random
 * @param seed of the random starts
 * @param maximumEvaluations of the Jacobian, per search
 * @param relativeStep step of the numeric Jacobian as a share of a parameter's size; larger for models that are not smooth
 * @param differences kind of numeric Jacobian
 * @param tolerance relative change of the sum of squares, and of parameters, at which a search ends
 */
public record FitOptions(
        int starts, long seed, int maximumEvaluations, double relativeStep, Differences differences, double tolerance) {

    /** Close to what doubles can tell. */
    private static final double FINEST = 1.0e-14;

    /** Kinds of numeric Jacobian. */
    public enum Differences {
        /** One extra evaluation per parameter, error of the order of the step. */
        FORWARD,
        /** Two extra evaluations per parameter, error of the order of the step squared. */
        CENTRAL
    }

    /** Refuses a search without starts or steps. */
    public FitOptions {
        Check.range("number of starts", starts, "", 1.0, 100_000.0);
        Check.range("maximum evaluations", maximumEvaluations, "", 1.0, Integer.MAX_VALUE);
        Check.range("relative step of the Jacobian", relativeStep, "", 1.0e-12, 0.5);
        Check.range("tolerance", tolerance, "", FINEST, 0.1);
    }

    /** Searches as far as doubles can tell. */
    public FitOptions(int starts, long seed, int maximumEvaluations, double relativeStep, Differences differences) {
        this(starts, seed, maximumEvaluations, relativeStep, differences, FINEST);
    }

    /** Returns one precise search for a smooth model: central differences with the cube root of the rounding unit as step. */
    public static FitOptions smooth() {
        return new FitOptions(1, 1L, 2000, Math.cbrt(Math.ulp(1.0)), Differences.CENTRAL);
    }

    /**
     * Returns these options with several starts.
     *
     * @param starts number of searches
     * @param seed of the random starts
     */
    public FitOptions withStarts(int starts, long seed) {
        return new FitOptions(starts, seed, maximumEvaluations, relativeStep, differences, tolerance);
    }

    /**
     * Returns these options with another Jacobian.
     *
     * @param relativeStep step as a share of a parameter's size
     * @param differences kind
     */
    public FitOptions withJacobian(double relativeStep, Differences differences) {
        return new FitOptions(starts, seed, maximumEvaluations, relativeStep, differences, tolerance);
    }

    /**
     * Returns these options with another end of the searches.
     *
     * @param tolerance relative change at which a search ends
     */
    public FitOptions withTolerance(double tolerance) {
        return new FitOptions(starts, seed, maximumEvaluations, relativeStep, differences, tolerance);
    }

    /**
     * Returns these options with another limit.
     *
     * @param maximumEvaluations of the Jacobian, per search
     */
    public FitOptions withMaximumEvaluations(int maximumEvaluations) {
        return new FitOptions(starts, seed, maximumEvaluations, relativeStep, differences, tolerance);
    }
}
