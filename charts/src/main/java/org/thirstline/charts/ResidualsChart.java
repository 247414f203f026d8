package org.thirstline.charts;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.Palette;

/** Observed less simulated, by year, stand age and season rain: what a fit leaves over should lean on none of them. */
public final class ResidualsChart {

    private final FitView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final List<Panel> panels;

    /** One panel: what is along its axis, in the reader's units, whether in whole numbers, and whether residuals lean on it. */
    private record Panel(
            String name,
            String axis,
            boolean whole,
            List<FitPoint> points,
            ToDoubleFunction<FitPoint> value,
            Leaning leaning) {}

    private ResidualsChart(FitView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        panels = new ArrayList<>();
        add("year", "growth year", true, FitPoint::year);
        add("stand age", "stand age", true, point -> point.standAge() > 0 ? point.standAge() : Double.NaN);
        add(
                "season rain",
                "season rain (" + units.waterUnit() + ")",
                false,
                point -> units.water(point.seasonRainMm()));
    }

    private void add(String name, String axis, boolean whole, ToDoubleFunction<FitPoint> value) {
        List<FitPoint> known = view.points().stream()
                .filter(point -> Double.isFinite(value.applyAsDouble(point)))
                .toList();
        if (!known.isEmpty()) {
            double[] xs = known.stream().mapToDouble(value).toArray();
            double[] ys = known.stream().mapToDouble(this::shown).toArray();
            panels.add(new Panel(name, axis, whole, known, value, Leaning.of(xs, ys)));
        }
    }

    /**
     * Builds the chart.
     *
     * @param view observations beside simulations
     * @param style look, units, source
     */
    public static ChartDocument of(FitView view, ChartStyle style) {
        return new ResidualsChart(view, style).document();
    }

    private double shown(FitPoint point) {
        return view.quantity().shown(point.residual(), units);
    }

    private ChartDocument document() {
        String subtitle = view.points().isEmpty()
                ? "Nothing to compare"
                : "Observed less simulated " + view.quantity().words() + ", "
                        + Subtitles.count(view.points().size(), "observation", "observations") + ", " + view.what();
        String description = title() + ". " + subtitle + ". "
                + view.points().stream()
                        .map(point -> point.site() + " " + point.year() + ": "
                                + view.quantity().text(point.residual(), units))
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("residuals", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String title() {
        if (panels.isEmpty()) {
            return "No observations beside a simulation";
        }
        Panel worst = panels.stream()
                .max(Comparator.comparingDouble(
                        panel -> Math.abs(panel.leaning().errors())))
                .orElseThrow();
        if (worst.leaning().isTold()) {
            double change = worst.leaning().slope()
                    * (worst.leaning().high() - worst.leaning().low());
            String unit = view.quantity().unit(units);
            String by = Numbers.significant(Math.abs(change), 2) + (unit.isEmpty() ? "" : " " + unit);
            return "What is left over " + (change > 0.0 ? "rises" : "falls") + " with " + worst.name() + ", by " + by
                    + " from end to end: the fit misses something";
        }
        boolean few = panels.stream().allMatch(panel -> panel.leaning().errors() == 0.0);
        List<String> names = panels.stream().map(Panel::name).toList();
        return few
                ? "Too few different years to see whether the misses lean on anything"
                : (names.size() == 1
                        ? "The misses do not lean on " + names.get(0)
                        : "The misses lean on none of " + Subtitles.listed(names));
    }

    private String note() {
        boolean line = panels.stream().anyMatch(panel -> panel.leaning().isTold());
        return (line
                        ? "Line: through the means at each value; drawn where its slope is more than three standard errors"
                                + " from level. "
                        : "No straight line through the means at each value is more than three standard errors from level. ")
                + "Above zero more was observed than simulated.";
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        if (view.showsSeasons()) {
            entries.addAll(Subtitles.marks(palette, new TreeSet<>(view.shownClasses())));
            return entries;
        }
        List<String> sites = view.sites();
        for (int i = 0; i < Math.min(sites.size(), Symbols.COUNT); i++) {
            boolean shared = i == Symbols.COUNT - 1 && sites.size() > Symbols.COUNT;
            entries.add(KeyEntry.symbol(palette.ink(), i, shared ? "other sites" : sites.get(i)));
        }
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table =
                new DataTable.Builder("site", "growth_year", "stand_age", "season_rain_mm", "residual", "unit");
        view.points()
                .forEach(point -> table.row(
                        point.site(),
                        point.year(),
                        point.standAge() > 0 ? point.standAge() : null,
                        point.seasonRainMm(),
                        point.residual(),
                        view.quantity().unit()));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (panels.isEmpty()) {
            return;
        }
        double largest = view.points().stream()
                .mapToDouble(point -> Math.abs(shown(point)))
                .max()
                .orElse(1.0);
        double high = Math.max(1.1 * largest, 1e-3);
        double gap = 1.6 * canvas.type().labelPx();
        boolean thumbnail = style.size().isThumbnail();
        double shape = style.size() == ChartSize.HALF_SLIDE ? 4.0 : 0.9;
        PanelGrid grid = new PanelGrid(area, thumbnail ? 1 : panels.size(), shape, gap);
        for (int i = 0; i < (thumbnail ? 1 : panels.size()); i++) {
            Rectangle2D cell = grid.cell(i);
            boolean beside = i > 0 && cell.getY() == area.getY();
            double top = beside
                    ? 1.75 * canvas.type().labelPx() - 0.45 * canvas.type().smallPx()
                    : 0.0;
            Rectangle2D below =
                    new Rectangle2D.Double(cell.getX(), cell.getY() + top, cell.getWidth(), cell.getHeight() - top);
            panel(canvas, below, thumbnail ? worst() : panels.get(i), high, i == 0);
        }
    }

    private Panel worst() {
        return panels.stream()
                .max(Comparator.comparingDouble(
                        panel -> Math.abs(panel.leaning().errors())))
                .orElseThrow();
    }

    private void panel(Canvas canvas, Rectangle2D area, Panel panel, double high, boolean titled) {
        double[] range = range(panel);
        double xStep = PanelGrid.step(canvas, range[0], range[1], 0.8 * area.getWidth());
        int parts = (int)
                Math.max(2, Math.min(6, area.getHeight() / (2.8 * canvas.type().smallPx())));
        Frame frame = new Frame.Builder(canvas, area)
                .x(range[0], range[1], panel.whole() ? Math.max(1.0, xStep) : xStep)
                .y(-high, high, Numbers.niceStep(2 * high, parts))
                .right(0.6 * PanelGrid.labelWidth(canvas, range[0], range[1], xStep))
                .titles(style.size().isThumbnail() ? "" : panel.axis(), titled ? yTitle() : "")
                .draw();
        canvas.line(frame.area().getX(), frame.y(0), frame.area().getMaxX(), frame.y(0), palette.axis(), 1.4);
        double radius = (view.points().size() > 80 ? 0.22 : 0.3) * canvas.type().labelPx();
        for (FitPoint point : panel.points()) {
            view.mark(canvas, frame.x(panel.value().applyAsDouble(point)), frame.y(shown(point)), radius, point);
        }
        if (panel.leaning().isTold()) {
            line(frame, panel.leaning());
        }
    }

    /** Years and ages are whole numbers, so that one alone stands between its neighbours. */
    private static double[] range(Panel panel) {
        double low = panel.leaning().low();
        double high = panel.leaning().high();
        return panel.whole() && low == high ? new double[] {low - 1.5, high + 1.5} : PanelGrid.padded(low, high, 0.06);
    }

    private void line(Frame frame, Leaning leaning) {
        frame.canvas()
                .line(
                        frame.x(leaning.low()),
                        frame.y(leaning.at(leaning.low())),
                        frame.x(leaning.high()),
                        frame.y(leaning.at(leaning.high())),
                        palette.ink(),
                        frame.canvas().type().strokePx());
    }

    private String yTitle() {
        String unit = view.quantity().unit(units);
        return "observed less simulated" + (unit.isEmpty() ? "" : " (" + unit + ")");
    }
}
