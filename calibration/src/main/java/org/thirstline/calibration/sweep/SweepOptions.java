package org.thirstline.calibration.sweep;

import java.util.Optional;
import org.thirstline.io.text.YearSpan;

/**
 * How a sweep is done. Immutable and thread-safe.
 *
 * @param penalty whether each cell is simulated without lack of water too
 * @param years growth years to report; all if empty
 * @param threads cells simulated at once, at least 1; results do not depend on it
 * @param weatherDays days of weather kept in memory for cells to come; results do not depend on it
 */
public record SweepOptions(boolean penalty, Optional<YearSpan> years, int threads, long weatherDays) {

    /** Memory of a day of weather with all that follows from it [bytes], measured with room to spare. */
    private static final long BYTES_PER_DAY = 400;

    /** Share of the memory that weather may fill. */
    private static final double SHARE_FOR_WEATHER = 0.3;

    /** Refuses sweeps without a thread. */
    public SweepOptions {
        if (threads < 1) {
            throw new IllegalArgumentException(threads + " threads");
        }
    }

    /** Keeps as much weather as the memory of this process allows. */
    public static SweepOptions within(boolean penalty, Optional<YearSpan> years, int threads) {
        long bytes = (long) (SHARE_FOR_WEATHER * Runtime.getRuntime().maxMemory());
        return new SweepOptions(penalty, years, threads, bytes / BYTES_PER_DAY);
    }
}
