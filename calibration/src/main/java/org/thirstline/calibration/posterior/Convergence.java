package org.thirstline.calibration.posterior;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.hipparchus.stat.ranking.NaNStrategy;
import org.hipparchus.stat.ranking.NaturalRanking;
import org.hipparchus.stat.ranking.TiesStrategy;
import org.hipparchus.util.FastMath;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/**
 * Whether chains have found the same distribution, and how many independent draws theirs are worth. Draws are given as one row per
 * chain, equally long; of an odd number the middle draw is left out when chains are split.
 *
 * @cite vehtari2021
 */
public final class Convergence {

    /** Largest split-R-hat at which chains pass as mixed (Vehtari and others 2021). */
    public static final double R_HAT_LIMIT = 1.01;

    /** Smallest bulk and tail effective sample size for each chain at which they are reliable (Vehtari and others 2021). */
    public static final double EFFECTIVE_DRAWS_PER_CHAIN = 100.0;

    /** Fewest draws of a chain that can be judged. */
    public static final int FEWEST_DRAWS = 8;

    /** Blom's offset, which turns ranks into normal scores. */
    private static final double RANK_OFFSET = 0.375;

    private static final double TAIL = 0.05;

    private Convergence() {}

    /** Returns the larger of rank-normalised and folded split-R-hat; NaN if all draws are alike. */
    public static double rHat(double[][] chains) {
        return Math.max(rankRHat(chains), foldedRHat(chains));
    }

    /** Returns rank-normalised split-R-hat: differences in location. */
    public static double rankRHat(double[][] chains) {
        return betweenToWithin(normalScores(split(chains)));
    }

    /** Returns rank-normalised split-R-hat of the distances from the median: differences in spread. */
    public static double foldedRHat(double[][] chains) {
        double median = SampleQuantiles.of(pool(chains)).at(0.5);
        return betweenToWithin(normalScores(split(map(chains, value -> Math.abs(value - median)))));
    }

    /** Returns split-R-hat of the draws as they are. */
    public static double plainRHat(double[][] chains) {
        return betweenToWithin(split(chains));
    }

    /** Returns the effective sample size of rank-normalised draws: for the middle of the distribution. */
    public static double bulkEffectiveDraws(double[][] chains) {
        return EffectiveDraws.of(normalScores(split(chains)));
    }

    /** Returns the smaller effective sample size of the 5 % and 95 % quantiles. */
    public static double tailEffectiveDraws(double[][] chains) {
        return Math.min(quantileEffectiveDraws(chains, TAIL), quantileEffectiveDraws(chains, 1.0 - TAIL));
    }

    /** Returns the effective sample size for the mean. */
    public static double meanEffectiveDraws(double[][] chains) {
        return EffectiveDraws.of(split(chains));
    }

    /**
     * Returns the effective sample size for a quantile.
     *
     * @param chains draws
     * @param probability of the quantile
     */
    public static double quantileEffectiveDraws(double[][] chains, double probability) {
        double quantile = SampleQuantiles.of(pool(chains)).at(probability);
        return EffectiveDraws.of(split(map(chains, value -> value <= quantile ? 1.0 : 0.0)));
    }

    private static double[][] map(double[][] chains, DoubleUnaryOperator function) {
        return Arrays.stream(chains)
                .map(chain -> Arrays.stream(chain).map(function).toArray())
                .toArray(double[][]::new);
    }

    private static double[] pool(double[][] chains) {
        return Arrays.stream(chains).flatMapToDouble(Arrays::stream).toArray();
    }

    /** Returns both halves of every chain. */
    private static double[][] split(double[][] chains) {
        int length = chains.length == 0 ? 0 : chains[0].length;
        if (length < FEWEST_DRAWS) {
            throw new InputException(CalibrationError.TOO_FEW_DRAWS, length, FEWEST_DRAWS);
        }
        double[][] halves = new double[2 * chains.length][];
        for (int i = 0; i < chains.length; i++) {
            if (chains[i].length != length) {
                throw new InputException(
                        CalibrationError.LENGTHS_DIFFER, "the first chain", length, "another", chains[i].length);
            }
            halves[2 * i] = Arrays.copyOfRange(chains[i], 0, length / 2);
            halves[2 * i + 1] = Arrays.copyOfRange(chains[i], length - length / 2, length);
        }
        return halves;
    }

    private static double[][] normalScores(double[][] chains) {
        double[] ranks = new NaturalRanking(NaNStrategy.FAILED, TiesStrategy.AVERAGE).rank(pool(chains));
        double[] scores = Arrays.stream(ranks)
                .map(rank -> normalQuantile((rank - RANK_OFFSET) / (ranks.length - 2.0 * RANK_OFFSET + 1.0)))
                .toArray();
        int length = chains[0].length;
        return IntStream.range(0, chains.length)
                .mapToObj(i -> Arrays.copyOfRange(scores, i * length, (i + 1) * length))
                .toArray(double[][]::new);
    }

    private static double normalQuantile(double probability) {
        return FastMath.sqrt(2.0) * org.hipparchus.special.Erf.erfInv(2.0 * probability - 1.0);
    }

    private static double betweenToWithin(double[][] chains) {
        int length = chains[0].length;
        double[] means = Arrays.stream(chains).mapToDouble(Moments::mean).toArray();
        double within = Arrays.stream(chains).mapToDouble(Moments::variance).sum() / chains.length;
        double between = length * Moments.variance(means);
        return Math.sqrt((between / within + length - 1.0) / length);
    }
}
