package org.thirstline.calibration.posterior;

/**
 * One parameter's posterior in numbers. Immutable and thread-safe.
 *
 * @param name the parameter
 * @param mean mean
 * @param standardDeviation standard deviation
 * @param median median
 * @param lower5 5 % quantile
 * @param upper95 95 % quantile
 * @param rHat larger of rank-normalised and folded split-R-hat
 * @param bulkEffectiveDraws independent draws that the middle is worth
 * @param tailEffectiveDraws independent draws that the 5 % and 95 % quantiles are worth
 * @param meanError Monte Carlo standard error of the mean
 * @param chains number of chains behind the numbers
 */
public record ParameterSummary(
        String name,
        double mean,
        double standardDeviation,
        double median,
        double lower5,
        double upper95,
        double rHat,
        double bulkEffectiveDraws,
        double tailEffectiveDraws,
        double meanError,
        int chains) {

    static ParameterSummary of(String name, double[][] chains, double[] pooled) {
        SampleQuantiles quantiles = SampleQuantiles.of(pooled);
        double deviation = Math.sqrt(Moments.variance(pooled));
        return new ParameterSummary(
                name,
                Moments.mean(pooled),
                deviation,
                quantiles.at(0.5),
                quantiles.at(0.05),
                quantiles.at(0.95),
                Convergence.rHat(chains),
                Convergence.bulkEffectiveDraws(chains),
                Convergence.tailEffectiveDraws(chains),
                deviation / Math.sqrt(Convergence.meanEffectiveDraws(chains)),
                chains.length);
    }

    /** Returns whether the chains agree and are worth enough independent draws to trust the numbers. */
    public boolean converged() {
        double enough = Convergence.EFFECTIVE_DRAWS_PER_CHAIN * chains;
        return rHat <= Convergence.R_HAT_LIMIT && bulkEffectiveDraws >= enough && tailEffectiveDraws >= enough;
    }
}
