package org.thirstline.calibration.posterior;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.thirstline.model.error.Check;

/**
 * Whether a sampler is right: the rank of a parameter drawn from its prior, among draws from the posterior that its simulated data
 * give, is uniform.
 *
 * @cite talts2018
 */
public final class RankUniformity {

    private RankUniformity() {}

    /**
     * Returns how many draws lie below the true value.
     *
     * @param truth drawn from the prior
     * @param draws nearly independent draws from the posterior
     */
    public static int rank(double truth, double[] draws) {
        return (int) Arrays.stream(draws).filter(draw -> draw < truth).count();
    }

    /**
     * Returns the probability of ranks at least as uneven as these, by the chi-square test.
     *
     * @param ranks 0 to the number of draws
     * @param draws number of draws of each posterior; one more than this must be a multiple of the bins
     * @param bins number of bins of equally many ranks
     */
    public static double probability(int[] ranks, int draws, int bins) {
        Check.range("ranks left over by the bins", (draws + 1) % bins, "", 0.0, 0.0);
        int[] counts = new int[bins];
        for (int rank : ranks) {
            counts[rank * bins / (draws + 1)]++;
        }
        double expected = (double) ranks.length / bins;
        double chiSquare = Arrays.stream(counts)
                .mapToDouble(count -> (count - expected) * (count - expected) / expected)
                .sum();
        return 1.0 - new ChiSquaredDistribution(bins - 1.0).cumulativeProbability(chiSquare);
    }
}
