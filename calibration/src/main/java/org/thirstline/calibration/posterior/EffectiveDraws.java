package org.thirstline.calibration.posterior;

import java.util.Arrays;

/**
 * Effective sample size from the autocorrelations of all chains together, summed in pairs while these stay positive and made to fall
 * steadily (Geyer's initial monotone sequence).
 */
final class EffectiveDraws {

    /** Lags left out at the end, where an autocovariance rests on next to no pairs. */
    private static final int LAST_LAGS = 5;

    private final double[][] chains;
    private final double[] means;
    private final int length;
    private final double within;
    private final double total;

    private EffectiveDraws(double[][] chains) {
        this.chains = chains;
        length = chains[0].length;
        means = Arrays.stream(chains).mapToDouble(Moments::mean).toArray();
        within = Arrays.stream(chains).mapToDouble(Moments::variance).sum() / chains.length;
        double between = chains.length > 1 ? Moments.variance(means) : 0.0;
        total = within * (length - 1.0) / length + between;
    }

    /** Returns the effective sample size of chains; NaN if all draws are alike. */
    static double of(double[][] chains) {
        return new EffectiveDraws(chains).size();
    }

    private double size() {
        if (!(total > 0.0)) {
            return Double.NaN;
        }
        double draws = (double) chains.length * length;
        // Chains that alternate can be worth more than independent draws, but not without limit.
        double time = Math.max(autocorrelationTime(), 1.0 / Math.log10(draws));
        return draws / time;
    }

    private double autocorrelationTime() {
        double pair = 1.0 + correlation(1);
        double smallest = pair;
        double sum = pair;
        double extra = 0.0;
        int lag = 0;
        double even = 1.0;
        boolean ended = false;
        while (!ended && lag < length - LAST_LAGS) {
            lag += 2;
            even = correlation(lag);
            pair = even + correlation(lag + 1);
            ended = !(pair > 0.0);
            if (!ended && lag < length - LAST_LAGS) {
                smallest = Math.min(smallest, pair);
                sum += smallest;
            }
        }
        if (even > 0.0) {
            extra = even;
        }
        return -1.0 + 2.0 * sum + extra;
    }

    private double correlation(int lag) {
        double covariance = 0.0;
        for (int chain = 0; chain < chains.length; chain++) {
            double[] draws = chains[chain];
            double sum = 0.0;
            for (int i = lag; i < length; i++) {
                sum += (draws[i] - means[chain]) * (draws[i - lag] - means[chain]);
            }
            covariance += sum / length;
        }
        return 1.0 - (within - covariance / chains.length) / total;
    }
}
