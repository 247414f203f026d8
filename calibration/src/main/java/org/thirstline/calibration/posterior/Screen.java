package org.thirstline.calibration.posterior;

import org.jspecify.annotations.Nullable;

/** Keeps the stand-in that belongs to an archive as it grows. Confined to one thread. */
final class Screen {

    private final SamplingProblem problem;
    private final int first;
    private final boolean screened;
    private int states;
    private @Nullable StandIn standIn;

    /**
     * Starts without one.
     *
     * @param first index of the first sampled state of the archive
     */
    Screen(SamplingProblem problem, SamplerOptions options, int first) {
        this.problem = problem;
        this.first = first;
        screened = options.screened();
    }

    /** Returns the stand-in of an archive, null without a good one; it depends on the archive alone, not on what was asked before. */
    @Nullable
    StandIn standIn(Archive archive) {
        int now = screened ? StandIn.states(archive.size() - first, problem.dimension()) : 0;
        if (now != states) {
            states = now;
            standIn = StandIn.of(problem, archive, first, now);
        }
        return standIn;
    }
}
