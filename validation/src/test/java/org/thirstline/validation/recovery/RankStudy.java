package org.thirstline.validation.recovery;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.thirstline.calibration.fit.Parallel;
import org.thirstline.calibration.posterior.PosteriorSampler;
import org.thirstline.calibration.posterior.RankUniformity;
import org.thirstline.calibration.posterior.SamplerOptions;
import org.thirstline.calibration.posterior.SamplingListener;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.validation.recovery.SyntheticTrial.Errors;

/**
 * Simulation-based calibration (Talts and others 2018): a truth is drawn from the priors, measured with errors, and ranked among draws from
 * the posterior that the values give. If the sampler samples what it should, ranks are uniform.
 *
 * @param generations proposals of each of the four chains, of which the first half is left out
 * @param draws thinned draws that the truth is ranked among
 */
record RankStudy(int generations, int draws) {

    /** Size of the errors, known to a right analysis. */
    static final double ERROR = 0.1;

    private static final double DISCARDED = 0.5;

    /**
     * Ranks of the truths.
     *
     * @param problem with errors of the size above, taken as known
     * @param believed size that the analysis takes the errors to have, as a multiple of what they have
     * @param replicates how many
     * @return a row for each parameter
     */
    int[][] ranks(CalibrationProblem problem, double believed, int replicates) {
        List<Integer> all = IntStream.range(0, replicates).boxed().toList();
        List<int[]> ranks = Parallel.map(all, 2, replicate -> ranks(problem, believed, (long) replicate));
        return IntStream.range(0, problem.parameters().size())
                .mapToObj(parameter ->
                        ranks.stream().mapToInt(row -> row[parameter]).toArray())
                .toArray(int[][]::new);
    }

    private int[] ranks(CalibrationProblem problem, double believed, long seed) {
        RandomGenerator random = SyntheticTrial.random(seed);
        double[] truth = new double[problem.parameters().size()];
        double[] simulated;
        do {
            for (int i = 0; i < truth.length; i++) {
                truth[i] = problem.parameters().get(i).prior().quantile(random.nextDouble());
            }
            simulated = problem.simulate(truth);
        } while (!isPossible(simulated));
        CalibrationProblem analysed = SyntheticTrial.measured(problem, simulated, ERROR, Errors.OF_LOGARITHM, random)
                .withErrors(problem.errors().stream()
                        .map(error -> error.withSize(believed * error.size()))
                        .toList());
        double[][] thinned = new PosteriorSampler(analysed.sampling(), SamplerOptions.standard(seed))
                .sample(generations, 1, SamplingListener.NONE)
                .draws(DISCARDED)
                .thinned(draws);
        return IntStream.range(0, truth.length)
                .map(i -> RankUniformity.rank(
                        truth[i],
                        Arrays.stream(thinned).mapToDouble(draw -> draw[i]).toArray()))
                .toArray();
    }

    /** Truths that give a value of nothing have no likelihood, and so no place in the prior either. */
    private static boolean isPossible(double[] simulated) {
        return Arrays.stream(simulated).allMatch(value -> value > 0.0);
    }

    /** Returns the probability of ranks so uneven, by parameter. */
    List<Double> probabilities(int[][] ranks, int bins) {
        return Arrays.stream(ranks)
                .map(row -> RankUniformity.probability(row, draws, bins))
                .toList();
    }
}
