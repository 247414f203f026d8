package org.thirstline.calibration.calibrate;

import java.util.function.Function;
import java.util.function.Supplier;
import org.thirstline.calibration.posterior.PosteriorDraws;
import org.thirstline.calibration.posterior.PosteriorSampler;
import org.thirstline.calibration.posterior.SamplerOptions;
import org.thirstline.calibration.posterior.SamplerState;
import org.thirstline.calibration.problem.CalibrationProblem;

/** Samples the posterior of a problem, with checkpoints. Stateless and thread-safe. */
public final class PosteriorCalibration {

    /** Share of each chain that is left out at its start (common practice, no source). */
    public static final double DISCARDED = 0.5;

    /** Told how far the sampling is. */
    @FunctionalInterface
    public interface Progress {

        /**
         * Takes note.
         *
         * @param done generations done
         * @param total generations when all is done
         * @param state takes a snapshot, when asked
         * @return whether a snapshot should be kept now
         */
        boolean advanced(long done, long total, Supplier<SamplerState> state);
    }

    private PosteriorCalibration() {}

    /**
     * A sampled posterior.
     *
     * @param draws the draws that are kept
     * @param generations proposals of each chain
     * @param evaluations points evaluated, since the very start
     * @param acceptedShare share of the proposals that were accepted
     */
    public record Sampled(PosteriorDraws draws, long generations, long evaluations, double acceptedShare) {}

    /**
     * Samples, or goes on from a checkpoint.
     *
     * @param problem what to sample
     * @param settings number of draws, seed, threads
     * @param checkpoint where states are kept
     * @param progress is told after every block of generations
     */
    public static Sampled sample(
            CalibrationProblem problem, CalibrationSettings settings, Checkpoint checkpoint, Progress progress) {
        return sample(problem, PosteriorSampler::start, settings, checkpoint, progress);
    }

    /**
     * Samples from a spread around a fit, or goes on from a checkpoint. Chains that start there need not look for the posterior first.
     *
     * @param fit the problem, fitted
     * @param settings number of draws, seed, threads
     * @param checkpoint where states are kept
     * @param progress is told after every block of generations
     */
    public static Sampled sample(
            CalibrationFit fit, CalibrationSettings settings, Checkpoint checkpoint, Progress progress) {
        return sample(
                fit.problem(),
                sampler -> sampler.startFrom(StartSpread.of(fit, settings.seed())),
                settings,
                checkpoint,
                progress);
    }

    private static Sampled sample(
            CalibrationProblem problem,
            Function<PosteriorSampler, SamplerState> first,
            CalibrationSettings settings,
            Checkpoint checkpoint,
            Progress progress) {
        SamplerOptions options = SamplerOptions.standard(settings.seed());
        PosteriorSampler sampler = new PosteriorSampler(problem.sampling(), options);
        long kept = (settings.draws() + options.chains() - 1) / options.chains();
        long generations = Math.round(kept / (1.0 - DISCARDED)) * options.blockLength();
        SamplerState start = checkpoint.saved().orElseGet(() -> first.apply(sampler));
        SamplerState end = sampler.advance(start, generations, settings.threads(), (done, total, state) -> {
            if (progress.advanced(done, total, state)) {
                checkpoint.save(state.get());
            }
            return true;
        });
        checkpoint.save(end);
        return new Sampled(end.draws(DISCARDED), end.generations(), end.evaluations(), end.acceptedShare());
    }
}
