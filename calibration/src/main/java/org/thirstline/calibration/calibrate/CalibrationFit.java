package org.thirstline.calibration.calibrate;

import java.util.List;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.fit.FixAdvice;
import org.thirstline.calibration.fit.Identifiability;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.fit.SearchResult;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.CalibrationProblem;

/**
 * A problem fitted by least squares. Immutable and thread-safe.
 *
 * @param problem the problem with the parameters that were fitted, and errors of the size that was left over
 * @param result the best fit, with residuals in units of the errors
 * @param searches all searches from their starts, best first, with the errors of that stage
 * @param identifiability how far the data tell the parameters apart
 * @param profiles profile likelihoods, one for each parameter
 * @param fixed parameters that were not fitted because the data cannot tell them, and why
 * @param doubts what the data can hardly tell of those that were fitted all the same
 */
public record CalibrationFit(
        CalibrationProblem problem,
        FitResult result,
        List<SearchResult> searches,
        Identifiability identifiability,
        List<Profile> profiles,
        List<Fixed> fixed,
        List<FixAdvice> doubts) {

    /** Sums of squares this close, relatively, count as the same minimum; the engine's days make finer steps than that. */
    private static final double SAME_MINIMUM = 2.0e-3;

    /** Copies the lists. */
    public CalibrationFit {
        searches = List.copyOf(searches);
        profiles = List.copyOf(profiles);
        fixed = List.copyOf(fixed);
        doubts = List.copyOf(doubts);
    }

    /**
     * A parameter that was not fitted.
     *
     * @param parameter the parameter
     * @param advice why not
     */
    public record Fixed(CalibratedParameter parameter, FixAdvice advice) {}

    /** Returns a copy of the fitted values. */
    public double[] point() {
        return result.values();
    }

    /** Returns whether the size of at least one error is known rather than estimated. */
    public boolean errorsKnown() {
        return problem.errors().stream().anyMatch(error -> !error.estimated());
    }

    /**
     * Returns the standard error of a parameter; NaN at a bound.
     *
     * @param index of the parameter
     */
    public double standardError(int index) {
        return result.standardError(index) * (errorsKnown() ? 1.0 / result.residualDeviation() : 1.0);
    }

    /** Returns how many searches ended at the best sum of squares. */
    public long searchesAgreeing() {
        double limit = searches.get(0).residualSumOfSquares() * (1.0 + SAME_MINIMUM);
        return searches.stream()
                .filter(search -> search.residualSumOfSquares() <= limit)
                .count();
    }

    /** Returns whether a profile went below the best fit, so that more starts or a global search should be tried. */
    public boolean profilesFoundBetter() {
        return profiles.stream()
                .flatMap(profile -> profile.points().stream())
                .anyMatch(point -> point.residualSumOfSquares() < result.residualSumOfSquares() / (1.0 + SAME_MINIMUM));
    }
}
