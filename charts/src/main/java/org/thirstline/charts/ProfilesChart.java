package org.thirstline.charts;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.ProfilesView.Curve;
import org.thirstline.charts.theme.Palette;

/** How the fit worsens as one parameter after the other moves from its best value, and where that bounds it. */
public final class ProfilesChart {

    /** A profile is shown up to so many thresholds. */
    private static final double TOP = 2.2;

    private final ProfilesView view;
    private final ChartStyle style;
    private final Palette palette;

    private ProfilesChart(ProfilesView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view the profiles
     * @param style look, source
     */
    public static ChartDocument of(ProfilesView view, ChartStyle style) {
        return new ProfilesChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = view.curves().isEmpty()
                ? "Nothing fitted"
                : "Likelihood profiles, all other parameters fitted anew at each value; " + view.what();
        String description = title() + ". "
                + view.curves().stream()
                        .map(curve -> curve.axis() + ": " + curve.words())
                        .collect(Collectors.joining("; "));
        List<KeyEntry> key = view.curves().isEmpty()
                ? List.of()
                : List.of(
                        KeyEntry.line(palette.ink(), "rise of twice the negative log-likelihood"),
                        KeyEntry.dash(palette.muted(), "threshold of the " + level() + " interval"),
                        KeyEntry.block(palette.band(), "interval"));
        var words = new ChartDocument.Words("profiles", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private String level() {
        return Numbers.significant(100.0 * view.level(), 2) + " %";
    }

    private String title() {
        List<Curve> curves = view.curves();
        List<String> loose = curves.stream()
                .filter(curve -> !curve.isDetermined())
                .map(Curve::name)
                .toList();
        if (curves.isEmpty()) {
            return "No parameter was fitted";
        }
        if (loose.isEmpty()) {
            return curves.size() == 1
                    ? "The data determine " + curves.get(0).name() + ": "
                            + curves.get(0).words()
                    : "The data determine all " + curves.size() + " parameters";
        }
        String names = loose.size() <= 2 ? String.join(" and ", loose) : loose.size() + " of them";
        return loose.size() == curves.size()
                ? "The data determine none of " + Subtitles.count(curves.size(), "parameter", "parameters")
                : "The data determine " + (curves.size() - loose.size()) + " of " + curves.size()
                        + " parameters, but not " + names;
    }

    private String note() {
        int shown = Math.min(view.curves().size(), MorePanels.most(style.size()));
        String more = MorePanels.note(view.curves().size(), shown, "parameters");
        return "A parameter is determined where its profile crosses the threshold on both sides; an interval that reaches the"
                + " end of the values tried is open." + more;
    }

    private DataTable table() {
        DataTable.Builder table =
                new DataTable.Builder("parameter", "unit", "value", "rise", "threshold", "estimate", "lower", "upper");
        for (Curve curve : view.curves()) {
            for (int i = 0; i < curve.values().length; i++) {
                table.row(
                        curve.name(),
                        curve.unit(),
                        precise(curve.values()[i]),
                        curve.rises()[i],
                        curve.threshold(),
                        precise(curve.estimate()),
                        curve.lowerOpen() ? null : precise(curve.lower()),
                        curve.upperOpen() ? null : precise(curve.upper()));
            }
        }
        return table.build();
    }

    private static String precise(double value) {
        return MorePanels.precise(value);
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        int shown = Math.min(view.curves().size(), MorePanels.most(style.size()));
        if (shown == 0) {
            return;
        }
        double gap = 1.3 * canvas.type().labelPx();
        PanelGrid grid = new PanelGrid(area, shown, 1.3, gap);
        for (int i = 0; i < shown; i++) {
            Curve curve = view.curves().get(i);
            panel(canvas, PanelGrid.head(canvas, grid.cell(i), style, curve.axis(), curve.words()), curve);
        }
    }

    private void panel(Canvas canvas, Rectangle2D area, Curve curve) {
        double[] values = curve.values();
        double[] ends = PanelGrid.padded(
                Math.min(curve.lower(), values.length == 0 ? curve.estimate() : values[0]),
                Math.max(curve.upper(), values.length == 0 ? curve.estimate() : values[values.length - 1]),
                0.02);
        double high = top(curve);
        double xStep = PanelGrid.step(canvas, ends[0], ends[1], 0.8 * area.getWidth());
        double half = 0.6 * PanelGrid.labelWidth(canvas, ends[0], ends[1], xStep);
        Frame.Builder builder = new Frame.Builder(canvas, area)
                .x(ends[0], ends[1], xStep)
                .y(0, high, Numbers.niceStep(high, 3))
                .right(half)
                .under(frame -> interval(frame, curve));
        if (style.size().isThumbnail()) {
            builder.noXLabels().noYLabels().left(2.0);
        } else {
            builder.left(Math.max(half, Frame.Builder.axisWidth(canvas, 0, high, Numbers.niceStep(high, 3))));
        }
        curve(builder.draw(), curve);
    }

    private void curve(Frame frame, Curve curve) {
        Canvas canvas = frame.canvas();
        Shape before = canvas.graphics().getClip();
        canvas.graphics().clip(frame.area());
        canvas.outline(
                frame.path(curve.values(), curve.rises()),
                palette.ink(),
                0.8 * canvas.type().strokePx());
        double limit = frame.y(curve.threshold());
        canvas.dashed(
                new Line2D.Double(frame.area().getX(), limit, frame.area().getMaxX(), limit), palette.muted(), 1.4);
        canvas.graphics().setClip(before);
        double radius = 0.25 * canvas.type().labelPx();
        double x = frame.x(curve.estimate());
        canvas.fill(new Ellipse2D.Double(x - radius, frame.y(0) - radius, 2 * radius, 2 * radius), palette.ink());
    }

    /** Shows the threshold with room above it, and no more of the walls than is useful. */
    private static double top(Curve curve) {
        double threshold = Math.max(curve.threshold(), 1e-6);
        double highest = Arrays.stream(curve.rises()).max().orElse(0.0);
        return Math.max(1.3 * threshold, Math.min(TOP * threshold, highest));
    }

    private void interval(Frame frame, Curve curve) {
        Rectangle2D area = frame.area();
        double left = Math.max(area.getX(), frame.x(curve.lower()));
        double right = Math.min(area.getMaxX(), frame.x(curve.upper()));
        if (curve.lowerOpen()) {
            left = area.getX();
        }
        if (curve.upperOpen()) {
            right = area.getMaxX();
        }
        double top = frame.y(curve.threshold());
        frame.canvas()
                .fill(
                        new Rectangle2D.Double(left, top, Math.max(1.0, right - left), area.getMaxY() - top),
                        palette.band());
    }
}
