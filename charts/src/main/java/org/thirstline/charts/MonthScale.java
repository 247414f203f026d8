package org.thirstline.charts;

import java.awt.Font;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.Locale;

/**
 * Days as numbers along a time axis, with the names of the months under it. Immutable and thread-safe.
 *
 * @param zero date of x = 0
 * @param from first day shown
 * @param to last day shown
 */
record MonthScale(LocalDate zero, LocalDate from, LocalDate to) {

    double x(LocalDate date) {
        return date.toEpochDay() - (double) zero.toEpochDay();
    }

    double low() {
        return x(from);
    }

    double high() {
        return x(to) + 1.0;
    }

    int days() {
        return (int) (high() - low());
    }

    /** Draws faint lines at the starts of months. */
    void lines(Frame frame) {
        for (LocalDate month = from.withDayOfMonth(1).plusMonths(1); !month.isAfter(to); month = month.plusMonths(1)) {
            double x = frame.x(x(month));
            frame.canvas()
                    .line(
                            x,
                            frame.area().getY(),
                            x,
                            frame.area().getMaxY(),
                            frame.canvas().palette().grid(),
                            1.0);
        }
    }

    /** Writes the months under a frame, shortened to their initial if need be, and left out where a month is cut too short. */
    void names(Frame frame) {
        Canvas canvas = frame.canvas();
        Font font = canvas.small();
        double baseline = frame.area().getMaxY() + 1.2 * font.getSize2D();
        double month30 = frame.x(30) - frame.x(0);
        boolean full = month30 > 1.25 * Canvas.width("May", font);
        for (LocalDate month = from.withDayOfMonth(1); !month.isAfter(to); month = month.plusMonths(1)) {
            double left = frame.x(Math.max(low(), x(month)));
            double right = frame.x(Math.min(high(), x(month.plusMonths(1))));
            TextStyle style = full ? TextStyle.SHORT : TextStyle.NARROW;
            String name = month.getMonth().getDisplayName(style, Locale.ENGLISH);
            if (right - left > 1.1 * Canvas.width(name, font)) {
                canvas.text(
                        name,
                        (left + right) / 2,
                        baseline,
                        font,
                        canvas.palette().muted(),
                        Align.CENTER);
            }
        }
    }
}
