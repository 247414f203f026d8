package org.thirstline.calibration.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.thirstline.model.error.Check;

/**
 * Profile likelihoods of a least-squares fit: one parameter is held at one value after another, away from its best, and the others are
 * fitted again.
 *
 * @cite bates1988
 */
public final class ProfileLikelihood {

    private final ResidualModel model;
    private final FitResult fit;
    private final FitOptions search;
    private final Options options;
    private final double variance;
    private final double limit;

    /**
     * How far to go. Immutable and thread-safe.
     *
     * @param confidence of the interval, such as 0.95
     * @param pointsPerSide most points on each side
     * @param errorsKnown whether residuals come in units of errors that are known, instead of their variance being estimated
     */
    public record Options(double confidence, int pointsPerSide, boolean errorsKnown) {

        /** Refuses confidence that is none. */
        public Options {
            Check.range("confidence", confidence, "", 0.5, 0.9999);
            Check.range("points on each side", pointsPerSide, "", 4.0, 10_000.0);
        }

        /** Returns a 95 % interval with an estimated residual variance and at most 40 points a side. */
        public static Options standard() {
            return new Options(0.95, 40, false);
        }
    }

    /**
     * Prepares profiles.
     *
     * @param model what was fitted
     * @param fit its best fit, with residuals left over unless errors are known
     * @param search how the other parameters are searched, from where they are
     * @param options how far to go
     */
    public ProfileLikelihood(ResidualModel model, FitResult fit, FitOptions search, Options options) {
        this.model = model;
        this.fit = fit;
        this.search = search.withStarts(1, search.seed());
        this.options = options;
        double deviation = options.errorsKnown ? 1.0 : fit.residualDeviation();
        Check.range("residual standard deviation", deviation, "", Double.MIN_NORMAL, Double.MAX_VALUE);
        variance = deviation * deviation;
        double probability = 0.5 + 0.5 * options.confidence;
        limit = options.errorsKnown
                ? new NormalDistribution().inverseCumulativeProbability(probability)
                : new TDistribution(fit.degreesOfFreedom()).inverseCumulativeProbability(probability);
    }

    /** Returns the profiles of all parameters. */
    public List<Profile> all() {
        List<Profile> profiles = new ArrayList<>();
        for (int index = 0; index < fit.parameters().size(); index++) {
            profiles.add(of(index));
        }
        return List.copyOf(profiles);
    }

    /**
     * Returns the profile of one parameter.
     *
     * @param index of the parameter
     */
    public Profile of(int index) {
        ProfileSide down = new ProfileSide(this, index, -1);
        ProfileSide up = new ProfileSide(this, index, 1);
        List<ProfilePoint> points = new ArrayList<>(down.walk());
        points.addAll(up.walk());
        points.add(new ProfilePoint(fit.value(index), fit.residualSumOfSquares(), 0.0));
        points.sort(Comparator.comparingDouble(ProfilePoint::value));
        return new Profile(
                fit.parameters().get(index).name(),
                fit.value(index),
                points,
                limit,
                down.end(),
                up.end(),
                down.isOpen(),
                up.isOpen());
    }

    ResidualModel model() {
        return model;
    }

    FitResult fit() {
        return fit;
    }

    FitOptions search() {
        return search;
    }

    int pointsPerSide() {
        return options.pointsPerSide;
    }

    double limit() {
        return limit;
    }

    /** Returns the root of the rise of a sum of squares over the residual variance. */
    double root(double residualSumOfSquares) {
        return Math.sqrt(Math.max(0.0, residualSumOfSquares - fit.residualSumOfSquares()) / variance);
    }
}
