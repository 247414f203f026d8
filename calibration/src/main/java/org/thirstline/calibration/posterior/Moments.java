package org.thirstline.calibration.posterior;

import java.util.Arrays;

/** Mean and spread of samples. */
final class Moments {

    private Moments() {}

    static double mean(double[] values) {
        double first = Arrays.stream(values).sum() / values.length;
        return first + Arrays.stream(values).map(value -> value - first).sum() / values.length;
    }

    /** Variance with one degree of freedom spent on the mean. */
    static double variance(double[] values) {
        return covariance(values, values);
    }

    static double covariance(double[] first, double[] second) {
        double firstMean = mean(first);
        double secondMean = mean(second);
        double sum = 0.0;
        for (int i = 0; i < first.length; i++) {
            sum += (first[i] - firstMean) * (second[i] - secondMean);
        }
        return sum / (first.length - 1);
    }
}
