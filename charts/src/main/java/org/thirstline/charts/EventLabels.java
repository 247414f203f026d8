package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Dated lines through a stack of panels, named above the first. Confined to one drawing. */
final class EventLabels {

    private static final double GAP = 8.0;

    private final Canvas canvas;
    private final MonthScale scale;
    private final List<Frame> frames;
    private final double labelTop;
    private final List<Rectangle2D> taken = new ArrayList<>();

    EventLabels(Canvas canvas, MonthScale scale, List<Frame> frames, double labelTop) {
        this.canvas = canvas;
        this.scale = scale;
        this.frames = frames;
        this.labelTop = labelTop;
    }

    /** Draws a date's line and its name, with the rest if that fits too; without room for the name there is no line. */
    void add(@Nullable LocalDate date, String what, String rest, Align align) {
        if (date == null || date.isBefore(scale.from()) || date.isAfter(scale.to())) {
            return;
        }
        double x = frames.get(0).x(scale.x(date));
        String dated = what + " " + date.getDayOfMonth() + " "
                + date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
        if (!name(dated + rest, x, align) && !name(dated, x, align)) {
            return;
        }
        for (Frame frame : frames) {
            Rectangle2D area = frame.area();
            canvas.line(x, area.getY(), x, area.getMaxY(), canvas.palette().muted(), 1.0);
        }
    }

    private boolean name(String text, double x, Align align) {
        Font font = canvas.small();
        double width = Canvas.width(text, font);
        double left =
                Math.max(frames.get(0).area().getX(), Math.min(x - align.share() * width, canvas.right() - width));
        Rectangle2D box = new Rectangle2D.Double(left - GAP, labelTop, width + 2 * GAP, font.getSize2D());
        if (taken.stream().anyMatch(box::intersects)) {
            return false;
        }
        taken.add(box);
        double baseline = labelTop + font.getSize2D();
        canvas.text(text, left, baseline, font, canvas.palette().ink(), Align.LEFT);
        double top = frames.get(0).area().getY();
        canvas.line(
                x, baseline + 0.4 * font.getSize2D(), x, top, canvas.palette().muted(), 1.0);
        return true;
    }
}
