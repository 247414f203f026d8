package org.thirstline.calibration.posterior;

import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/**
 * One chain of differential-evolution Markov chains that learn from past states. Between two additions to the archive a chain depends
 * on nothing but the archive and its own random stream. Confined to one thread at a time.
 *
 * <p>Proposals beyond a bound are refused without asking the likelihood. Reflecting them instead would make the correlated jumps of
 * this method irreversible: the way back would need the mirror image of a difference of past states, which is not as likely.
 */
final class Chain {

    private static final int START_TRIES = 10_000;

    /** Half-width of the small extra step as a share of the distance of the bounds; it keeps every point within reach. */
    private static final double EXTRA_STEP = 1.0e-6;

    /** Optimal jump for a normal target is this over the square root of twice the dimension (ter Braak and Vrugt 2008). */
    private static final double JUMP = 2.38;

    /** One whole jump in so many is not screened (our choice). */
    private static final int WHOLE_JUMPS_PER_UNSCREENED = 5;

    private static final double SNOOKER_SMALLEST = 1.2;
    private static final double SNOOKER_LARGEST = 2.2;

    private final SamplingProblem problem;
    private final SamplerOptions options;
    private final int index;
    private final int dimension;
    private final double jump;
    private final long unscreenedEvery;
    private double[] current;
    private double[] proposal;
    private double logDensity;
    private long accepted;
    private long evaluations;
    /** Log of the factor by which a proposal's acceptance differs from the ratio of densities. */
    private double logCorrection;

    Chain(SamplingProblem problem, SamplerOptions options, int index) {
        this.problem = problem;
        this.options = options;
        this.index = index;
        dimension = problem.dimension();
        jump = JUMP / Math.sqrt(2.0 * dimension);
        unscreenedEvery = (long) WHOLE_JUMPS_PER_UNSCREENED * options.unitJumpEvery();
        current = new double[dimension];
        proposal = new double[dimension];
    }

    /** Starts at a point or, where the density there is zero, at a draw from the priors. */
    void start(double[] point) {
        current = point.clone();
        logDensity = problem.logPosterior(current);
        evaluations++;
        if (!Double.isFinite(logDensity)) {
            start();
        }
    }

    /** Draws a first state from the priors. */
    void start() {
        SplittableRandom random = Streams.of(options.seed(), index, 0);
        for (int attempt = 0; attempt < START_TRIES; attempt++) {
            drawFromPrior(problem, random, current);
            logDensity = problem.logPosterior(current);
            evaluations++;
            if (Double.isFinite(logDensity)) {
                return;
            }
        }
        throw new InputException(CalibrationError.NO_FINITE_DENSITY, START_TRIES);
    }

    /** Continues from a known state. */
    void resume(ChainState state) {
        current = state.point().clone();
        logDensity = state.logDensity();
        accepted = state.accepted();
        evaluations = state.evaluations();
    }

    /** Returns where it stands. */
    ChainState state() {
        return new ChainState(current.clone(), logDensity, accepted, evaluations);
    }

    static void drawFromPrior(SamplingProblem problem, SplittableRandom random, double[] point) {
        for (int i = 0; i < point.length; i++) {
            point[i] = problem.priorQuantile(i, random.nextDouble());
        }
    }

    /**
     * Advances by one block of generations; the archive is only read. Some whole jumps, which may lead where the stand-in knows nothing, are not
     * screened, so that a bad one cannot hold a chain for long.
     */
    void runBlock(Archive archive, @Nullable StandIn standIn, long block) {
        SplittableRandom random = Streams.of(options.seed(), index, block);
        for (int i = 0; i < options.blockLength(); i++) {
            long generation = (block - 1) * options.blockLength() + i + 1;
            boolean whole = generation % options.unitJumpEvery() == 0;
            boolean inside = random.nextDouble() < options.snookerShare()
                    ? proposeSnooker(archive, random)
                    : proposeParallel(archive, random, whole ? 1.0 : jump);
            if (!inside) {
                continue;
            }
            if (standIn == null || generation % unscreenedEvery == 0) {
                decide(logCorrection, random);
            } else {
                screen(standIn, random);
            }
        }
    }

    private boolean proposeParallel(Archive archive, SplittableRandom random, double factor) {
        int first = random.nextInt(archive.size());
        int second = random.nextInt(archive.size() - 1);
        second += second >= first ? 1 : 0;
        logCorrection = 0.0;
        boolean inside = true;
        for (int i = 0; i < dimension; i++) {
            double lower = problem.lower(i);
            double upper = problem.upper(i);
            double extra = EXTRA_STEP * (upper - lower) * (2.0 * random.nextDouble() - 1.0);
            double value = current[i] + factor * (archive.at(first, i) - archive.at(second, i)) + extra;
            proposal[i] = value;
            inside &= value >= lower && value <= upper;
        }
        return inside;
    }

    /** Moves along the line through a past state by the difference of two others, seen along that line. */
    private boolean proposeSnooker(Archive archive, SplittableRandom random) {
        int anchor = random.nextInt(archive.size());
        int first = random.nextInt(archive.size());
        int second = random.nextInt(archive.size());
        if (first == second || first == anchor || second == anchor) {
            return false;
        }
        double factor = SNOOKER_SMALLEST + (SNOOKER_LARGEST - SNOOKER_SMALLEST) * random.nextDouble();
        double square = 0.0;
        double product = 0.0;
        for (int i = 0; i < dimension; i++) {
            double direction = current[i] - archive.at(anchor, i);
            square += direction * direction;
            product += direction * (archive.at(first, i) - archive.at(second, i));
        }
        if (!(square > 0.0)) {
            return false;
        }
        double stretch = 1.0 + factor * product / square;
        boolean inside = true;
        for (int i = 0; i < dimension; i++) {
            double value = archive.at(anchor, i) + stretch * (current[i] - archive.at(anchor, i));
            proposal[i] = value;
            inside &= value >= problem.lower(i) && value <= problem.upper(i);
        }
        logCorrection = (dimension - 1) * Math.log(Math.abs(stretch));
        return inside;
    }

    /**
     * Delayed acceptance (Christen and Fox 2005): what the stand-in refuses is not evaluated, and what it lets pass is accepted by the ratio of the
     * densities over that of the stand-in, which leaves the posterior as it is however wrong the stand-in may be.
     */
    private void screen(StandIn standIn, SplittableRandom random) {
        double gain = standIn.at(proposal) - standIn.at(current);
        if (passes(gain + logCorrection, random)) {
            decide(-gain, random);
        }
    }

    private static boolean passes(double logRatio, SplittableRandom random) {
        return logRatio >= 0.0 || Math.log(random.nextDouble()) < logRatio;
    }

    private void decide(double correction, SplittableRandom random) {
        double proposed = problem.logPosterior(proposal);
        evaluations++;
        if (passes(proposed - logDensity + correction, random)) {
            double[] spare = current;
            current = proposal;
            proposal = spare;
            logDensity = proposed;
            accepted++;
        }
    }
}
