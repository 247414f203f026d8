package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.SobolView.Share;
import org.thirstline.charts.theme.Palette;

/**
 * How much of the spread of an output each parameter answers for, alone and together with others.
 *
 * @cite saltelli2010
 */
public final class SobolChart {

    private static final double PERCENT = 100.0;
    private static final int THUMBNAIL_ROWS = 4;
    private static final double WHISKER_OFFSET = 0.2;

    private final SobolView view;
    private final ChartStyle style;
    private final Palette palette;

    private SobolChart(SobolView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view shares of one output
     * @param style look, source
     */
    public static ChartDocument of(SobolView view, ChartStyle style) {
        return new SobolChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                view.where(),
                "share of the spread of " + view.output().words()
                        + " that each parameter answers for, all varied at once over their ranges");
        String description = title() + ". "
                + view.shares().stream()
                        .map(share -> share.name() + ": " + percent(share.first()) + " alone, " + percent(share.total())
                                + " with others")
                        .collect(Collectors.joining("; "));
        List<KeyEntry> key = view.varies()
                ? List.of(
                        KeyEntry.block(palette.muted(), "alone (first index)"),
                        KeyEntry.ghost(
                                palette.muted(), palette.wideBand(), "alone and together with others (total index)"))
                : List.of();
        int left = view.screened() - view.shares().size();
        String note = "Whiskers: 95 % bootstrap interval."
                + (left > 0
                        ? " Left out: the " + left + " of " + view.screened()
                                + " parameters that did least in the screening."
                        : "");
        var words = new ChartDocument.Words("shares-of-spread", title(), subtitle, note, description);
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private static String percent(double share) {
        return Numbers.fixed(PERCENT * share, 0) + " %";
    }

    private String title() {
        String output = view.output().words();
        String capital = Character.toUpperCase(output.charAt(0)) + output.substring(1);
        if (!view.varies()) {
            return capital + " does not vary with any parameter tried";
        }
        List<Share> deciding = view.deciding();
        if (deciding.isEmpty()) {
            return "Too few runs to say which parameters decide " + output;
        }
        if (deciding.size() == 1) {
            return capital + " hangs on " + deciding.get(0).name() + ": "
                    + percent(Math.min(1.0, deciding.get(0).total())) + " of its spread";
        }
        return "Of " + view.screened() + " parameters " + Subtitles.number(deciding.size()) + " decide " + output + "; "
                + deciding.get(0).name() + " alone makes "
                + percent(Math.max(0.0, Math.min(1.0, deciding.get(0).first()))) + " of its spread";
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "parameter",
                "first_index",
                "first_index_low",
                "first_index_high",
                "total_index",
                "total_index_low",
                "total_index_high");
        view.shares()
                .forEach(share -> table.row(
                        share.name(),
                        share.first(),
                        share.firstLow(),
                        share.firstHigh(),
                        share.total(),
                        share.totalLow(),
                        share.totalHigh()));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (!view.varies()) {
            return;
        }
        List<Share> rows = view.shares().stream()
                .limit(style.size().isThumbnail() ? THUMBNAIL_ROWS : BarRows.room(canvas, area))
                .toList();
        double low =
                Math.min(0.0, rows.stream().mapToDouble(Share::firstLow).min().orElse(0.0));
        double high = rows.stream()
                .mapToDouble(share -> Math.max(share.firstHigh(), share.totalHigh()))
                .max()
                .orElse(1.0);
        double room = 3.0 * Canvas.width("100 %", canvas.small()) / area.getWidth();
        String title = style.size().isThumbnail()
                ? ""
                : "% of the spread (variance) of " + view.output().words();
        List<String> names = rows.stream().map(Share::name).toList();
        BarRows bars =
                new BarRows(canvas, area, names, PERCENT * low, PERCENT * Math.max(0.05, high) * (1.02 + room), title);
        for (int i = 0; i < rows.size(); i++) {
            row(canvas, bars, i, rows.get(i));
        }
    }

    private void row(Canvas canvas, BarRows bars, int index, Share share) {
        Rectangle2D total = bars.bar(index, PERCENT * share.total(), WHISKER_OFFSET, 0.32);
        canvas.fill(total, palette.wideBand());
        canvas.outline(total, palette.muted(), 1.3);
        canvas.fill(bars.bar(index, PERCENT * share.first(), -WHISKER_OFFSET, 0.32), palette.muted());
        bars.whisker(index, PERCENT * share.firstLow(), PERCENT * share.firstHigh(), -WHISKER_OFFSET);
        bars.whisker(index, PERCENT * share.totalLow(), PERCENT * share.totalHigh(), WHISKER_OFFSET);
        if (style.size().isThumbnail()) {
            return;
        }
        Font font = canvas.small();
        double end = bars.x(PERCENT * Math.max(share.firstHigh(), share.totalHigh())) + 0.5 * font.getSize2D();
        canvas.text(
                percent(share.total()),
                end,
                bars.middle(index) + 0.36 * font.getSize2D(),
                font,
                palette.muted(),
                Align.LEFT);
    }
}
