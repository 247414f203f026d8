package org.thirstline.charts;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.thirstline.charts.theme.ChartFonts;

/**
 * A finished chart, ready for any output: the finding as its title, what the data are, the signs, the picture, the source. Immutable and
 * thread-safe; every painting builds its plots anew.
 */
public final class ChartDocument {

    private static final float[] TITLE_SHRINK = {1f, 0.92f, 0.84f, 0.76f, 0.68f};
    private static final int CAPTION_LINES = 4;
    private static final int SUBTITLE_LINES = 2;
    private static final String INVENTED = "Invented data.";

    private final Words words;
    private final ChartStyle style;
    private final List<KeyEntry> key;
    private final Supplier<DataTable> data;
    private final Body body;
    private final Consumer<XYPlot> change;

    /**
     * The words of a chart.
     *
     * @param id stem of file names and ids, lower case and hyphens
     * @param title the finding, with its number
     * @param subtitle what the data are
     * @param note what must be known to read the chart, before the source; may be empty
     * @param description the chart for those who cannot see it
     */
    public record Words(String id, String title, String subtitle, String note, String description) {}

    /** Paints the picture into its area. */
    @FunctionalInterface
    interface Body {
        void paint(Canvas canvas, Rectangle2D area);
    }

    ChartDocument(Words words, ChartStyle style, List<KeyEntry> key, Supplier<DataTable> data, Body body) {
        this(words, style, key, data, body, plot -> {});
    }

    private ChartDocument(
            Words words,
            ChartStyle style,
            List<KeyEntry> key,
            Supplier<DataTable> data,
            Body body,
            Consumer<XYPlot> change) {
        this.words = words;
        this.style = style;
        this.key = List.copyOf(key);
        this.data = data;
        this.body = body;
        this.change = change;
    }

    /**
     * Returns the same chart under other words.
     *
     * @param other its words
     */
    public ChartDocument withWords(Words other) {
        return new ChartDocument(other, style, key, data, body, change);
    }

    /**
     * Returns the same chart with its plots changed: each plot with axes is handed over before it is drawn, in our look.
     *
     * @param more what to change, e.g. axes, grid, annotations, further datasets; called again at every drawing
     */
    public ChartDocument withPlots(Consumer<XYPlot> more) {
        return new ChartDocument(words, style, key, data, body, change.andThen(more));
    }

    /** Returns this chart as an object of JFreeChart, for its panels, writers, titles and legends. */
    public JFreeChart toJFreeChart() {
        JFreeChart chart = new JFreeChart(null, null, new DocumentPlot(this), false);
        chart.setBackgroundPaint(style.theme().palette().background());
        return chart;
    }

    /** Returns the words. */
    public Words words() {
        return words;
    }

    /** Returns the style. */
    public ChartStyle style() {
        return style;
    }

    /** Returns the numbers behind the chart, in SI units. */
    public DataTable data() {
        return data.get();
    }

    /** Returns the lines under the chart: note, source, and whether the data are invented. */
    public String caption() {
        String caption = words.note();
        if (!style.source().isBlank()) {
            caption = caption.isEmpty() ? style.source() : caption + " " + style.source();
        }
        return style.invented() ? (INVENTED + " " + caption).strip() : caption;
    }

    /**
     * Paints the chart at its size in pixels.
     *
     * @param graphics any Java2D target
     */
    public void paint(Graphics2D graphics) {
        paintWithTips(graphics);
    }

    /**
     * Paints the chart at its size in pixels and returns what a pointer over its parts reads.
     *
     * @param graphics any Java2D target
     */
    public List<Tip> paintWithTips(Graphics2D graphics) {
        List<Tip> tips = new ArrayList<>();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        Canvas canvas = new Canvas(graphics, style, tips, change);
        double width = style.size().widthPx();
        double height = style.size().heightPx();
        canvas.fill(
                new Rectangle2D.Double(0, 0, width, height), canvas.palette().background());
        double margin = canvas.type().marginPx();
        double inner = width - 2 * margin;
        double top = header(canvas, margin, inner);
        double bottom = footer(canvas, margin, inner, height);
        body.paint(canvas, new Rectangle2D.Double(margin, top, inner, bottom - top));
        return List.copyOf(tips);
    }

    private double header(Canvas canvas, double margin, double inner) {
        var type = canvas.type();
        double y = title(canvas, margin, inner);
        if (style.size().isThumbnail()) {
            return y + 0.4 * type.labelPx();
        }
        Font font = ChartFonts.regular(type.subtitlePx());
        y += 0.25 * type.subtitlePx();
        List<String> lines = Canvas.balanced(words.subtitle(), font, inner);
        for (int i = 0; i < Math.min(SUBTITLE_LINES, lines.size()); i++) {
            y += Canvas.lineHeight(font);
            boolean cut = i == SUBTITLE_LINES - 1 && lines.size() > SUBTITLE_LINES;
            String line = Canvas.fitted(cut ? lines.get(i) + "\u2026" : lines.get(i), font, inner);
            canvas.text(line, margin, y, font, canvas.palette().muted(), Align.LEFT);
        }
        y += 0.7 * type.subtitlePx();
        return KeyEntry.paint(key, canvas, margin, y, inner) + 0.7 * type.labelPx();
    }

    private double title(Canvas canvas, double margin, double inner) {
        int maxLines = style.size().titleLines();
        if (maxLines == 0) {
            return 0.25 * canvas.type().subtitlePx();
        }
        Font font = ChartFonts.semiBold(canvas.type().titlePx());
        List<String> lines = List.of();
        for (float shrink : TITLE_SHRINK) {
            font = ChartFonts.semiBold(canvas.type().titlePx() * shrink);
            lines = Canvas.balanced(words.title(), font, inner);
            if (lines.size() <= maxLines) {
                break;
            }
        }
        double y = margin - 0.25 * font.getSize2D();
        for (int i = 0; i < Math.min(maxLines, lines.size()); i++) {
            y += i == 0 ? font.getSize2D() : 1.18 * font.getSize2D();
            boolean cut = i == maxLines - 1 && lines.size() > maxLines;
            String line = Canvas.fitted(cut ? lines.get(i) + "\u2026" : lines.get(i), font, inner);
            canvas.text(line, margin, y, font, canvas.palette().ink(), Align.LEFT);
        }
        return y;
    }

    /** Paints the caption from the bottom up and returns its upper edge. */
    private double footer(Canvas canvas, double margin, double inner, double height) {
        Font font = ChartFonts.regular(canvas.type().captionPx());
        String text = style.size().isThumbnail() ? (style.invented() ? INVENTED : "") : caption();
        if (text.isBlank()) {
            return height - margin;
        }
        List<String> lines = Canvas.wrap(text, font, inner);
        int shown = Math.min(CAPTION_LINES, lines.size());
        double lineHeight = Canvas.lineHeight(font);
        double baseline = height - 0.75 * margin - (shown - 1) * lineHeight;
        double top = baseline - Canvas.ascent(font) - 0.5 * canvas.type().labelPx();
        for (int i = 0; i < shown; i++) {
            boolean cut = i == CAPTION_LINES - 1 && lines.size() > CAPTION_LINES;
            String line = Canvas.fitted(cut ? lines.get(i) + "\u2026" : lines.get(i), font, inner);
            captionLine(canvas, line, margin, baseline + i * lineHeight, font, i == 0);
        }
        return top;
    }

    private void captionLine(Canvas canvas, String line, double x, double baseline, Font font, boolean first) {
        if (!first || !style.invented()) {
            canvas.text(line, x, baseline, font, canvas.palette().muted(), Align.LEFT);
            return;
        }
        Font strong = ChartFonts.semiBold(font.getSize2D());
        canvas.text(INVENTED, x, baseline, strong, canvas.palette().ink(), Align.LEFT);
        String rest = line.substring(INVENTED.length());
        if (!rest.isBlank()) {
            double restX = x + Canvas.width(INVENTED, strong) + 0.3 * font.getSize2D();
            String fitted = Canvas.fitted(
                    rest.strip(),
                    font,
                    style.size().widthPx() - restX - canvas.type().marginPx() * 0.6);
            canvas.text(fitted, restX, baseline, font, canvas.palette().muted(), Align.LEFT);
        }
    }
}
