package org.thirstline.calibration.skill;

import java.util.Arrays;

/** Predicts by least squares on one covariate. Immutable and thread-safe. */
final class RegressionBaseline implements Predictor {

    private final double[] observed;
    private final double[] covariate;

    RegressionBaseline(double[] observed, double[] covariate) {
        Pairs.requireSameLength("observed", observed, "covariate", covariate);
        Pairs.requireFinite("an observed value", observed);
        Pairs.requireFinite("a value of the covariate", covariate);
        this.observed = observed.clone();
        this.covariate = covariate.clone();
    }

    @Override
    public double[] predict(Fold fold) {
        double[] x = fold.training(covariate);
        double[] y = fold.training(observed);
        double xMean = Arrays.stream(x).average().orElseThrow();
        double yMean = Arrays.stream(y).average().orElseThrow();
        double product = 0.0;
        double square = 0.0;
        for (int i = 0; i < x.length; i++) {
            product += (x[i] - xMean) * (y[i] - yMean);
            square += (x[i] - xMean) * (x[i] - xMean);
        }
        boolean varies = Arrays.stream(x).anyMatch(value -> value != x[0]);
        double slope = varies ? product / square : 0.0;
        return Arrays.stream(fold.heldOut(covariate))
                .map(value -> yMean + slope * (value - xMean))
                .toArray();
    }
}
