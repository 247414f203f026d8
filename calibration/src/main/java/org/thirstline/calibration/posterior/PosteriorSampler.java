package org.thirstline.calibration.posterior;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;

/**
 * Differential-evolution Markov chains that jump by differences of past states, with snooker updates. In a block of generations all chains see the
 * same archive of past states, that of the block before the last, so that none need wait for the slowest; the draws depend on the seed
 * alone, not on the number of threads nor on interruptions. A quadratic fitted to past states screens the proposals, see {@link StandIn}. Immutable; as thread-safe as the likelihood.
 *
 * @cite terbraak2008
 */
public final class PosteriorSampler {

    /** The archive starts with this many draws from the priors for each parameter, as the method's authors advise. */
    private static final int PRIOR_DRAWS_PER_PARAMETER = 10;

    private final SamplingProblem problem;
    private final SamplerOptions options;

    /**
     * Sets up a sampler.
     *
     * @param problem what is sampled
     * @param options how
     */
    public PosteriorSampler(SamplingProblem problem, SamplerOptions options) {
        this.problem = problem;
        this.options = options;
    }

    /**
     * Draws the chains' first states and the first archive from the priors.
     *
     * @throws InputException if the posterior density is zero wherever the priors point
     */
    public SamplerState start() {
        int priorDraws = Math.max(PRIOR_DRAWS_PER_PARAMETER * problem.dimension(), options.chains());
        Archive archive = new Archive(problem.dimension(), new double[0], new double[0]);
        SplittableRandom random = Streams.of(options.seed(), -1, 0);
        double[] point = new double[problem.dimension()];
        for (int i = 0; i < priorDraws; i++) {
            Chain.drawFromPrior(problem, random, point);
            archive.add(point, Double.NaN);
        }
        List<Chain> chains = chains();
        chains.forEach(Chain::start);
        return new SamplerState(header(0, priorDraws), states(chains), archive);
    }

    /**
     * Takes the first archive and the chains' first states from points of the caller's, which should be spread wider than the posterior.
     * They bring the chains to where the posterior is; what is sampled in the end does not depend on them.
     *
     * @param spread points within the bounds, more than there are chains; not modified
     * @throws InputException if the posterior density is zero wherever the points and the priors lie
     */
    public SamplerState startFrom(List<double[]> spread) {
        Check.range("number of starting points", spread.size(), "", options.chains(), Integer.MAX_VALUE);
        Archive archive = new Archive(problem.dimension(), new double[0], new double[0]);
        spread.forEach(point -> archive.add(point, Double.NaN));
        List<Chain> chains = chains();
        for (int i = 0; i < chains.size(); i++) {
            chains.get(i).start(spread.get(i));
        }
        return new SamplerState(header(0, spread.size()), states(chains), archive);
    }

    /**
     * Goes on from a state until a number of generations since the very start is reached, or the listener stops it.
     *
     * @param from a state of this very problem and options
     * @param generations when to stop; rounded up to a whole block
     * @param threads at most so many are used
     * @param listener is told after every block
     * @return the state at the end
     * @throws InputException if the state belongs to another problem or other options
     */
    public SamplerState advance(SamplerState from, long generations, int threads, SamplingListener listener) {
        refuseStranger(from);
        Check.range("number of threads", threads, "", 1.0, 10_000.0);
        List<Chain> chains = chains();
        for (int i = 0; i < chains.size(); i++) {
            chains.get(i).resume(from.chains().get(i));
        }
        Archive archive = from.archive();
        int priorDraws = from.header().priorDraws();
        int length = options.blockLength();
        long done = from.generations() / length;
        long last = (generations + length - 1) / length;
        Screen screen = new Screen(problem, options, priorDraws);
        List<ChainState> end = from.chains();
        try (BlockRunner runner = new BlockRunner(chains, done, last, threads)) {
            Archive before = archive.first(archive.size() - (done > 0 ? chains.size() : 0));
            runner.open(before, screen.standIn(before));
            runner.open(archive.first(archive.size()), screen.standIn(archive));
            for (long block = done + 1; block <= last; block++) {
                List<ChainState> states = runner.finish(block);
                states.forEach(chain -> archive.add(chain.point(), chain.logDensity()));
                runner.open(archive.first(archive.size()), screen.standIn(archive));
                SamplerState.Header header = header(block * length, priorDraws);
                if (!listener.advanced(
                        block * length, last * length, () -> new SamplerState(header, states, archive))) {
                    return new SamplerState(header, states, archive);
                }
                end = states;
            }
        }
        return new SamplerState(header(Math.max(last * length, from.generations()), priorDraws), end, archive);
    }

    /**
     * Starts and samples.
     *
     * @param generations proposals of each chain; rounded up to a whole block
     * @param threads at most so many are used
     * @param listener is told after every block
     */
    public SamplerState sample(long generations, int threads, SamplingListener listener) {
        return advance(start(), generations, threads, listener);
    }

    private static List<ChainState> states(List<Chain> chains) {
        return chains.stream().map(Chain::state).toList();
    }

    private List<Chain> chains() {
        return IntStream.range(0, options.chains())
                .mapToObj(index -> new Chain(problem, options, index))
                .collect(ArrayList::new, List::add, List::addAll);
    }

    private SamplerState.Header header(long generations, int priorDraws) {
        return new SamplerState.Header(
                problem.fingerprint(),
                options.fingerprint(),
                problem.names(),
                options.chains(),
                options.blockLength(),
                generations,
                priorDraws);
    }

    private void refuseStranger(SamplerState state) {
        refuseDifference(state.header().problem(), problem.fingerprint());
        refuseDifference(state.header().options(), options.fingerprint());
    }

    private static void refuseDifference(String saved, String expected) {
        if (!saved.equals(expected)) {
            throw new InputException(
                    CalibrationError.SAMPLER_STATE_OF_ANOTHER_PROBLEM,
                    "saved with [" + saved + "], but now it is [" + expected + "]");
        }
    }
}
