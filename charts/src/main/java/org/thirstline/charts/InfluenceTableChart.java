package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.InfluenceTableView.Row;
import org.thirstline.charts.theme.ChartFonts;
import org.thirstline.charts.theme.Palette;

/** Which parameter decides what: parameters down, outputs across, the share of the spread in each cell. */
public final class InfluenceTableChart {

    private static final double PERCENT = 100.0;
    private static final double MOST = 0.5;
    private static final double MUCH = 0.2;
    private static final double SOME = 0.05;
    private static final double NAMES_SHARE = 0.3;
    private static final double TALLEST = 3.2;
    private static final int HEAD_LINES = 4;
    private static final double HEAD_GAP = 0.4;

    private final InfluenceTableView view;
    private final ChartStyle style;
    private final Palette palette;
    private final List<Row> rows;

    private InfluenceTableChart(InfluenceTableView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
        rows = view.rows().stream()
                .sorted(Comparator.comparingDouble(row -> -weight(row)))
                .toList();
    }

    /**
     * Builds the chart.
     *
     * @param view shares by parameter and output
     * @param style look, source
     */
    public static ChartDocument of(InfluenceTableView view, ChartStyle style) {
        return new InfluenceTableChart(view, style).document();
    }

    /** The most that a parameter makes of any output, after how many it decides. */
    private static double weight(Row row) {
        double most = 0.0;
        for (double total : row.totals()) {
            most = Double.isFinite(total) ? Math.max(most, total) : most;
        }
        return 10.0 * row.decided() + Math.min(9.0, most);
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                view.where(),
                "share of the spread that a parameter answers for, alone and together with others (total index)");
        String description = title() + ". " + rows.stream().map(this::spoken).collect(Collectors.joining("; "));
        List<KeyEntry> key = rows.isEmpty()
                ? List.of()
                : List.of(
                        KeyEntry.block(palette.ink(), "half or more"),
                        KeyEntry.block(palette.muted(), "a fifth or more"),
                        KeyEntry.block(palette.band(), "a twentieth or more"));
        int left = view.screened() - rows.size();
        String note = (left > 0
                        ? Subtitles.count(left, "further parameter was", "further parameters were")
                                + " screened and not sampled. "
                        : "")
                + (flat() ? "\u2013: hardly varies with any parameter. " : "")
                + "Columns can add up to more than 100 %, since what two parameters make together counts for both.";
        var words = new ChartDocument.Words("what-decides-what", title(), subtitle, note, description);
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private boolean flat() {
        return rows.stream().anyMatch(row -> Arrays.stream(row.totals()).anyMatch(Double::isNaN));
    }

    private String spoken(Row row) {
        StringBuilder text = new StringBuilder(row.name()).append(": ");
        for (int i = 0; i < view.outputs().size(); i++) {
            text.append(i > 0 ? ", " : "")
                    .append(view.outputs().get(i))
                    .append(' ')
                    .append(percent(row.totals()[i]));
        }
        return text.toString();
    }

    private String title() {
        List<Row> deciding = rows.stream().filter(row -> row.decided() > 0).toList();
        if (deciding.isEmpty()) {
            return rows.isEmpty() ? "No parameter tried moves anything" : "Too few runs to say which parameters decide";
        }
        Row first = deciding.get(0);
        String most = first.name() + " decides " + first.decided() + " of "
                + view.outputs().size() + " answers";
        return deciding.size() == 1
                ? "One of " + view.screened() + " parameters decides: " + first.name()
                : "Of " + view.screened() + " parameters " + Subtitles.number(deciding.size()) + " decide anything; "
                        + most;
    }

    private static String percent(double share) {
        return Double.isFinite(share) ? Numbers.fixed(PERCENT * Math.max(0.0, share), 0) + " %" : "\u2013";
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("parameter", "output", "total_index", "decides");
        for (Row row : rows) {
            for (int i = 0; i < view.outputs().size(); i++) {
                table.row(row.name(), view.outputs().get(i), row.totals()[i], row.decides()[i]);
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (rows.isEmpty() || view.outputs().isEmpty()) {
            return;
        }
        Font label = canvas.label();
        double widest = rows.stream()
                .mapToDouble(row -> Canvas.width(row.name(), label))
                .max()
                .orElse(0.0);
        double left = Math.min(NAMES_SHARE * area.getWidth(), widest) + 0.8 * label.getSize2D();
        double width = (area.getWidth() - left) / view.outputs().size();
        double head = head(canvas, area, left, width);
        double lowest = 1.3 * label.getSize2D();
        double room = area.getHeight() - head;
        double height = Math.max(lowest, Math.min(TALLEST * label.getSize2D(), room / rows.size()));
        int shown = Math.max(1, Math.min(rows.size(), (int) Math.floor(room / height + 1e-9)));
        for (int i = 0; i < shown; i++) {
            double top = area.getY() + head + i * height;
            row(canvas, new Rectangle2D.Double(area.getX(), top, area.getWidth(), height), rows.get(i), left, width);
        }
    }

    /** Writes the outputs' names above their columns and returns how high they are; thumbnails have no room for them. */
    private double head(Canvas canvas, Rectangle2D area, double left, double width) {
        if (style.size().isThumbnail()) {
            return 0.0;
        }
        Font font = headFont(canvas, width);
        double line = Canvas.lineHeight(font);
        double most = width - HEAD_GAP * font.getSize2D();
        List<List<String>> heads = view.outputs().stream()
                .map(output -> Canvas.wrap(output, font, most))
                .toList();
        int lines =
                Math.min(HEAD_LINES, heads.stream().mapToInt(List::size).max().orElse(1));
        for (int i = 0; i < heads.size(); i++) {
            int count = Math.min(lines, heads.get(i).size());
            for (int j = 0; j < count; j++) {
                String text = Canvas.fitted(heads.get(i).get(j), font, most);
                double baseline = area.getY() + (lines - count + j + 1) * line - 0.3 * font.getSize2D();
                canvas.text(
                        text, area.getX() + left + (i + 0.5) * width, baseline, font, palette.muted(), Align.CENTER);
            }
        }
        return lines * line + 0.3 * font.getSize2D();
    }

    /** Narrow columns with long words take the smallest type there is. */
    private Font headFont(Canvas canvas, double width) {
        Font font = canvas.small();
        boolean fits = view.outputs().stream()
                .flatMap(output -> Arrays.stream(output.split(" ", -1)))
                .allMatch(word -> Canvas.width(word, font) <= width - HEAD_GAP * font.getSize2D());
        return fits ? font : ChartFonts.regular(canvas.type().captionPx());
    }

    private void row(Canvas canvas, Rectangle2D box, Row row, double left, double width) {
        Font label = canvas.label();
        double baseline = box.getCenterY() + 0.36 * label.getSize2D();
        String name = Canvas.fitted(row.name(), label, left - 0.8 * label.getSize2D());
        canvas.text(name, box.getX(), baseline, label, palette.ink(), Align.LEFT);
        for (int i = 0; i < row.totals().length; i++) {
            double total = Math.rint(PERCENT * row.totals()[i]) / PERCENT;
            Rectangle2D cell = new Rectangle2D.Double(
                    box.getX() + left + i * width + 1.0, box.getY() + 1.0, width - 2.0, box.getHeight() - 2.0);
            if (total >= SOME) {
                canvas.fill(cell, ground(total));
            } else {
                canvas.fill(cell, palette.wideBand());
            }
            if (!style.size().isThumbnail()) {
                Font font = row.decides()[i] ? canvas.strongSmall() : canvas.small();
                Color color = total >= MUCH ? palette.background() : total >= SOME ? palette.ink() : palette.muted();
                double base = box.getCenterY() + 0.36 * font.getSize2D();
                canvas.text(percent(total), cell.getCenterX(), base, font, color, Align.CENTER);
            }
        }
    }

    private Color ground(double total) {
        if (total >= MOST) {
            return palette.ink();
        }
        return total >= MUCH ? palette.muted() : palette.band();
    }
}
