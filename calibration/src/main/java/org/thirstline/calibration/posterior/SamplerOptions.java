package org.thirstline.calibration.posterior;

import org.thirstline.model.error.Check;

/**
 * How to sample. Immutable and thread-safe.
 *
 * @param chains number of chains; at least 3, and a multiple of the threads keeps them all busy
 * @param blockLength generations between two additions to the archive of past states; also the thinning of the draws
 * @param snookerShare share of the proposals along the line through a past state
 * @param unitJumpEvery one parallel proposal in so many jumps by the whole difference of two past states, from mode to mode
 * @param screened whether a quadratic fitted to past states spares evaluations of proposals without hope; the posterior is the same
 * @param seed of all random numbers
 */
public record SamplerOptions(
        int chains, int blockLength, double snookerShare, int unitJumpEvery, boolean screened, long seed) {

    /** Refuses too few chains and shares that are none. */
    public SamplerOptions {
        Check.range("number of chains", chains, "", 3.0, 1000.0);
        Check.range("generations of a block", blockLength, "", 1.0, 100_000.0);
        Check.range("share of snooker proposals", snookerShare, "", 0.0, 0.9);
        Check.range("unit jumps: one in", unitJumpEvery, "", 2.0, Integer.MAX_VALUE);
    }

    /**
     * Returns the choice of the method's authors: 10 % snooker proposals, every tenth jump a whole one, the archive added to
     * every tenth generation; with four chains, screened.
     *
     * @param seed of all random numbers
     */
    public static SamplerOptions standard(long seed) {
        return new SamplerOptions(4, 10, 0.1, 10, true, seed);
    }

    /**
     * Returns these options with another number of chains.
     *
     * @param chains number of chains
     */
    public SamplerOptions withChains(int chains) {
        return new SamplerOptions(chains, blockLength, snookerShare, unitJumpEvery, screened, seed);
    }

    /**
     * Returns these options with another distance between additions to the archive.
     *
     * @param blockLength generations
     */
    public SamplerOptions withBlockLength(int blockLength) {
        return new SamplerOptions(chains, blockLength, snookerShare, unitJumpEvery, screened, seed);
    }

    /** Returns these options with every proposal evaluated. */
    public SamplerOptions unscreened() {
        return new SamplerOptions(chains, blockLength, snookerShare, unitJumpEvery, false, seed);
    }

    String fingerprint() {
        return "chains " + chains + ", block " + blockLength + ", snooker " + snookerShare + ", unit jump one in "
                + unitJumpEvery + (screened ? ", screened" : "") + ", past of the block before the last, seed " + seed;
    }
}
