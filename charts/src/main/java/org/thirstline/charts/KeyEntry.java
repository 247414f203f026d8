package org.thirstline.charts;

import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.climate.SeasonClass;

/** One sign of a chart and what it means, in a row under the subtitle. Immutable and thread-safe. */
record KeyEntry(
        Sign sign, Color color, Color fill, @Nullable SeasonClass seasonClass, int symbol, String text) {

    enum Sign {
        BLOCK,
        GHOST,
        HATCH,
        MARK,
        RING,
        SYMBOL,
        LINE,
        DASH,
        WHISKER
    }

    static KeyEntry block(Color color, String text) {
        return new KeyEntry(Sign.BLOCK, color, color, null, 0, text);
    }

    static KeyEntry ghost(Color color, Color fill, String text) {
        return new KeyEntry(Sign.GHOST, color, fill, null, 0, text);
    }

    static KeyEntry hatch(Color color, String text) {
        return new KeyEntry(Sign.HATCH, color, color, null, 0, text);
    }

    static KeyEntry mark(Palette palette, SeasonClass seasonClass, String text) {
        return new KeyEntry(Sign.MARK, palette.of(seasonClass), palette.of(seasonClass), seasonClass, 0, text);
    }

    static KeyEntry season(Palette palette, @Nullable SeasonClass seasonClass, String text) {
        return new KeyEntry(Sign.MARK, palette.of(seasonClass), palette.of(seasonClass), seasonClass, 0, text);
    }

    static KeyEntry ring(Color color, String text) {
        return new KeyEntry(Sign.RING, color, color, null, 0, text);
    }

    static KeyEntry symbol(Color color, int symbol, String text) {
        return new KeyEntry(Sign.SYMBOL, color, color, null, symbol, text);
    }

    static KeyEntry line(Color color, String text) {
        return new KeyEntry(Sign.LINE, color, color, null, 0, text);
    }

    static KeyEntry dash(Color color, String text) {
        return new KeyEntry(Sign.DASH, color, color, null, 0, text);
    }

    static KeyEntry whisker(Color color, String text) {
        return new KeyEntry(Sign.WHISKER, color, color, null, 0, text);
    }

    private double signWidth(Canvas canvas) {
        return canvas.type().smallPx() * (sign == Sign.LINE || sign == Sign.DASH ? 1.9 : 1.0);
    }

    private double width(Canvas canvas) {
        return signWidth(canvas) + canvas.type().smallPx() * 0.5 + Canvas.width(text, canvas.small());
    }

    /** Draws entries in rows from a top edge and returns the lower edge. */
    static double paint(List<KeyEntry> entries, Canvas canvas, double left, double top, double maxWidth) {
        if (entries.isEmpty()) {
            return top;
        }
        double rowHeight = canvas.type().smallPx() * 1.55;
        double gap = canvas.type().smallPx() * 1.5;
        double x = left;
        double baseline = top + canvas.type().smallPx() * 1.1;
        for (KeyEntry entry : entries) {
            double width = entry.width(canvas);
            if (x > left && x + width > left + maxWidth) {
                x = left;
                baseline += rowHeight;
            }
            entry.paintAt(canvas, x, baseline, left + maxWidth - x);
            x += width + gap;
        }
        return baseline + canvas.type().smallPx() * 0.45;
    }

    private void paintAt(Canvas canvas, double x, double baseline, double maxWidth) {
        double size = canvas.type().smallPx();
        double signWidth = signWidth(canvas);
        double middle = baseline - 0.34 * size;
        Rectangle2D square = new Rectangle2D.Double(x + 0.05 * size, baseline - 0.8 * size, 0.9 * size, 0.9 * size);
        switch (sign) {
            case BLOCK -> canvas.fill(square, fill);
            case GHOST -> {
                canvas.fill(square, fill);
                canvas.outline(square, color, 1.2);
            }
            case HATCH -> {
                canvas.hatch(square, color);
                canvas.outline(square, color, 1.0);
            }
            case MARK -> canvas.marker(x + 0.5 * size, middle, 0.42 * size, seasonClass);
            case SYMBOL -> Symbols.draw(canvas, x + 0.5 * size, middle, 0.42 * size, symbol);
            case RING -> ring(canvas, x, middle, size);
            case LINE ->
                canvas.line(
                        x, middle, x + signWidth, middle, color, canvas.type().strokePx());
            case DASH ->
                canvas.dashed(
                        new Line2D.Double(x, middle, x + signWidth, middle),
                        color,
                        0.75 * canvas.type().strokePx());
            case WHISKER -> whisker(canvas, x + 0.5 * size, middle, size);
        }
        double textX = x + signWidth + 0.5 * size;
        String fitted = Canvas.fitted(text, canvas.small(), maxWidth - (textX - x));
        canvas.text(fitted, textX, baseline, canvas.small(), canvas.palette().muted(), Align.LEFT);
    }

    private static void whisker(Canvas canvas, double x, double middle, double size) {
        double stroke = canvas.type().strokePx();
        Whiskers.paint(
                canvas,
                x,
                middle + 0.6 * size,
                middle - 0.6 * size,
                middle + 0.22 * size,
                middle - 0.22 * size,
                0.55 * stroke,
                1.5 * stroke);
    }

    private void ring(Canvas canvas, double x, double middle, double size) {
        canvas.outline(new Ellipse2D.Double(x + 0.1 * size, middle - 0.4 * size, 0.8 * size, 0.8 * size), color, 1.4);
    }
}
