package org.thirstline.calibration.age;

import java.util.Arrays;

/** Deviance (minus twice the log likelihood, up to a constant) without decline and for each onset, smallest over variance ratios. */
final class Profile {

    private double nullDeviance = Double.POSITIVE_INFINITY;
    private final double[] deviance;
    private final double[] slope;

    Profile(int onsets) {
        deviance = new double[onsets];
        slope = new double[onsets];
        Arrays.fill(deviance, Double.POSITIVE_INFINITY);
    }

    void offerNull(double value) {
        nullDeviance = Math.min(nullDeviance, value);
    }

    void offer(int k, double value, double rate) {
        if (value < deviance[k]) {
            deviance[k] = value;
            slope[k] = rate;
        }
    }

    /** Returns the onset that fits best, whether yield falls or rises from there. */
    int best() {
        return best(Double.NEGATIVE_INFINITY);
    }

    /** Returns the onset of the decline that fits best, or -1 if yield rises from every onset. */
    int bestDecline() {
        return best(0.0);
    }

    private int best(double leastSlope) {
        int best = -1;
        for (int k = 0; k < deviance.length; k++) {
            if (slope[k] > leastSlope && (best < 0 || deviance[k] < deviance[best])) {
                best = k;
            }
        }
        return best;
    }

    /** Returns the likelihood ratio (twice the log) of the best decline over none; zero if yield rises from every onset. */
    double declineRatio() {
        int best = bestDecline();
        return best < 0 ? 0.0 : nullDeviance - deviance[best];
    }

    /** Returns the loss of log yield per year past an onset. */
    double slope(int k) {
        return slope[k];
    }
}
