package org.thirstline.calibration.skill;

/** Something that learns from the training part of a fold and predicts the part held out. */
@FunctionalInterface
public interface Predictor {

    /**
     * Returns predictions of the observations held out, in their order, made without a look at them.
     *
     * @param fold the division
     */
    double[] predict(Fold fold);

    /**
     * Returns the baseline that predicts the mean of the training observations.
     *
     * @param observed all observations
     */
    static Predictor mean(double[] observed) {
        return new MeanBaseline(observed);
    }

    /**
     * Returns the baseline that predicts by a straight line on one covariate, such as seasonal rain; by the mean where the covariate
     * does not vary in the training part.
     *
     * @param observed all observations
     * @param covariate its values with all observations
     */
    static Predictor regression(double[] observed, double[] covariate) {
        return new RegressionBaseline(observed, covariate);
    }
}
