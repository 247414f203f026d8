package org.thirstline.charts;

import java.util.Locale;
import org.thirstline.charts.theme.ChartSize;

/** How many small panels each size can hold, and what is said of the others. */
final class MorePanels {

    private MorePanels() {}

    static int most(ChartSize size) {
        return switch (size) {
            case SLIDE, SLIDE_BODY, PAGE -> 12;
            case COLUMN -> 9;
            case HALF_SLIDE, SLIDE_BODY_NARROW -> 8;
            case THUMBNAIL -> 4;
        };
    }

    static String note(int all, int shown, String what) {
        return shown < all ? " Shown: " + shown + " of " + all + " " + what + ". " : "";
    }

    /** Writes a parameter's value to six digits, however small it is. */
    static String precise(double value) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%.6g", value) : "";
    }
}
