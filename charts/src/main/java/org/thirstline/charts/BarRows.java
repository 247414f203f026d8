package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** Named rows with a common scale along the bottom, for bars of any kind. Confined to one drawing. */
final class BarRows {

    private static final double NAMES_SHARE = 0.36;
    private static final double TALLEST_LABELS = 3.4;

    private final Canvas canvas;
    private final Rectangle2D plot;
    private final double low;
    private final double high;
    private final double row;

    /**
     * Lays out rows and draws names, grid and scale.
     *
     * @param canvas what to draw on
     * @param area where
     * @param names of the rows
     * @param low least value of the scale
     * @param high greatest value
     * @param title of the scale
     */
    BarRows(Canvas canvas, Rectangle2D area, List<String> names, double low, double high, String title) {
        this.canvas = canvas;
        this.low = low;
        this.high = high;
        Font font = canvas.label();
        double widest = names.stream()
                .mapToDouble(name -> Canvas.width(name, font))
                .max()
                .orElse(0.0);
        double left = Math.min(NAMES_SHARE * area.getWidth(), widest) + 0.8 * font.getSize2D();
        double bottom = 1.7 * canvas.type().smallPx()
                + (title.isEmpty() ? 0.0 : 1.45 * canvas.type().labelPx());
        double height = area.getHeight() - bottom;
        row = Math.min(height / names.size(), TALLEST_LABELS * font.getSize2D());
        double step = PanelGrid.step(canvas, low, high, 0.7 * (area.getWidth() - left));
        double right = 0.6 * PanelGrid.labelWidth(canvas, low, high, step);
        plot = new Rectangle2D.Double(
                area.getX() + left, area.getY(), area.getWidth() - left - right, row * names.size());
        scale(step, title);
        for (int i = 0; i < names.size(); i++) {
            String name = Canvas.fitted(names.get(i), font, left - 0.8 * font.getSize2D());
            double baseline = middle(i) + 0.36 * font.getSize2D();
            canvas.text(name, area.getX(), baseline, font, canvas.palette().ink(), Align.LEFT);
        }
    }

    /** How many rows of readable names a height holds. */
    static int room(Canvas canvas, Rectangle2D area) {
        double bottom = 3.2 * canvas.type().labelPx();
        return (int) Math.max(
                1,
                Math.floor((area.getHeight() - bottom) / (1.35 * canvas.type().labelPx())));
    }

    private void scale(double step, String title) {
        Font font = canvas.small();
        for (double value = Math.ceil(low / step - 1e-9) * step; value <= high + 1e-9 * step; value += step) {
            double x = x(value);
            boolean zero = Math.abs(value) < 1e-9 * step;
            canvas.line(
                    x,
                    plot.getY(),
                    x,
                    plot.getMaxY(),
                    zero ? canvas.palette().axis() : canvas.palette().grid(),
                    zero ? 1.4 : 1.0);
            String text = Numbers.ticks(step).format(zero ? 0.0 : value);
            canvas.text(
                    text,
                    x,
                    plot.getMaxY() + 1.3 * font.getSize2D(),
                    font,
                    canvas.palette().muted(),
                    Align.CENTER);
        }
        if (!title.isEmpty()) {
            double baseline = plot.getMaxY()
                    + 1.7 * font.getSize2D()
                    + 1.05 * canvas.type().labelPx();
            String text = Canvas.fitted(title, font, plot.getWidth());
            canvas.text(
                    text, plot.getCenterX(), baseline, font, canvas.palette().muted(), Align.CENTER);
        }
    }

    double x(double value) {
        double bounded = Math.max(low, Math.min(high, value));
        return plot.getX() + (bounded - low) / (high - low) * plot.getWidth();
    }

    double middle(int index) {
        return plot.getY() + (index + 0.5) * row;
    }

    double row() {
        return row;
    }

    Rectangle2D plot() {
        return plot;
    }

    /** Returns a bar from zero to a value, above, on or below the middle of a row. */
    Rectangle2D bar(int index, double value, double offsetRows, double heightRows) {
        double from = x(Math.min(0.0, value));
        double to = x(Math.max(0.0, value));
        double top = middle(index) + (offsetRows - heightRows / 2) * row;
        return new Rectangle2D.Double(from, top, to - from, heightRows * row);
    }

    void whisker(int index, double from, double to, double offsetRows) {
        double y = middle(index) + offsetRows * row;
        double cap = Math.min(4.0, 0.12 * row);
        canvas.line(x(from), y, x(to), y, canvas.palette().ink(), 1.5);
        canvas.line(x(from), y - cap, x(from), y + cap, canvas.palette().ink(), 1.5);
        canvas.line(x(to), y - cap, x(to), y + cap, canvas.palette().ink(), 1.5);
    }
}
