package org.thirstline.charts;

import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.Palette;
import org.thirstline.io.climate.ClimateSummary;
import org.thirstline.io.climate.YearSeason;

/** Length of the season by year: days between the frosts, and days of growth by temperature. */
public final class GrowingSeasonChart {

    private static final double BAR_SHARE = 0.72;

    private final ClimateView view;
    private final ClimateSummary summary;
    private final List<YearSeason> free;
    private final ChartStyle style;
    private final Palette palette;

    private GrowingSeasonChart(ClimateView view, ChartStyle style) {
        this.view = view;
        this.summary = view.summary();
        this.style = style;
        this.palette = style.theme().palette();
        this.free = summary.years().stream()
                .filter(year -> !Double.isNaN(year.frostFreeDays()))
                .toList();
    }

    /**
     * Builds the chart.
     *
     * @param view the climate of a place
     * @param style look, units, source
     */
    public static ChartDocument of(ClimateView view, ChartStyle style) {
        return new GrowingSeasonChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = view.subtitle("days between last and first frost, and days of growth by temperature, in each "
                + (summary.southern() ? "year from July to June" : "calendar year"));
        String limit = style.units().temperatureText(5.0);
        String note = "Growth by temperature: from the first six days running with a mean above " + limit
                + " to the first six below it after midsummer.";
        if (free.size() < summary.years().size()) {
            note = "Without a bar: no frost before or after summer. " + note;
        }
        String description = title() + ". " + subtitle + ". "
                + free.stream()
                        .map(year -> view.year(year.year()) + ": " + days(year) + " days without frost, "
                                + year.growingDays() + " of growth")
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("growing-season", title(), subtitle, note, description);
        List<KeyEntry> key = List.of(
                KeyEntry.block(palette.crop(), "days between last and first frost"),
                KeyEntry.ring(palette.ink(), "days of growth by temperature"));
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private static String days(YearSeason year) {
        return Numbers.fixed(year.frostFreeDays(), 0);
    }

    private String title() {
        if (summary.years().isEmpty()) {
            return "No whole year to tell the length of the season from";
        }
        if (free.isEmpty()) {
            return "Growth by temperature lasted " + Numbers.fixed(summary.meanGrowingDays(), 0)
                    + " days on average; no year had frost on both sides of summer";
        }
        Comparator<YearSeason> byLength = Comparator.comparingDouble(YearSeason::frostFreeDays);
        YearSeason shortest = free.stream().min(byLength).orElseThrow();
        YearSeason longest = free.stream().max(byLength).orElseThrow();
        String mean = Numbers.fixed(summary.meanFrostFreeDays(), 0) + " days";
        if (free.size() == 1) {
            return mean + " without frost in " + view.year(shortest.year());
        }
        return mean + " without frost in an average year, " + days(shortest) + " in " + view.year(shortest.year())
                + " and " + days(longest) + " in " + view.year(longest.year());
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("year", "frost_free_days", "growing_days");
        summary.years().forEach(year -> table.row(year.year(), year.frostFreeDays(), year.growingDays()));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (summary.years().isEmpty()) {
            return;
        }
        int first = summary.years().get(0).year();
        int last = summary.years().get(summary.years().size() - 1).year();
        double most = summary.years().stream()
                .mapToDouble(year -> Math.max(year.growingDays(), orZero(year.frostFreeDays())))
                .max()
                .orElse(1.0);
        double meanWidth = style.size().isThumbnail()
                ? 0
                : Canvas.width("mean", canvas.small()) + canvas.type().labelPx();
        Frame frame = new Frame.Builder(canvas, area)
                .y(0, 1.06 * Math.max(most, 10.0), Numbers.niceStep(Math.max(most, 10.0), 5))
                .x(
                        first - 0.6,
                        last + 0.6,
                        YieldByYearChart.yearStep(canvas, area.getWidth() - meanWidth, last - first + 1))
                .titles("", "days")
                .right(meanWidth)
                .draw();
        double width = Math.min(BAR_SHARE * (frame.x(1) - frame.x(0)), 90.0);
        double radius =
                Math.max(1.2, Math.min(0.35 * width, 0.35 * canvas.type().smallPx()));
        for (YearSeason year : summary.years()) {
            double x = frame.x(year.year());
            double days = orZero(year.frostFreeDays());
            double top = frame.y(days);
            if (days > 0.0) {
                canvas.fill(new Rectangle2D.Double(x - width / 2, top, width, frame.y(0) - top), palette.crop());
            }
            double y = frame.y(year.growingDays());
            var ring = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
            canvas.fill(ring, palette.background());
            canvas.outline(ring, palette.ink(), 1.3);
        }
        mean(frame);
    }

    private static double orZero(double days) {
        return Double.isNaN(days) ? 0.0 : days;
    }

    private void mean(Frame frame) {
        if (free.size() < 2 || style.size().isThumbnail()) {
            return;
        }
        Canvas canvas = frame.canvas();
        double y = frame.y(summary.meanFrostFreeDays());
        double right = frame.area().getMaxX();
        canvas.dashed(new Line2D.Double(frame.area().getX(), y, right, y), palette.ink(), 1.3);
        double size = canvas.type().smallPx();
        double x = right + 0.35 * size;
        canvas.text("mean", x, y - 0.15 * size, canvas.small(), palette.muted(), Align.LEFT);
        String number = Numbers.fixed(summary.meanFrostFreeDays(), 0);
        canvas.text(number, x, y + 1.0 * size, canvas.strongSmall(), palette.ink(), Align.LEFT);
    }
}
