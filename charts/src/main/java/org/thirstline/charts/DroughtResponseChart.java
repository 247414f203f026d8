package org.thirstline.charts;

import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.response.BrokenLine;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.response.StraightLine;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.climate.SeasonClass;

/** Yield lost to drought against rainfall deficit, a point for every year, with the line that the years carry. */
public final class DroughtResponseChart {

    private static final int BAND_STEPS = 60;
    private static final int STRONG_LABELS = 3;
    private static final double HEADROOM = 1.12;

    private final ResponseView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final ResponseText text;
    private final List<ResponseView.Point> byLoss;

    private DroughtResponseChart(ResponseView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.text = new ResponseText(view, units);
        this.byLoss = view.points().stream()
                .sorted(Comparator.comparingDouble(ResponseView.Point::penaltyMgHa)
                        .reversed()
                        .thenComparingInt(ResponseView.Point::year))
                .toList();
    }

    /**
     * Builds the chart.
     *
     * @param view the response of a zone
     * @param style look, units, source
     */
    public static ChartDocument of(ResponseView view, ChartStyle style) {
        return new DroughtResponseChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = text.subtitle(view.zone(), view.deficitMeaning());
        String description = text.title() + ". " + subtitle + ". " + text.note() + " "
                + view.points().stream().map(this::spoken).collect(Collectors.joining("; "));
        var words =
                new ChartDocument.Words("drought-response", text.title(), subtitle, text.note(), description.strip());
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String spoken(ResponseView.Point point) {
        return point.year() + ": deficit " + units.waterText(point.deficitMm()) + ", loss "
                + units.yieldText(point.penaltyMgHa());
    }

    private List<KeyEntry> key() {
        Set<SeasonClass> shown = EnumSet.noneOf(SeasonClass.class);
        view.points().forEach(point -> {
            if (point.seasonClass() != null) {
                shown.add(point.seasonClass());
            }
        });
        List<KeyEntry> entries = new ArrayList<>(Subtitles.marks(palette, shown));
        if (text.isBroken()) {
            entries.add(KeyEntry.line(palette.ink(), "broken line"));
            entries.add(KeyEntry.dash(palette.muted(), "straight line"));
        } else if (text.hasLine()) {
            entries.add(KeyEntry.line(palette.ink(), "least-squares line"));
            entries.add(KeyEntry.block(palette.band(), "95 % band of the line"));
            entries.add(KeyEntry.ghost(palette.axis(), palette.wideBand(), "95 % of single years"));
        }
        if (!view.bands().isEmpty()) {
            entries.add(Whiskers.key(palette));
        }
        return entries;
    }

    private DataTable table() {
        List<String> columns =
                new ArrayList<>(List.of("growth_year", "season_class", "rain_deficit_mm", "drought_penalty_mg_ha"));
        if (!view.bands().isEmpty()) {
            columns.addAll(Whiskers.columns("drought_penalty", "mg_ha"));
        }
        DataTable.Builder table = new DataTable.Builder(columns.toArray(String[]::new));
        for (ResponseView.Point point : view.points()) {
            SeasonClass seasonClass = point.seasonClass();
            List<@Nullable Object> cells = new ArrayList<>(Arrays.asList(
                    point.year(),
                    seasonClass == null ? null : seasonClass.word(),
                    point.deficitMm(),
                    point.penaltyMgHa()));
            if (!view.bands().isEmpty()) {
                cells.addAll(Whiskers.cells(point.band()));
            }
            table.row(cells.toArray());
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double[] deficits = view.points().stream()
                .mapToDouble(point -> units.water(point.deficitMm()))
                .toArray();
        double[] losses = Stream.concat(
                        view.points().stream().map(ResponseView.Point::penaltyMgHa),
                        shownBands().flatMap(band -> Stream.of(band.low(), band.high())))
                .mapToDouble(units::dryMatter)
                .toArray();
        double[] x = range(deficits, units.water(50.0));
        double[] y = range(losses, units.dryMatter(1.0));
        double low = y[0] < -1e-3 * (y[1] - y[0]) ? y[0] * HEADROOM : 0.0;
        double pad = (view.bands().isEmpty() ? 0.06 : 0.10) * (x[1] - x[0]);
        double high = low + (y[1] - low) * HEADROOM;
        Frame frame = new Frame.Builder(canvas, area)
                .x(x[0] - pad, x[1] + pad, xStep(canvas, area, x[1] - x[0]))
                .y(low, high, Numbers.niceStep(high - low, 5))
                .titles(xTitle(), units.yieldUnit() + " lost to drought")
                .under(this::bands)
                .draw();
        equation(canvas, frame);
        LabelPlacer placer = new LabelPlacer(canvas, frame.area());
        normal(frame, placer);
        lines(frame, placer);
        points(frame, placer);
    }

    private Stream<Band> shownBands() {
        return style.size().isThumbnail()
                ? Stream.empty()
                : view.bands().stream().filter(Band::isKnown);
    }

    private static double xStep(Canvas canvas, Rectangle2D area, double span) {
        double label = 2.2 * Canvas.width("\u2212200", canvas.small());
        return Numbers.niceStep(span, (int) Math.max(2, Math.min(10, area.getWidth() / label)));
    }

    /** Returns lowest and highest value with zero inside, at least so far apart. */
    private static double[] range(double[] values, double atLeast) {
        double low = 0.0;
        double high = 0.0;
        for (double value : values) {
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        return new double[] {low, Math.max(high, low + atLeast)};
    }

    private String xTitle() {
        if (!view.isAgainstNormal()) {
            return units.waterUnit() + " of " + view.noun();
        }
        return style.size().isThumbnail()
                ? units.waterUnit() + " missing rain"
                : "rainfall deficit (" + units.waterUnit() + " below normal; negative: above)";
    }

    private void equation(Canvas canvas, Frame frame) {
        String equation = text.equation();
        Font font = canvas.small();
        double room = frame.area().getWidth() - Canvas.width(units.yieldUnit() + " lost to drought  ", font);
        if (!equation.isEmpty() && !style.size().isThumbnail() && Canvas.width(equation, font) < room) {
            double baseline = frame.area().getY() - 0.75 * canvas.type().labelPx();
            canvas.text(equation, frame.area().getMaxX(), baseline, font, palette.ink(), Align.RIGHT);
        }
    }

    private double[] sampled() {
        double low = view.points().stream()
                .mapToDouble(ResponseView.Point::deficitMm)
                .min()
                .orElse(0.0);
        double high = view.points().stream()
                .mapToDouble(ResponseView.Point::deficitMm)
                .max()
                .orElse(0.0);
        double[] xs = new double[BAND_STEPS + 1];
        for (int i = 0; i <= BAND_STEPS; i++) {
            xs[i] = low + (high - low) * i / BAND_STEPS;
        }
        return xs;
    }

    private void bands(Frame frame) {
        if (text.isBroken() || view.response().line().isEmpty()) {
            return;
        }
        StraightLine line = view.response().line().orElseThrow();
        double[] deficits = sampled();
        double[] shown = new double[deficits.length];
        double[][] edges = new double[4][deficits.length];
        for (int i = 0; i < deficits.length; i++) {
            Interval wide = line.predictionBand(deficits[i]);
            Interval narrow = line.confidenceBand(deficits[i]);
            shown[i] = units.water(deficits[i]);
            edges[0][i] = units.dryMatter(wide.lower());
            edges[1][i] = units.dryMatter(wide.upper());
            edges[2][i] = units.dryMatter(narrow.lower());
            edges[3][i] = units.dryMatter(narrow.upper());
        }
        Canvas canvas = frame.canvas();
        Shape before = canvas.graphics().getClip();
        canvas.graphics().clip(frame.area());
        canvas.fill(frame.between(shown, edges[0], edges[1]), palette.wideBand());
        canvas.fill(frame.between(shown, edges[2], edges[3]), palette.band());
        canvas.graphics().setClip(before);
    }

    private void normal(Frame frame, LabelPlacer placer) {
        Canvas canvas = frame.canvas();
        double ground = frame.y(0);
        canvas.line(frame.area().getX(), ground, frame.area().getMaxX(), ground, palette.axis(), 1.2);
        double x = frame.x(0);
        if (!view.isAgainstNormal()
                || x < frame.area().getX()
                || x > frame.area().getMaxX()) {
            return;
        }
        double top = frame.area().getY();
        canvas.dashed(new Line2D.Double(x, top, x, frame.area().getMaxY()), palette.axis(), 1.0);
        Font font = canvas.small();
        double baseline = top + 0.9 * font.getSize2D();
        for (double[] side : new double[][] {{0.5, 0.0}, {-0.5, 1.0}}) {
            double left = x + side[0] * font.getSize2D() - side[1] * Canvas.width("normal rain", font);
            Rectangle2D box = Canvas.box("normal rain", font, left, baseline);
            boolean free = view.points().stream()
                    .noneMatch(point -> box.intersects(
                            frame.x(units.water(point.deficitMm())) - 8,
                            frame.y(units.dryMatter(point.penaltyMgHa())) - 8,
                            16,
                            16));
            if (free && frame.area().contains(box) && !style.size().isThumbnail()) {
                canvas.text("normal rain", left, baseline, font, palette.muted(), Align.LEFT);
                placer.block(box);
                return;
            }
        }
    }

    private void lines(Frame frame, LabelPlacer placer) {
        Canvas canvas = frame.canvas();
        double[] xs = sampled();
        Shape before = canvas.graphics().getClip();
        canvas.graphics().clip(frame.area());
        if (text.isBroken()) {
            BrokenLine line = view.response().brokenLine().orElseThrow();
            double[] knots = {xs[0], Math.max(xs[0], Math.min(xs[BAND_STEPS], line.threshold())), xs[BAND_STEPS]};
            double[] heights = {line.at(knots[0]), line.at(knots[1]), line.at(knots[2])};
            view.response().line().ifPresent(straight -> {
                double[] ends = {xs[0], xs[BAND_STEPS]};
                double[] atEnds = {straight.at(ends[0]), straight.at(ends[1])};
                canvas.dashed(path(frame, ends, atEnds, placer), palette.muted(), 1.2);
            });
            canvas.outline(
                    path(frame, knots, heights, placer),
                    palette.ink(),
                    canvas.type().strokePx());
        } else {
            view.response().line().ifPresent(straight -> {
                double[] ends = {xs[0], xs[BAND_STEPS]};
                double[] atEnds = {straight.at(ends[0]), straight.at(ends[1])};
                canvas.outline(
                        path(frame, ends, atEnds, placer),
                        palette.ink(),
                        canvas.type().strokePx());
            });
        }
        canvas.graphics().setClip(before);
    }

    private Path2D path(Frame frame, double[] deficits, double[] losses, LabelPlacer placer) {
        Path2D path = new Path2D.Double();
        double lastX = 0;
        double lastY = 0;
        for (int i = 0; i < deficits.length; i++) {
            double x = frame.x(units.water(deficits[i]));
            double y = frame.y(units.dryMatter(losses[i]));
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
                placer.blockLine(lastX, lastY, x, y);
            }
            lastX = x;
            lastY = y;
        }
        return path;
    }

    private void points(Frame frame, LabelPlacer placer) {
        Canvas canvas = frame.canvas();
        double radius = 0.36 * canvas.type().labelPx();
        for (ResponseView.Point point : byLoss) {
            placer.block(x(frame, point), y(frame, point), radius * 1.15);
            whisker(frame, point, placer);
        }
        for (int i = byLoss.size() - 1; i >= 0; i--) {
            ResponseView.Point point = byLoss.get(i);
            canvas.marker(x(frame, point), y(frame, point), radius, point.seasonClass());
            canvas.tip(x(frame, point), y(frame, point), radius, spoken(point));
        }
        for (int i = 0; i < byLoss.size(); i++) {
            boolean strong = i < STRONG_LABELS;
            if (!strong && style.size().isThumbnail()) {
                return;
            }
            ResponseView.Point point = byLoss.get(i);
            placer.place(
                    String.valueOf(point.year()),
                    x(frame, point),
                    y(frame, point),
                    radius * 1.15 + 3.0,
                    strong ? canvas.strongSmall() : canvas.small(),
                    strong ? palette.ink() : palette.muted());
        }
    }

    private void whisker(Frame frame, ResponseView.Point point, LabelPlacer placer) {
        Band band = point.band();
        if (band != null && band.isKnown() && !style.size().isThumbnail()) {
            double x = x(frame, point);
            Whiskers.draw(frame, x, band, units);
            placer.blockLine(x, frame.y(units.dryMatter(band.low())), x, frame.y(units.dryMatter(band.high())));
        }
    }

    private double x(Frame frame, ResponseView.Point point) {
        return frame.x(units.water(point.deficitMm()));
    }

    private double y(Frame frame, ResponseView.Point point) {
        return frame.y(units.dryMatter(point.penaltyMgHa()));
    }
}
