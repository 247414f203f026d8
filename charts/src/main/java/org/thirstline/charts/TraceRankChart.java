package org.thirstline.charts;

import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.calibration.posterior.Convergence;
import org.thirstline.charts.DrawsView.Draws;
import org.thirstline.charts.theme.Palette;

/**
 * Whether the chains of a sampler have found the same distribution: their draws in order and, beside them, how their ranks among all draws
 * spread (Vehtari and others 2021).
 *
 * @cite vehtari2021
 */
public final class TraceRankChart {

    private static final int TRACE_POINTS = 400;
    private static final double TRACE_SHARE = 0.62;

    /** Two-sided 95 % of a normal distribution. */
    private static final double TWO_SIDED_95 = 1.959964;

    private final DrawsView view;
    private final ChartStyle style;
    private final Palette palette;
    private final List<Draws> shown;

    private TraceRankChart(DrawsView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
        shown = view.parameters().stream()
                .filter(draws -> draws.size() > 0)
                .sorted(Comparator.comparingDouble(draws -> -known(draws.rHat())))
                .limit(room())
                .toList();
    }

    /**
     * Builds the chart.
     *
     * @param view draws
     * @param style look, source
     */
    public static ChartDocument of(DrawsView view, ChartStyle style) {
        return new TraceRankChart(view, style).document();
    }

    private static double known(double rHat) {
        return Double.isFinite(rHat) ? rHat : Double.MAX_VALUE;
    }

    private int room() {
        return switch (style.size()) {
            case SLIDE, SLIDE_BODY, PAGE, HALF_SLIDE -> 4;
            case SLIDE_BODY_NARROW, COLUMN -> 3;
            case THUMBNAIL -> 1;
        };
    }

    private int chains() {
        return shown.isEmpty() ? 0 : shown.get(0).chains().length;
    }

    private static boolean mixed(Draws draws) {
        return draws.rHat() <= Convergence.R_HAT_LIMIT;
    }

    private ChartDocument document() {
        String subtitle = shown.isEmpty()
                ? "Nothing drawn"
                : "Draws of " + Subtitles.count(chains(), "chain", "chains")
                        + " in order and, beside them, how each chain\u2019s ranks spread; " + view.what();
        String description =
                title() + ". " + view.parameters().stream().map(this::spoken).collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("traces", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String spoken(Draws draws) {
        return draws.axis() + ": " + judged(draws);
    }

    private static String judged(Draws draws) {
        String effective = Double.isFinite(draws.effectiveDraws())
                ? ", worth " + Numbers.fixed(draws.effectiveDraws(), 0) + " independent draws"
                : "";
        return "R-hat " + Numbers.fixed(draws.rHat(), 3) + effective;
    }

    private String title() {
        if (shown.isEmpty()) {
            return "No draws yet";
        }
        Draws worst = shown.get(0);
        if (view.parameters().stream().allMatch(TraceRankChart::mixed)) {
            return "The chains agree: R-hat is at most " + Numbers.fixed(worst.rHat(), 3);
        }
        return Double.isFinite(worst.rHat())
                ? "The chains do not agree yet: R-hat of " + worst.name() + " is " + Numbers.fixed(worst.rHat(), 2)
                : "Whether the chains agree cannot be told for " + worst.name();
    }

    private String note() {
        return "R-hat up to " + Convergence.R_HAT_LIMIT
                + " counts as agreement. Ranks: an even spread in every chain is what agreement looks like; the band"
                + " holds 95 % of bins of as many independent draws as these are worth."
                + MorePanels.note(view.parameters().size(), shown.size(), "parameters, least agreement first");
    }

    private List<KeyEntry> key() {
        if (shown.isEmpty()) {
            return List.of();
        }
        List<KeyEntry> key = new ArrayList<>();
        boolean apart = shown.stream().anyMatch(draws -> !mixed(draws)) && chains() > 1;
        key.add(KeyEntry.line(palette.middle(), apart ? "chains" : "chains, one over the other"));
        if (apart) {
            key.add(KeyEntry.line(palette.ink(), "the chain farthest from an even spread"));
        }
        key.add(KeyEntry.block(palette.band(), "even spread of ranks"));
        return key;
    }

    private static int bins(Draws draws) {
        return Math.max(4, Math.min(20, draws.chains()[0].length / 10));
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "parameter", "chain", "rank_bin", "draws_in_bin", "evenly_spread", "r_hat", "effective_draws");
        for (Draws draws : view.parameters()) {
            if (draws.size() == 0) {
                continue;
            }
            RankCounts ranks = RankCounts.of(draws, bins(draws));
            for (int chain = 0; chain < draws.chains().length; chain++) {
                for (int bin = 0; bin < ranks.bins(); bin++) {
                    table.row(
                            draws.name(),
                            chain + 1,
                            bin + 1,
                            ranks.counts()[chain][bin],
                            ranks.even(),
                            draws.rHat(),
                            draws.effectiveDraws());
                }
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (shown.isEmpty()) {
            return;
        }
        double[] weights = new double[shown.size()];
        java.util.Arrays.fill(weights, 1.0);
        Panels rows = new Panels(area, 0.6 * canvas.type().labelPx(), weights);
        double gap = 1.6 * canvas.type().labelPx();
        double left = shown.stream()
                .mapToDouble(draws -> axisWidth(canvas, draws))
                .max()
                .orElse(0.0);
        for (int i = 0; i < shown.size(); i++) {
            Draws draws = shown.get(i);
            Rectangle2D row = PanelGrid.head(canvas, rows.row(i), style, draws.axis() + ": " + judged(draws));
            double width = TRACE_SHARE * (row.getWidth() - gap);
            RankCounts ranks = RankCounts.of(draws, bins(draws));
            int apart = mixed(draws) || chains() < 2 ? -1 : ranks.farthest();
            trace(canvas, new Rectangle2D.Double(row.getX(), row.getY(), width, row.getHeight()), draws, apart, left);
            Rectangle2D right = new Rectangle2D.Double(
                    row.getX() + width + gap, row.getY(), row.getWidth() - width - gap, row.getHeight());
            ranks(canvas, right, draws, ranks, apart);
        }
    }

    private Color color(int chain, int apart) {
        return chain == apart ? palette.ink() : palette.middle();
    }

    private static double[] ends(Draws draws) {
        return PanelGrid.padded(draws.least(), draws.most(), 0.04);
    }

    private static double axisWidth(Canvas canvas, Draws draws) {
        double[] ends = ends(draws);
        return Frame.Builder.axisWidth(canvas, ends[0], ends[1], Numbers.niceStep(ends[1] - ends[0], 3));
    }

    private void trace(Canvas canvas, Rectangle2D area, Draws draws, int apart, double left) {
        double[] ends = ends(draws);
        int length = draws.chains()[0].length;
        double step = Numbers.niceStep(ends[1] - ends[0], 3);
        Frame.Builder builder = new Frame.Builder(canvas, area)
                .x(0, Math.max(1, length), Math.max(1, length))
                .y(ends[0], ends[1], step)
                .noXLabels()
                .left(left);
        if (style.size().isThumbnail()) {
            builder.noYLabels().left(2.0);
        }
        Frame frame = builder.draw();
        for (int pass = 0; pass < 2; pass++) {
            for (int chain = 0; chain < draws.chains().length; chain++) {
                if ((chain == apart) == (pass == 1)) {
                    line(frame, draws.chains()[chain], color(chain, apart));
                }
            }
        }
    }

    private static void line(Frame frame, double[] chain, Color color) {
        int points = Math.min(TRACE_POINTS, chain.length);
        double[] xs = new double[points];
        double[] ys = new double[points];
        for (int i = 0; i < points; i++) {
            int at = (int) ((2L * i + 1L) * chain.length / (2L * points));
            xs[i] = at + 0.5;
            ys[i] = chain[at];
        }
        frame.canvas().outline(frame.path(xs, ys), color, 0.8);
    }

    private void ranks(Canvas canvas, Rectangle2D area, Draws draws, RankCounts ranks, int apart) {
        double inflation = draws.effectiveDraws() > 0.0 ? Math.max(1.0, draws.size() / draws.effectiveDraws()) : 1.0;
        double half = TWO_SIDED_95 * Math.sqrt(inflation * ranks.even() * (1.0 - 1.0 / ranks.bins()));
        double high = 1.08 * Math.max(ranks.most(), ranks.even() + half);
        Frame frame = new Frame.Builder(canvas, area)
                .x(0, ranks.bins(), ranks.bins())
                .y(0, high, high)
                .noXLabels()
                .noYLabels()
                .left(2.0)
                .draw();
        Rectangle2D box = frame.area();
        double top = frame.y(ranks.even() + half);
        double bottom = Math.min(frame.y(0), frame.y(ranks.even() - half));
        canvas.fill(new Rectangle2D.Double(box.getX(), top, box.getWidth(), bottom - top), palette.band());
        for (int pass = 0; pass < 2; pass++) {
            for (int chain = 0; chain < ranks.counts().length; chain++) {
                if ((chain == apart) == (pass == 1)) {
                    steps(frame, ranks.counts()[chain], color(chain, apart));
                }
            }
        }
        double even = frame.y(ranks.even());
        canvas.dashed(new Line2D.Double(box.getX(), even, box.getMaxX(), even), palette.muted(), 1.2);
    }

    private static void steps(Frame frame, int[] counts, Color color) {
        double[] xs = new double[2 * counts.length];
        double[] ys = new double[2 * counts.length];
        for (int bin = 0; bin < counts.length; bin++) {
            xs[2 * bin] = bin;
            xs[2 * bin + 1] = bin + 1.0;
            ys[2 * bin] = counts[bin];
            ys[2 * bin + 1] = counts[bin];
        }
        frame.canvas().outline(frame.path(xs, ys), color, 1.8);
    }
}
