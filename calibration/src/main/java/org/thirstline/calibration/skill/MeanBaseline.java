package org.thirstline.calibration.skill;

import java.util.Arrays;

/** Predicts the mean of what was seen. Immutable and thread-safe. */
final class MeanBaseline implements Predictor {

    private final double[] observed;

    MeanBaseline(double[] observed) {
        Pairs.requireFinite("an observed value", observed);
        this.observed = observed.clone();
    }

    @Override
    public double[] predict(Fold fold) {
        double[] predictions = new double[fold.heldOut().size()];
        Arrays.fill(
                predictions, Arrays.stream(fold.training(observed)).average().orElseThrow());
        return predictions;
    }
}
