package org.thirstline.charts;

import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.MorrisView.Effect;
import org.thirstline.charts.theme.Palette;

/**
 * Screening: how far each parameter moves an output, and how much that depends on the values of others.
 *
 * @cite morris1991
 */
public final class MorrisChart {

    private static final int THUMBNAIL_ROWS = 5;

    private final MorrisView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private MorrisChart(MorrisView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view effects on one output
     * @param style look, units, source
     */
    public static ChartDocument of(MorrisView view, ChartStyle style) {
        return new MorrisChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                view.where(),
                "what moving each parameter through its whole range does to "
                        + view.output().words());
        String description = title() + ". "
                + view.effects().stream()
                        .map(effect -> effect.name() + ": " + view.output().text(effect.size(), units))
                        .collect(Collectors.joining("; "));
        List<KeyEntry> key = view.effects().isEmpty()
                ? List.of()
                : List.of(
                        KeyEntry.block(palette.muted(), "mean size of the effect (\u00b5*), with its standard error"),
                        KeyEntry.ring(palette.ink(), "how far it depends on other values (sigma)"));
        int small = view.effects().size() - tellable();
        String rest = small > 0 && tellable() > 0
                ? Subtitles.count(small, "parameter moves", "parameters move") + " it by next to nothing. "
                : "";
        String note = rest + "+ raises, \u2212 lowers, \u00b1 one or the other, depending on the other parameters. "
                + "A parameter whose bar is short may be left at its default.";
        var words = new ChartDocument.Words("screening", title(), subtitle, note, description);
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private String title() {
        if (tellable() == 0) {
            String words = view.output().words();
            return Character.toUpperCase(words.charAt(0)) + words.substring(1)
                    + " hardly depends on any parameter tried";
        }
        Effect first = view.effects().get(0);
        String name =
                Character.toUpperCase(first.name().charAt(0)) + first.name().substring(1);
        return name + " moves " + view.output().words() + " most: by "
                + view.output().text(first.size(), units) + " over its range";
    }

    /** An effect that rounds to nothing is not drawn. */
    private boolean isTold(Effect effect) {
        return view.output().number(effect.size(), units).chars().anyMatch(digit -> digit >= '1' && digit <= '9');
    }

    private int tellable() {
        return (int) view.effects().stream().filter(this::isTold).count();
    }

    private DataTable table() {
        DataTable.Builder table =
                new DataTable.Builder("parameter", "mean_effect", "mean_size", "mean_size_error", "deviation", "unit");
        view.effects()
                .forEach(effect -> table.row(
                        effect.name(),
                        effect.mean(),
                        effect.size(),
                        effect.sizeError(),
                        effect.deviation(),
                        view.output().unit()));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (view.effects().isEmpty()) {
            return;
        }
        List<Effect> rows = view.effects().stream()
                .filter(effect -> tellable() == 0 || isTold(effect))
                .limit(style.size().isThumbnail() ? THUMBNAIL_ROWS : BarRows.room(canvas, area))
                .toList();
        double high = rows.stream()
                .mapToDouble(effect -> Math.max(effect.size() + effect.sizeError(), effect.deviation()))
                .map(value -> view.output().shown(value, units))
                .max()
                .orElse(1.0);
        Font font = canvas.small();
        double room = 3.0 * Canvas.width("+00.0", font) / area.getWidth();
        String title = style.size().isThumbnail() ? "" : view.output().axis(units);
        List<String> names = rows.stream().map(Effect::name).toList();
        BarRows bars = new BarRows(canvas, area, names, 0.0, Math.max(1e-9, high) * (1.03 + room), title);
        for (int i = 0; i < rows.size(); i++) {
            row(canvas, bars, i, rows.get(i));
        }
    }

    private void row(Canvas canvas, BarRows bars, int index, Effect effect) {
        double size = view.output().shown(effect.size(), units);
        double error = view.output().shown(effect.sizeError(), units);
        double deviation = view.output().shown(effect.deviation(), units);
        canvas.fill(bars.bar(index, size, 0.0, 0.5), palette.muted());
        if (error > 0.0) {
            bars.whisker(index, size - error, size + error, 0.0);
        }
        double radius = Math.min(0.26 * bars.row(), 0.34 * canvas.type().labelPx());
        double x = bars.x(deviation);
        Shape ring = new Ellipse2D.Double(x - radius, bars.middle(index) - radius, 2 * radius, 2 * radius);
        canvas.fill(ring, palette.background());
        canvas.outline(ring, palette.ink(), 1.6);
        if (style.size().isThumbnail()) {
            return;
        }
        Font font = canvas.small();
        String text = sign(effect) + view.output().number(effect.size(), units);
        double end = Math.max(bars.x(size + error), x + radius) + 0.5 * font.getSize2D();
        canvas.text(text, end, bars.middle(index) + 0.36 * font.getSize2D(), font, palette.muted(), Align.LEFT);
    }

    private static String sign(Effect effect) {
        if (effect.raises()) {
            return "+";
        }
        return effect.lowers() ? "\u2212" : "\u00b1";
    }
}
