package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;

/** Equal panels in as many columns as bring them nearest to a shape. Immutable and thread-safe. */
final class PanelGrid {

    /** What an empty share of the grid counts against a shape that misses (our choice). */
    private static final double EMPTY_WEIGHT = 1.5;

    private final Rectangle2D area;
    private final double gap;
    private final int columns;
    private final int rows;

    /**
     * Divides an area.
     *
     * @param area to divide
     * @param panels how many
     * @param shape wanted width over height
     * @param gap between panels
     */
    PanelGrid(Rectangle2D area, int panels, double shape, double gap) {
        this.area = area;
        this.gap = gap;
        int best = 1;
        double bestMiss = Double.POSITIVE_INFINITY;
        for (int candidate = 1; candidate <= Math.max(1, panels); candidate++) {
            double width = (area.getWidth() - gap * (candidate - 1)) / candidate;
            double lines = Math.ceil((double) panels / candidate);
            double height = (area.getHeight() - gap * (lines - 1)) / lines;
            double empty = 1.0 - panels / (candidate * lines);
            double miss = width > 0 && height > 0
                    ? Math.abs(Math.log(width / height / shape)) + EMPTY_WEIGHT * empty
                    : Double.MAX_VALUE;
            if (miss < bestMiss) {
                bestMiss = miss;
                best = candidate;
            }
        }
        columns = best;
        rows = Math.max(1, (int) Math.ceil((double) panels / best));
    }

    Rectangle2D cell(int index) {
        double width = (area.getWidth() - gap * (columns - 1)) / columns;
        double height = (area.getHeight() - gap * (rows - 1)) / rows;
        return new Rectangle2D.Double(
                area.getX() + (index % columns) * (width + gap),
                area.getY() + (index / columns) * (height + gap),
                width,
                height);
    }

    /** Writes lines over a panel, the first one strong, and returns what is left below them; thumbnails have no room for words. */
    static Rectangle2D head(Canvas canvas, Rectangle2D cell, ChartStyle style, String... lines) {
        if (style.size().isThumbnail()) {
            return cell;
        }
        double y = cell.getY();
        for (int i = 0; i < lines.length; i++) {
            Font font = i == 0 ? canvas.strongSmall() : canvas.small();
            y += Canvas.lineHeight(font);
            String text = Canvas.fitted(lines[i], font, cell.getWidth());
            canvas.text(
                    text,
                    cell.getX(),
                    y - 0.3 * font.getSize2D(),
                    font,
                    i == 0 ? canvas.palette().ink() : canvas.palette().muted(),
                    Align.LEFT);
        }
        return new Rectangle2D.Double(cell.getX(), y, cell.getWidth(), cell.getMaxY() - y);
    }

    /** Returns a step whose tick labels stay apart over so many pixels. */
    static double step(Canvas canvas, double low, double high, double widthPx) {
        for (int parts = 6; parts > 1; parts--) {
            double step = Numbers.niceStep(high - low, parts);
            if (widthPx * step / (high - low) >= 1.5 * labelWidth(canvas, low, high, step)) {
                return step;
            }
        }
        return Numbers.niceStep(high - low, 1);
    }

    /** Returns the width of the wider tick label at the ends of a range. */
    static double labelWidth(Canvas canvas, double low, double high, double step) {
        Font font = canvas.small();
        return Math.max(
                Canvas.width(Numbers.ticks(step).format(low), font),
                Canvas.width(Numbers.ticks(step).format(high), font));
    }

    /** Widens a range by a share of itself on both sides; a range of one value gets a width. */
    static double[] padded(double low, double high, double share) {
        double span = high - low;
        double pad = span > 0.0 ? share * span : Math.max(0.1 * Math.abs(low), 1e-3);
        return new double[] {low - pad, high + pad};
    }
}
