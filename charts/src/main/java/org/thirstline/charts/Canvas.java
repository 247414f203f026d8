package org.thirstline.charts;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jfree.chart.plot.XYPlot;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.theme.ChartFonts;
import org.thirstline.charts.theme.Palette;
import org.thirstline.charts.theme.TypeScale;
import org.thirstline.model.climate.SeasonClass;

/** What charts draw with: the theme's colours and type on any Java2D target. Confined to one drawing. */
final class Canvas {

    /** Text is measured the same for every target, so that layouts are the same too. */
    private static final FontRenderContext MEASURE = new FontRenderContext(null, true, true);

    private static final float[] DASH = {6f, 5f};
    private static final double HATCH_GAP = 7.0;

    private final Graphics2D graphics;
    private final Palette palette;
    private final TypeScale type;
    private final double width;
    private final List<Tip> tips;
    private final Consumer<XYPlot> change;

    Canvas(Graphics2D graphics, ChartStyle style, List<Tip> tips, Consumer<XYPlot> change) {
        this.change = change;
        this.tips = tips;
        this.graphics = graphics;
        this.palette = style.theme().palette();
        this.type = style.size().type();
        this.width = style.size().widthPx();
    }

    /** Lets the caller of the chart change a plot before it is drawn. */
    void change(XYPlot plot) {
        change.accept(plot);
    }

    /** Notes what a pointer over an area reads. */
    void tip(Rectangle2D area, String text) {
        if (area.getWidth() > 0.0 && area.getHeight() > 0.0) {
            tips.add(new Tip(area, text));
        }
    }

    /** Notes what a pointer near a point reads. */
    void tip(double x, double y, double radius, String text) {
        double reach = Math.max(radius, 0.5 * type.smallPx());
        tip(new Rectangle2D.Double(x - reach, y - reach, 2 * reach, 2 * reach), text);
    }

    /** Returns the right edge of what may be drawn on. */
    double right() {
        return width - type.marginPx();
    }

    Graphics2D graphics() {
        return graphics;
    }

    Palette palette() {
        return palette;
    }

    TypeScale type() {
        return type;
    }

    Font label() {
        return ChartFonts.regular(type.labelPx());
    }

    Font strongLabel() {
        return ChartFonts.semiBold(type.labelPx());
    }

    Font small() {
        return ChartFonts.regular(type.smallPx());
    }

    Font strongSmall() {
        return ChartFonts.semiBold(type.smallPx());
    }

    static double width(String text, Font font) {
        return font.getStringBounds(text, MEASURE).getWidth();
    }

    static double ascent(Font font) {
        return metrics(font).getAscent();
    }

    static double lineHeight(Font font) {
        return font.getSize2D() * 1.3;
    }

    private static LineMetrics metrics(Font font) {
        return font.getLineMetrics("Hg", MEASURE);
    }

    /** Returns the box of a text whose baseline starts at a point, from cap height to descender. */
    static Rectangle2D box(String text, Font font, double x, double baseline) {
        double size = font.getSize2D();
        return new Rectangle2D.Double(x, baseline - 0.75 * size, width(text, font), 0.98 * size);
    }

    /** Breaks a text into lines; a single word that is too long stays whole. */
    static List<String> wrap(String text, Font font, double maxWidth) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && width(longer, font) > maxWidth) {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            } else {
                line.setLength(0);
                line.append(longer);
            }
        }
        if (!line.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }

    /** Breaks a text into as few lines as it needs, of about the same length. */
    static List<String> balanced(String text, Font font, double maxWidth) {
        List<String> lines = wrap(text, font, maxWidth);
        if (lines.size() < 2) {
            return lines;
        }
        List<String> best = lines;
        for (double width = 0.96 * maxWidth; width > 0.5 * maxWidth; width -= 0.04 * maxWidth) {
            List<String> narrower = wrap(text, font, width);
            if (narrower.size() > lines.size()) {
                break;
            }
            best = narrower;
        }
        return best;
    }

    /** Shortens a text with an ellipsis until it fits. */
    static String fitted(String text, Font font, double maxWidth) {
        if (width(text, font) <= maxWidth) {
            return text;
        }
        int end = text.length();
        while (end > 1 && width(text.substring(0, end).stripTrailing() + "\u2026", font) > maxWidth) {
            end--;
        }
        return text.substring(0, end).stripTrailing() + "\u2026";
    }

    void text(String text, double x, double baseline, Font font, Color color, Align align) {
        graphics.setFont(font);
        graphics.setColor(color);
        double left = align == Align.LEFT ? x : x - align.share() * width(text, font);
        graphics.drawString(text, (float) left, (float) baseline);
    }

    void fill(Shape shape, Color color) {
        graphics.setColor(color);
        graphics.fill(shape);
    }

    void outline(Shape shape, Color color, double widthPx) {
        graphics.setStroke(new BasicStroke((float) widthPx, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.setColor(color);
        graphics.draw(shape);
    }

    void line(double x1, double y1, double x2, double y2, Color color, double widthPx) {
        outline(new Line2D.Double(x1, y1, x2, y2), color, widthPx);
    }

    void dashed(Shape shape, Color color, double widthPx) {
        graphics.setStroke(
                new BasicStroke((float) widthPx, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, DASH, 0f));
        graphics.setColor(color);
        graphics.draw(shape);
    }

    /** Fills a rectangle with slanted lines: a value that does not exist. */
    void hatch(Rectangle2D area, Color color) {
        Path2D lines = new Path2D.Double();
        double height = area.getHeight();
        for (double x = area.getX() - height + HATCH_GAP / 2; x < area.getMaxX(); x += HATCH_GAP) {
            double fromX = Math.max(x, area.getX());
            double toX = Math.min(x + height, area.getMaxX());
            lines.moveTo(fromX, area.getMaxY() - (fromX - x));
            lines.lineTo(toX, area.getMaxY() - (toX - x));
        }
        outline(lines, color, 1.0);
    }

    /** Draws the mark of a season: triangle for dry, circle for middle, square for wet, so that colour is not needed. */
    void marker(double x, double y, double radius, @Nullable SeasonClass seasonClass) {
        Shape shape = markerShape(x, y, radius, seasonClass);
        fill(shape, palette.of(seasonClass));
        outline(shape, palette.background(), 1.2);
    }

    private static Shape markerShape(double x, double y, double radius, @Nullable SeasonClass seasonClass) {
        if (seasonClass == SeasonClass.DRY) {
            Path2D triangle = new Path2D.Double();
            triangle.moveTo(x, y - 1.2 * radius);
            triangle.lineTo(x + 1.15 * radius, y + 0.85 * radius);
            triangle.lineTo(x - 1.15 * radius, y + 0.85 * radius);
            triangle.closePath();
            return triangle;
        }
        if (seasonClass == SeasonClass.WET) {
            double side = 0.9 * radius;
            return new Rectangle2D.Double(x - side, y - side, 2 * side, 2 * side);
        }
        return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
    }
}
