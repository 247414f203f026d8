package org.thirstline.calibration.calibrate;

import org.thirstline.calibration.posterior.Convergence;
import org.thirstline.model.error.Check;

/**
 * How to calibrate. Immutable and thread-safe.
 *
 * @param starts searches, the first from the values of the crop file, the others spread over the bounds
 * @param seed of everything random
 * @param threads at most so many at once; results do not depend on it
 * @param global whether a global search finds the starts
 * @param unclear what happens to parameters that the data cannot tell
 * @param draws posterior draws to keep; 0 for none
 * @param skill whether sites, plots and years are held out
 */
public record CalibrationSettings(
        int starts, long seed, int threads, boolean global, Unclear unclear, int draws, boolean skill) {

    /** What happens to parameters that the data cannot tell. */
    public enum Unclear {
        /** Those that the study names are refused; those of the usual set are fixed. */
        REFUSE,
        /** They are fixed at their values before the calibration. */
        FIX,
        /** They are fitted all the same. */
        KEEP
    }

    /** Fewer draws of four chains could not be judged. */
    public static final int FEWEST_DRAWS = 4 * Convergence.FEWEST_DRAWS;

    /** Refuses searches without starts, and so few draws that nothing could be said of them. */
    public CalibrationSettings {
        Check.range("number of starts", starts, "", 1.0, 100_000.0);
        Check.range("number of threads", threads, "", 1.0, 10_000.0);
        Check.range("number of draws", draws, "", draws == 0 ? 0.0 : FEWEST_DRAWS, 1.0e7);
    }

    /**
     * Returns 32 starts, held-out skill and no posterior.
     *
     * @param seed of everything random
     * @param threads at most so many at once
     */
    public static CalibrationSettings standard(long seed, int threads) {
        return new CalibrationSettings(32, seed, threads, false, Unclear.REFUSE, 0, true);
    }
}
