package org.thirstline.charts;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.PriorPosteriorView.Marginal;
import org.thirstline.charts.theme.Palette;

/** What the data added: belief in each parameter before and after. */
public final class PriorPosteriorChart {

    /** A posterior at least that wide, against its prior, learnt next to nothing (our choice). */
    private static final double UNTOLD = 0.8;

    private final PriorPosteriorView view;
    private final ChartStyle style;
    private final Palette palette;

    private PriorPosteriorChart(PriorPosteriorView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view priors and posteriors
     * @param style look, source
     */
    public static ChartDocument of(PriorPosteriorView view, ChartStyle style) {
        return new PriorPosteriorChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = view.marginals().isEmpty()
                ? "Nothing fitted"
                : "Belief in each parameter before and after the data; " + view.what();
        String description = title() + ". "
                + view.marginals().stream()
                        .map(marginal -> marginal.axis() + ": " + words(marginal))
                        .collect(Collectors.joining("; "));
        List<KeyEntry> key = view.marginals().isEmpty()
                ? List.of()
                : List.of(
                        KeyEntry.block(palette.band(), "before: range and sources of the crop file"),
                        KeyEntry.line(palette.ink(), "after: with these plots"));
        String note = "Each curve encloses the same area. Width: middle 90 % after, as a share of that before."
                + MorePanels.note(view.marginals().size(), shown(), "parameters");
        var words = new ChartDocument.Words("prior-posterior", title(), subtitle, note, description);
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private int shown() {
        return Math.min(view.marginals().size(), MorePanels.most(style.size()));
    }

    private static String words(Marginal marginal) {
        if (marginal.draws().length == 0) {
            return "no draws";
        }
        String width = Double.isFinite(marginal.narrowing())
                ? "; width " + Numbers.fixed(100.0 * marginal.narrowing(), 0) + " %"
                : "";
        return Numbers.significant(marginal.quantile(0.5), 3) + " (" + Numbers.significant(marginal.quantile(0.05), 3)
                + " to " + Numbers.significant(marginal.quantile(0.95), 3) + ")" + width;
    }

    private String title() {
        List<Marginal> known = view.marginals().stream()
                .filter(marginal -> Double.isFinite(marginal.narrowing()))
                .toList();
        if (known.isEmpty()) {
            return "No parameter was fitted";
        }
        Marginal most = known.stream()
                .min(Comparator.comparingDouble(Marginal::narrowing))
                .orElseThrow();
        long untold =
                known.stream().filter(marginal -> marginal.narrowing() > UNTOLD).count();
        if (untold == known.size()) {
            return known.size() == 1
                    ? "The data add next to nothing on " + most.name()
                    : "The data add next to nothing on any of " + known.size() + " parameters";
        }
        String narrowed = "The data narrow " + most.name() + " to " + Numbers.fixed(100.0 * most.narrowing(), 0)
                + " % of what was possible before";
        return untold == 0
                ? narrowed
                : narrowed + "; on " + (untold == 1 ? "one parameter" : untold + " parameters")
                        + " they add next to nothing";
    }

    private DataTable table() {
        DataTable.Builder table =
                new DataTable.Builder("parameter", "unit", "value", "prior_density", "posterior_density");
        for (Marginal marginal : view.marginals()) {
            double[] posterior = marginal.posteriorDensity();
            for (int i = 0; i < posterior.length; i++) {
                table.row(
                        marginal.name(),
                        marginal.unit(),
                        MorePanels.precise(marginal.values()[i]),
                        MorePanels.precise(marginal.priorDensity()[i]),
                        marginal.draws().length == 0 ? null : MorePanels.precise(posterior[i]));
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (shown() == 0) {
            return;
        }
        PanelGrid grid = new PanelGrid(area, shown(), 1.4, 1.3 * canvas.type().labelPx());
        for (int i = 0; i < shown(); i++) {
            Marginal marginal = view.marginals().get(i);
            panel(canvas, PanelGrid.head(canvas, grid.cell(i), style, marginal.axis(), words(marginal)), marginal);
        }
    }

    private void panel(Canvas canvas, Rectangle2D area, Marginal marginal) {
        double[] values = marginal.values();
        double[] posterior = marginal.posteriorDensity();
        double high = 1e-12;
        for (int i = 0; i < values.length; i++) {
            high = Math.max(high, Math.max(posterior[i], marginal.priorDensity()[i]));
        }
        double step = PanelGrid.step(canvas, marginal.low(), marginal.high(), 0.85 * area.getWidth());
        double half = 0.6 * PanelGrid.labelWidth(canvas, marginal.low(), marginal.high(), step);
        Frame.Builder builder = new Frame.Builder(canvas, area)
                .x(marginal.low(), marginal.high(), step)
                .y(0, 1.05 * high, high)
                .noYLabels()
                .left(half)
                .right(half);
        if (style.size().isThumbnail()) {
            builder.noXLabels().left(2.0).right(2.0);
        }
        Frame frame = builder.draw();
        canvas.fill(frame.between(values, new double[values.length], marginal.priorDensity()), palette.band());
        if (marginal.draws().length > 0) {
            Path2D path = frame.path(values, posterior);
            canvas.outline(path, palette.ink(), 0.8 * canvas.type().strokePx());
        }
    }
}
