package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.Locale;

/** One line on a terminal that says what is being done and how long it will take; nothing in a pipe. Confined to one thread. */
final class ProgressLine {

    private static final int WIDTH = 76;
    private static final int BAR = 24;
    private static final double NANOS = 1e-9;
    private static final double SECONDS_BETWEEN = 0.2;
    private static final int SECONDS_PER_MINUTE = 60;

    private final PrintWriter err;
    private final boolean shown;
    private long firstNanos = -1;
    private long firstDone;
    private long lastNanos;

    ProgressLine(PrintWriter err, boolean quiet) {
        this.err = err;
        shown = !quiet && System.console() != null;
    }

    /** Says what is being done. */
    void show(String text) {
        write(text + " ...");
    }

    /** Shows how much of something is done, and the time left at the pace so far. */
    void bar(String text, long done, long total) {
        long now = System.nanoTime();
        if (firstNanos < 0) {
            firstNanos = now;
            firstDone = done;
        }
        if (!shown || (done < total && (now - lastNanos) * NANOS < SECONDS_BETWEEN)) {
            return;
        }
        lastNanos = now;
        int full = (int) (BAR * done / Math.max(1, total));
        write(text + " [" + "#".repeat(full) + ".".repeat(BAR - full) + "] " + left(now, done, total));
    }

    private String left(long now, long done, long total) {
        String percent = String.format(Locale.ROOT, "%d %%", 100 * done / Math.max(1, total));
        if (done <= firstDone) {
            return percent;
        }
        long seconds = Math.round((now - firstNanos) * NANOS * (total - done) / (done - firstDone));
        return String.format(
                Locale.ROOT, "%s, %d:%02d left", percent, seconds / SECONDS_PER_MINUTE, seconds % SECONDS_PER_MINUTE);
    }

    private void write(String text) {
        if (shown) {
            err.printf("\r%-" + WIDTH + "s", text);
            err.flush();
        }
    }

    void clear() {
        if (shown) {
            err.printf("\r%-" + WIDTH + "s\r", "");
            err.flush();
        }
    }
}
