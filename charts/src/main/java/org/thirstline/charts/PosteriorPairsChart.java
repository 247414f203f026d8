package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.thirstline.charts.DrawsView.Draws;
import org.thirstline.charts.theme.Palette;

/** Which parameters the data leave free to trade against one another: draws of each two, and their correlation. */
public final class PosteriorPairsChart {

    /** A correlation that large is told (our choice). */
    private static final double STRONG = 0.7;

    private static final int POINTS = 350;
    private static final int BINS = 24;

    private final DrawsView view;
    private final ChartStyle style;
    private final Palette palette;
    private final int count;
    private final double[][] correlations;
    private final List<Integer> shown;

    private PosteriorPairsChart(DrawsView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
        count = view.parameters().size();
        correlations = new double[count][count];
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < i; j++) {
                correlations[i][j] = DrawsView.correlation(
                        view.parameters().get(i), view.parameters().get(j));
                correlations[j][i] = correlations[i][j];
            }
        }
        shown = shown();
    }

    /**
     * Builds the chart.
     *
     * @param view draws
     * @param style look, source
     */
    public static ChartDocument of(DrawsView view, ChartStyle style) {
        return new PosteriorPairsChart(view, style).document();
    }

    private int room() {
        return switch (style.size()) {
            case SLIDE -> 6;
            case SLIDE_BODY, PAGE, HALF_SLIDE -> 5;
            case SLIDE_BODY_NARROW, COLUMN -> 4;
            case THUMBNAIL -> 3;
        };
    }

    /** The parameters with the strongest ties, in the order given. */
    private List<Integer> shown() {
        return IntStream.range(0, count)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -strongest(i)))
                .limit(room())
                .sorted()
                .toList();
    }

    private double strongest(int parameter) {
        return IntStream.range(0, count)
                .filter(other -> other != parameter)
                .mapToDouble(other -> Math.abs(correlations[parameter][other]))
                .filter(Double::isFinite)
                .max()
                .orElse(0.0);
    }

    private ChartDocument document() {
        String subtitle = count == 0 || view.parameters().get(0).size() == 0
                ? "Nothing drawn"
                : "Draws from the posterior of each two parameters and, above the diagonal, their correlation; "
                        + view.what();
        StringBuilder spoken = new StringBuilder(title()).append(". ");
        for (int[] pair : pairs()) {
            spoken.append(name(pair[0]))
                    .append(" with ")
                    .append(name(pair[1]))
                    .append(": ")
                    .append(Numbers.fixed(correlations[pair[0]][pair[1]], 2))
                    .append("; ");
        }
        String note =
                "Of two parameters with a strong correlation these data tell only what both make together; fix one of them,"
                        + " or measure what bears on one alone." + MorePanels.note(count, shown.size(), "parameters");
        var words = new ChartDocument.Words("posterior-pairs", title(), subtitle, note, spoken.toString());
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private String name(int parameter) {
        return view.parameters().get(parameter).name();
    }

    private List<int[]> pairs() {
        List<int[]> pairs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < i; j++) {
                if (Double.isFinite(correlations[i][j])) {
                    pairs.add(new int[] {j, i});
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(pair -> -Math.abs(correlations[pair[0]][pair[1]])));
        return pairs;
    }

    private String title() {
        List<int[]> pairs = pairs();
        if (pairs.isEmpty()) {
            return count == 0 ? "No parameter was drawn" : "There are no two parameters to trade off";
        }
        int[] most = pairs.get(0);
        double r = correlations[most[0]][most[1]];
        return Math.abs(r) >= STRONG
                ? "The data hardly tell " + name(most[0]) + " from " + name(most[1]) + ": correlation "
                        + Numbers.fixed(r, 2)
                : "The data tell the parameters apart: no correlation beyond "
                        + Numbers.fixed(Math.ceil(100.0 * Math.abs(r)) / 100.0, 2);
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("parameter", "other", "correlation");
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < i; j++) {
                table.row(name(j), name(i), correlations[i][j]);
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        int n = shown.size();
        if (n == 0 || view.parameters().get(shown.get(0)).size() == 0) {
            return;
        }
        boolean thumbnail = style.size().isThumbnail();
        double gap = (thumbnail ? 0.4 : 0.7) * canvas.type().labelPx();
        double bottom = thumbnail ? 0.0 : 1.9 * canvas.type().smallPx();
        double width = (area.getWidth() - gap * (n - 1)) / n;
        double top = area.getY() + (thumbnail ? 0.5 * canvas.type().labelPx() : 0.0);
        double height = (area.getMaxY() - top - bottom - gap * (n - 1)) / n;
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                Rectangle2D cell = new Rectangle2D.Double(
                        area.getX() + column * (width + gap), top + row * (height + gap), width, height);
                cell(canvas, cell, row, column);
            }
        }
        if (!thumbnail) {
            for (int column = 0; column < n; column++) {
                ends(canvas, area.getX() + column * (width + gap), width, area.getMaxY(), shown.get(column));
            }
        }
    }

    private void cell(Canvas canvas, Rectangle2D cell, int row, int column) {
        if (row == column) {
            diagonal(canvas, cell, view.parameters().get(shown.get(row)));
        } else if (row > column) {
            cloud(
                    canvas,
                    cell,
                    view.parameters().get(shown.get(column)),
                    view.parameters().get(shown.get(row)));
        } else {
            number(canvas, cell, correlations[shown.get(row)][shown.get(column)]);
        }
    }

    /** Least and greatest draw under a column. */
    private void ends(Canvas canvas, double left, double width, double bottom, int parameter) {
        Draws draws = view.parameters().get(parameter);
        Font font = canvas.small();
        String low = Numbers.significant(draws.least(), 2);
        String high = Numbers.significant(draws.most(), 2);
        double baseline = bottom - 0.35 * font.getSize2D();
        if (Canvas.width(low, font) + Canvas.width(high, font) + font.getSize2D() > width) {
            return;
        }
        canvas.text(low, left, baseline, font, palette.muted(), Align.LEFT);
        if (draws.most() > draws.least()) {
            canvas.text(high, left + width, baseline, font, palette.muted(), Align.RIGHT);
        }
    }

    private void number(Canvas canvas, Rectangle2D cell, double r) {
        boolean strong = Math.abs(r) >= STRONG;
        Font font = strong ? canvas.strongLabel() : canvas.label();
        canvas.text(
                Numbers.fixed(r, 2),
                cell.getCenterX(),
                cell.getCenterY() + 0.35 * font.getSize2D(),
                font,
                strong ? palette.ink() : palette.muted(),
                Align.CENTER);
    }

    private void diagonal(Canvas canvas, Rectangle2D cell, Draws draws) {
        Rectangle2D area = PanelGrid.head(canvas, cell, style, draws.axis());
        double least = draws.least();
        double span = draws.most() - least;
        int[] counts = new int[BINS];
        int most = 1;
        for (int i = 0; i < draws.size(); i++) {
            int bin = span > 0.0 ? (int) Math.min(BINS - 1.0, BINS * (draws.at(i) - least) / span) : BINS / 2;
            most = Math.max(most, ++counts[bin]);
        }
        double width = area.getWidth() / BINS;
        for (int bin = 0; bin < BINS; bin++) {
            double height = area.getHeight() * counts[bin] / most;
            canvas.fill(
                    new Rectangle2D.Double(
                            area.getX() + bin * width, area.getMaxY() - height, Math.max(0.5, width - 1.0), height),
                    palette.muted());
        }
        canvas.line(area.getX(), area.getMaxY(), area.getMaxX(), area.getMaxY(), palette.axis(), 1.2);
    }

    private void cloud(Canvas canvas, Rectangle2D cell, Draws across, Draws up) {
        canvas.fill(cell, palette.wideBand());
        double radius = Math.max(1.3, 0.09 * canvas.type().labelPx());
        int points = Math.min(POINTS, across.size());
        double[] xs = shares(across, points);
        double[] ys = shares(up, points);
        for (int i = 0; i < points; i++) {
            double x = cell.getX() + radius + (cell.getWidth() - 2 * radius) * xs[i];
            double y = cell.getMaxY() - radius - (cell.getHeight() - 2 * radius) * ys[i];
            canvas.fill(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius), palette.muted());
        }
    }

    /** Returns evenly spaced draws on a scale from the least to the greatest of all. */
    private static double[] shares(Draws draws, int points) {
        double least = draws.least();
        double span = draws.most() - least;
        double[] shares = new double[points];
        for (int i = 0; i < points; i++) {
            int at = (int) ((2L * i + 1L) * draws.size() / (2L * points));
            shares[i] = span > 0.0 ? (draws.at(at) - least) / span : 0.5;
        }
        return shares;
    }
}
