package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.Locale;

/** One line on a terminal that says how far long work has come and how long it still takes; nothing in a pipe. Confined to one run. */
final class ProgressBar {

    private static final int CELLS = 30;
    private static final int LINE = 78;
    private static final double NANOS = 1e-9;
    private static final double REDRAW_SECONDS = 0.2;

    /** Before that share is done, what is left cannot be told. */
    private static final double TELLABLE = 0.03;

    private final PrintWriter err;
    private final boolean shown;
    private final String work;
    private final long started = System.nanoTime();
    private double drawnAt = -1.0;

    ProgressBar(PrintWriter err, boolean shown, String work) {
        this.err = err;
        this.shown = shown;
        this.work = work;
    }

    /** Returns a bar for a terminal that may be written to. */
    static ProgressBar onTerminal(PrintWriter err, boolean quiet, String work) {
        return new ProgressBar(err, !quiet && System.console() != null, work);
    }

    /** Takes note of progress; called by one thread at a time. */
    void advanced(int done, int total) {
        double seconds = (System.nanoTime() - started) * NANOS;
        if (shown && (done >= total || seconds - drawnAt >= REDRAW_SECONDS)) {
            drawnAt = seconds;
            err.printf("\r%-" + LINE + "s", text(work, (double) done / Math.max(1, total), seconds));
            err.flush();
        }
    }

    /** Wipes the line. */
    void clear() {
        if (shown) {
            err.printf("\r%-" + LINE + "s\r", "");
            err.flush();
        }
    }

    static String text(String work, double share, double seconds) {
        int filled = (int) Math.floor(CELLS * Math.min(1.0, share));
        String bar = "#".repeat(filled) + ".".repeat(CELLS - filled);
        String left = share < TELLABLE ? "" : ", " + duration(seconds * (1.0 - share) / share) + " left";
        return String.format(Locale.ROOT, "%s [%s] %.0f %%%s", work, bar, 100.0 * share, left);
    }

    private static String duration(double seconds) {
        long whole = Math.round(seconds);
        return whole < 100 ? whole + " s" : Math.round(whole / 60.0) + " min";
    }
}
