package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.Palette;

/** What was measured against what is simulated, with both errors and the line on which they agree. */
public final class ObservedSimulatedChart {

    /** Below this share of the miss a mean difference is not worth a word (our choice). */
    private static final double NO_BIAS = 0.1;

    /** Share of the height that a panel of years needs under the names of the sites. */
    private static final double LEAST_SHARE = 0.45;

    private static final double CAP_PX = 3.0;

    private final FitView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private ObservedSimulatedChart(FitView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view observations beside simulations
     * @param style look, units, source
     */
    public static ChartDocument of(FitView view, ChartStyle style) {
        return new ObservedSimulatedChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = view.points().isEmpty()
                ? "Nothing to compare"
                : Subtitles.count(view.points().size(), "observation", "observations") + " of "
                        + view.quantity().words() + " at "
                        + Subtitles.count(view.sites().size(), "site", "sites") + ", " + view.what();
        String description = title() + ". " + subtitle + ". "
                + view.sites().stream().map(this::siteWords).collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("observed-simulated", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String title() {
        List<FitPoint> points = view.points();
        if (points.isEmpty()) {
            return "No observations beside a simulation";
        }
        double miss = FitView.miss(points);
        double high = FitView.tooHigh(points);
        String typical =
                "Simulations miss the observations by " + view.quantity().text(miss, units);
        if (Math.abs(high) <= NO_BIAS * miss) {
            return typical + " and lie neither too high nor too low";
        }
        return typical + " and lie " + view.quantity().number(Math.abs(high), units)
                + (high > 0.0 ? " too high" : " too low") + " on average";
    }

    private String note() {
        boolean errors =
                view.points().stream().anyMatch(point -> hasError(point) || Double.isFinite(point.simulatedLow()));
        return "Miss: root mean square of observed less simulated."
                + (errors
                        ? " Upright bars: standard error of the observation; level bars: interval of the simulation."
                        : "");
    }

    private static boolean hasError(FitPoint point) {
        return point.observedError() > 0.0;
    }

    private String siteWords(String site) {
        List<FitPoint> here = view.points().stream()
                .filter(point -> point.site().equals(site))
                .toList();
        double high = FitView.tooHigh(here);
        return site + ": " + here.size() + (here.size() == 1 ? " point" : " points") + ", off by "
                + view.quantity().number(FitView.miss(here), units) + ", "
                + view.quantity().number(Math.abs(high), units) + (high >= 0.0 ? " too high" : " too low");
    }

    /** Beside the square there is room for the sites' names, unless the chart is upright. */
    private boolean hasSide() {
        return style.size() != ChartSize.HALF_SLIDE && !style.size().isThumbnail();
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        if (view.showsSeasons()) {
            entries.addAll(Subtitles.marks(palette, new TreeSet<>(view.shownClasses())));
        } else if (!hasSide()) {
            List<String> sites = view.sites();
            for (int i = 0; i < Math.min(sites.size(), Symbols.COUNT); i++) {
                boolean shared = i == Symbols.COUNT - 1 && sites.size() > Symbols.COUNT;
                entries.add(KeyEntry.symbol(palette.ink(), i, shared ? "other sites" : sites.get(i)));
            }
        }
        entries.add(KeyEntry.dash(palette.muted(), "observed as simulated (1:1)"));
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "site",
                "growth_year",
                "stand_age",
                "season_rain_mm",
                "observed",
                "observed_error",
                "simulated",
                "simulated_low",
                "simulated_high",
                "unit");
        view.points()
                .forEach(point -> table.row(
                        point.site(),
                        point.year(),
                        point.standAge() > 0 ? point.standAge() : null,
                        point.seasonRainMm(),
                        point.observed(),
                        point.observedError(),
                        point.simulated(),
                        point.simulatedLow(),
                        point.simulatedHigh(),
                        view.quantity().unit()));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (view.points().isEmpty()) {
            return;
        }
        double around = 4.2 * canvas.type().labelPx();
        double side = Math.min(area.getWidth(), area.getHeight() + (hasSide() ? 0.0 : around));
        double width = style.size().isThumbnail() ? area.getWidth() : side;
        Rectangle2D square =
                new Rectangle2D.Double(area.getX(), area.getY(), width, Math.min(area.getHeight(), side + around));
        picture(canvas, square);
        if (hasSide()) {
            double left = square.getMaxX() + 2.0 * canvas.type().labelPx();
            side(canvas, new Rectangle2D.Double(left, area.getY(), area.getMaxX() - left, area.getHeight()));
        }
    }

    /** Sites, where there are several, and under them what is left over year by year, if there is room. */
    private void side(Canvas canvas, Rectangle2D area) {
        MissesPanel misses = new MissesPanel(view, style);
        double listed = view.showsSeasons() ? 0.0 : (view.sites().size() + 0.6) * siteRow(canvas);
        double left = area.getHeight() - listed;
        boolean room = misses.hasCourse() && left >= LEAST_SHARE * area.getHeight();
        if (!view.showsSeasons()) {
            double height = room ? listed : area.getHeight();
            sites(canvas, new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), height));
        }
        if (room) {
            misses.draw(canvas, new Rectangle2D.Double(area.getX(), area.getY() + listed, area.getWidth(), left));
        }
    }

    private static double siteRow(Canvas canvas) {
        return 3.6 * canvas.small().getSize2D();
    }

    private double[] range() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (FitPoint point : view.points()) {
            double error = hasError(point) ? point.observedError() : 0.0;
            low = Math.min(low, Math.min(point.observed() - error, least(point)));
            high = Math.max(high, Math.max(point.observed() + error, most(point)));
        }
        double[] range = PanelGrid.padded(
                view.quantity().shown(low, units), view.quantity().shown(high, units), 0.06);
        return low >= 0.0 ? new double[] {Math.max(0.0, range[0]), range[1]} : range;
    }

    private static double least(FitPoint point) {
        return Double.isFinite(point.simulatedLow()) ? point.simulatedLow() : point.simulated();
    }

    private static double most(FitPoint point) {
        return Double.isFinite(point.simulatedHigh()) ? point.simulatedHigh() : point.simulated();
    }

    private void picture(Canvas canvas, Rectangle2D area) {
        double[] range = range();
        double step = PanelGrid.step(canvas, range[0], range[1], 0.8 * area.getWidth());
        String unit = view.quantity().unit(units);
        Frame frame = new Frame.Builder(canvas, area)
                .x(range[0], range[1], step)
                .y(range[0], range[1], step)
                .right(0.7 * PanelGrid.labelWidth(canvas, range[0], range[1], step))
                .titles(
                        style.size().isThumbnail() ? "" : "simulated" + (unit.isEmpty() ? "" : " (" + unit + ")"),
                        "observed" + (unit.isEmpty() ? "" : " (" + unit + ")"))
                .draw();
        canvas.dashed(
                new Line2D.Double(frame.x(range[0]), frame.y(range[0]), frame.x(range[1]), frame.y(range[1])),
                palette.muted(),
                1.6);
        LabelPlacer placer = new LabelPlacer(canvas, frame.area());
        view.points().forEach(point -> bars(frame, point, placer));
        double radius =
                (view.points().size() > 80 ? 0.26 : 0.36) * canvas.type().labelPx();
        placer.blockLine(frame.x(range[0]), frame.y(range[0]), frame.x(range[1]), frame.y(range[1]));
        for (FitPoint point : view.points()) {
            view.mark(canvas, x(frame, point), y(frame, point), radius, point);
            placer.block(x(frame, point), y(frame, point), radius);
        }
        years(frame, placer, radius);
    }

    private double x(Frame frame, FitPoint point) {
        return frame.x(view.quantity().shown(point.simulated(), units));
    }

    private double y(Frame frame, FitPoint point) {
        return frame.y(view.quantity().shown(point.observed(), units));
    }

    /** Names the years of the worst misses, as far as there is room. */
    private void years(Frame frame, LabelPlacer placer, double radius) {
        if (style.size().isThumbnail()) {
            return;
        }
        Comparator<FitPoint> byMiss = Comparator.comparingDouble(point -> -Math.abs(point.residual()));
        view.points().stream()
                .sorted(byMiss)
                .limit(Math.max(3, Math.min(12, view.points().size() / 3)))
                .forEach(point -> placer.place(
                        Integer.toString(point.year()),
                        x(frame, point),
                        y(frame, point),
                        radius + 2.0,
                        frame.canvas().small(),
                        palette.muted()));
    }

    private void bars(Frame frame, FitPoint point, LabelPlacer placer) {
        Color color = palette.axis();
        Canvas canvas = frame.canvas();
        double x = x(frame, point);
        double y = y(frame, point);
        if (hasError(point)) {
            double low = frame.y(view.quantity().shown(point.observed() - point.observedError(), units));
            double high = frame.y(view.quantity().shown(point.observed() + point.observedError(), units));
            canvas.line(x, low, x, high, color, 1.4);
            placer.block(new Rectangle2D.Double(x - CAP_PX, high, 2 * CAP_PX, low - high));
            canvas.line(x - CAP_PX, low, x + CAP_PX, low, color, 1.4);
            canvas.line(x - CAP_PX, high, x + CAP_PX, high, color, 1.4);
        }
        if (Double.isFinite(point.simulatedLow()) && Double.isFinite(point.simulatedHigh())) {
            double low = frame.x(view.quantity().shown(point.simulatedLow(), units));
            double high = frame.x(view.quantity().shown(point.simulatedHigh(), units));
            canvas.line(low, y, high, y, color, 1.4);
            placer.block(new Rectangle2D.Double(low, y - 1.0, high - low, 2.0));
        }
    }

    /** Lists the sites beside the square, each with its mark and how far it is off. */
    private void sites(Canvas canvas, Rectangle2D area) {
        Font strong = canvas.strongLabel();
        Font small = canvas.small();
        double row = siteRow(canvas);
        List<String> sites = view.sites();
        int room = (int) Math.max(1, Math.floor(area.getHeight() / row));
        int shown = sites.size() <= room ? sites.size() : room - 1;
        double top = area.getY() + canvas.type().labelPx();
        for (int i = 0; i < shown; i++) {
            double baseline = top + i * row + strong.getSize2D();
            double radius = 0.36 * canvas.type().labelPx();
            Symbols.draw(canvas, area.getX() + radius, baseline - 0.34 * strong.getSize2D(), radius, i);
            double left = area.getX() + 3.2 * radius;
            double width = area.getMaxX() - left;
            String site = sites.get(i);
            canvas.text(Canvas.fitted(site, strong, width), left, baseline, strong, palette.ink(), Align.LEFT);
            String rest = Canvas.fitted(siteWords(site).substring(site.length() + 2), small, width);
            canvas.text(rest, left, baseline + 1.3 * small.getSize2D(), small, palette.muted(), Align.LEFT);
        }
        if (shown < sites.size()) {
            double baseline = top + shown * row + strong.getSize2D();
            String more = Subtitles.count(sites.size() - shown, "more site", "more sites");
            canvas.text(more, area.getX(), baseline, small, palette.muted(), Align.LEFT);
        }
    }
}
