package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** One line on a terminal: how many cells are done and how long the others will take; nothing in a pipe. Thread-safe. */
final class SweepProgress {

    private static final long EVERY_NANOS = 500_000_000L;
    private static final double NANOS = 1e-9;

    private final PrintWriter err;
    private final boolean shown;
    private final int before;
    private final int all;
    private final long start = System.nanoTime();
    private final AtomicInteger done = new AtomicInteger();
    private final AtomicLong last = new AtomicLong(start);

    /**
     * Starts counting.
     *
     * @param before cells done by an earlier sweep
     * @param all cells of the table
     */
    SweepProgress(PrintWriter err, boolean shown, int before, int all) {
        this.err = err;
        this.shown = shown;
        this.before = before;
        this.all = all;
    }

    /** Notes that a cell is done. */
    void cell() {
        int now = done.incrementAndGet();
        long time = System.nanoTime();
        long shownAt = last.get();
        if (shown && time - shownAt >= EVERY_NANOS && last.compareAndSet(shownAt, time)) {
            err.printf("\r%-70s", text(before + now, all, now, (time - start) * NANOS));
            err.flush();
        }
    }

    void clear() {
        if (shown) {
            err.printf("\r%-70s\r", "");
            err.flush();
        }
    }

    /**
     * Returns the line.
     *
     * @param done cells done in all
     * @param all cells of the table
     * @param now cells done since the start
     * @param seconds time since the start
     */
    static String text(int done, int all, int now, double seconds) {
        double left = seconds / now * (all - done);
        return done + " of " + all + " cells, " + duration(left) + " left";
    }

    private static String duration(double seconds) {
        long whole = Math.round(seconds);
        if (whole < 100) {
            return whole + " s";
        }
        long minutes = Math.round(seconds / 60.0);
        return minutes < 100 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }
}
