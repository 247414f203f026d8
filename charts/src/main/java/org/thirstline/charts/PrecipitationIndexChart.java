package org.thirstline.charts;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.thirstline.charts.theme.Palette;
import org.thirstline.io.climate.ClimateSummary;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.StandardizedPrecipitation;

/** Dry and wet spells of the record: the standardized precipitation index month by month, short and long scale. */
public final class PrecipitationIndexChart {

    /** Moderately dry or worse, by McKee and others (1993). */
    private static final double DRY = -1.0;

    private static final double MONTHS_A_YEAR = 12.0;

    private final ClimateView view;
    private final ClimateSummary summary;
    private final ChartStyle style;
    private final Palette palette;
    private final StandardizedPrecipitation shortest;
    private final StandardizedPrecipitation longest;

    private PrecipitationIndexChart(ClimateView view, ChartStyle style) {
        this.view = view;
        this.summary = view.summary();
        this.style = style;
        this.palette = style.theme().palette();
        this.shortest = summary.indices().get(0);
        this.longest = summary.indices().get(summary.indices().size() - 1);
    }

    /**
     * Builds the chart.
     *
     * @param view the climate of a place
     * @param style look, units, source
     */
    public static ChartDocument of(ClimateView view, ChartStyle style) {
        return new PrecipitationIndexChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = view.subtitle("standardized precipitation index, rain of " + shortest.scaleMonths() + " and "
                + longest.scaleMonths() + " months against the same months of all years");
        String note = "0: middling, below \u22121: dry, below \u22122: extremely dry (McKee and others 1993). "
                + shortest.notice().orElse("");
        var words = new ChartDocument.Words(
                "precipitation-index", title(), subtitle, note.strip(), title() + ". " + subtitle + ". " + spells());
        List<KeyEntry> key = List.of(
                KeyEntry.block(palette.dry(), "drier than usual"), KeyEntry.block(palette.wet(), "wetter than usual"));
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private static String name(YearMonth month) {
        return month.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + month.getYear();
    }

    private int driest(StandardizedPrecipitation index) {
        double[] values = index.values();
        return IntStream.range(0, values.length)
                .filter(i -> !Double.isNaN(values[i]))
                .reduce((a, b) -> values[b] < values[a] ? b : a)
                .orElse(-1);
    }

    private String title() {
        int worst = driest(longest);
        int months = longest.scaleMonths();
        if (worst < 0) {
            worst = driest(shortest);
            months = shortest.scaleMonths();
        }
        if (worst < 0) {
            return "Too few years of rain for a precipitation index";
        }
        MonthlyRain rain = summary.rain();
        double value = months == longest.scaleMonths() ? longest.values()[worst] : shortest.values()[worst];
        return "The driest " + months + " months of the record ended in " + name(rain.month(worst)) + ": index "
                + Numbers.fixed(value, 1);
    }

    private String spells() {
        StringBuilder text = new StringBuilder();
        for (StandardizedPrecipitation index : List.of(shortest, longest)) {
            double[] known = java.util.Arrays.stream(index.values())
                    .filter(value -> !Double.isNaN(value))
                    .toArray();
            if (known.length > 0) {
                long dry = java.util.Arrays.stream(known)
                        .filter(value -> value < DRY)
                        .count();
                text.append("At ")
                        .append(index.scaleMonths())
                        .append(" months, ")
                        .append(Numbers.fixed(100.0 * dry / known.length, 0))
                        .append(" % of ")
                        .append(known.length)
                        .append(" months are below \u22121. ");
            }
        }
        return text.toString().strip();
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "month",
                "rain_mm",
                "index_" + shortest.scaleMonths() + "_months",
                "index_" + longest.scaleMonths() + "_months");
        MonthlyRain rain = summary.rain();
        double[] totals = rain.totalsMm();
        for (int i = 0; i < rain.months(); i++) {
            table.row(rain.month(i).toString(), totals[i], shortest.values()[i], longest.values()[i]);
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (driest(shortest) < 0) {
            return;
        }
        double most = 2.2;
        for (StandardizedPrecipitation index : List.of(shortest, longest)) {
            for (double value : index.values()) {
                most = Double.isNaN(value) ? most : Math.max(most, Math.abs(value));
            }
        }
        boolean thumbnail = style.size().isThumbnail();
        Panels panels =
                new Panels(area, 0.8 * canvas.type().smallPx(), thumbnail ? new double[] {1} : new double[] {1, 1.12});
        panel(canvas, panels.row(0), shortest, 1.06 * most, !thumbnail);
        if (!thumbnail) {
            panel(canvas, panels.row(1), longest, 1.06 * most, false);
        }
    }

    private void panel(Canvas canvas, Rectangle2D row, StandardizedPrecipitation index, double most, boolean shared) {
        MonthlyRain rain = summary.rain();
        double first = year(rain.month(0));
        double last = year(rain.month(rain.months() - 1)) + 1.0 / MONTHS_A_YEAR;
        double step = most > 4.0 ? 2.0 : 1.0;
        Frame.Builder builder = new Frame.Builder(canvas, row)
                .y(-most, most, row.getHeight() < 12 * canvas.type().smallPx() ? 2.0 : step)
                .x(first, last, YieldByYearChart.yearStep(canvas, row.getWidth(), (int) Math.ceil(last - first)))
                .titles("", index.scaleMonths() + " months")
                .right(1.5 * canvas.type().smallPx());
        Frame frame = (shared ? builder.noXLabels() : builder).draw();
        Path2D dry = new Path2D.Double();
        Path2D wet = new Path2D.Double();
        double zero = frame.y(0);
        double[] values = index.values();
        for (int i = 0; i < values.length; i++) {
            if (!Double.isNaN(values[i])) {
                double left = frame.x(year(rain.month(i)));
                double width = Math.max(0.4, frame.x(year(rain.month(i)) + 1.0 / MONTHS_A_YEAR) - left);
                double y = frame.y(values[i]);
                Rectangle2D bar = new Rectangle2D.Double(left, Math.min(zero, y), width, Math.abs(zero - y));
                (values[i] < 0 ? dry : wet).append(bar, false);
            }
        }
        canvas.fill(dry, palette.dry());
        canvas.fill(wet, palette.wet());
        canvas.line(frame.area().getX(), zero, frame.area().getMaxX(), zero, palette.axis(), 1.2);
    }

    private static double year(YearMonth month) {
        return month.getYear() + (month.getMonthValue() - 1) / MONTHS_A_YEAR;
    }
}
