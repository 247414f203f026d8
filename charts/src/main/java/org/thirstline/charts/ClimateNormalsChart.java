package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.thirstline.charts.theme.Palette;
import org.thirstline.io.climate.ClimateNormal;
import org.thirstline.io.climate.ClimateVariable;

/** Monthly normals: rain against reference evapotranspiration, and the range of temperature. */
public final class ClimateNormalsChart {

    private static final int MONTHS = 12;
    private static final double BAR_SHARE = 0.62;

    private final ClimateView view;
    private final List<ClimateNormal> months;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final boolean rainKnown;

    private ClimateNormalsChart(ClimateView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        int first = view.summary().southern() ? 6 : 0;
        this.months = IntStream.range(0, MONTHS)
                .mapToObj(i -> view.summary().months().get((i + first) % MONTHS))
                .toList();
        this.rainKnown = months.stream().anyMatch(month -> month.years(ClimateVariable.RAIN) > 0);
    }

    /**
     * Builds the chart.
     *
     * @param view the climate of a place
     * @param style look, units, source
     */
    public static ChartDocument of(ClimateView view, ChartStyle style) {
        return new ClimateNormalsChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = view.subtitle("monthly normals of the years "
                + view.summary().firstYear() + " to " + view.summary().lastYear());
        String description = title() + ". " + subtitle + ". "
                + months.stream()
                        .filter(month -> month.years(ClimateVariable.TMAX) > 0)
                        .map(this::spoken)
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("climate-normals", title(), subtitle, note(), description);
        List<KeyEntry> key = new ArrayList<>();
        if (rainKnown) {
            key.add(KeyEntry.block(palette.wet(), "rain"));
        }
        key.add(KeyEntry.line(palette.ink(), "reference evapotranspiration"));
        key.add(KeyEntry.block(palette.band(), "mean minimum to mean maximum temperature"));
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private static String name(ClimateNormal month, TextStyle style) {
        return Month.of(Integer.parseInt(month.name())).getDisplayName(style, Locale.ENGLISH);
    }

    private String spoken(ClimateNormal month) {
        String rain = month.years(ClimateVariable.RAIN) > 0
                ? "rain " + units.waterText(month.value(ClimateVariable.RAIN)) + ", "
                : "";
        return name(month, TextStyle.SHORT) + ": " + rain + "reference evapotranspiration "
                + units.waterText(month.value(ClimateVariable.ET0)) + ", "
                + units.temperatureText(month.value(ClimateVariable.TMIN)) + " to "
                + units.temperatureText(month.value(ClimateVariable.TMAX));
    }

    private String title() {
        List<ClimateNormal> known =
                months.stream().filter(month -> !Double.isNaN(shortMm(month))).toList();
        if (known.isEmpty()) {
            return warmest();
        }
        List<ClimateNormal> dry =
                known.stream().filter(month -> shortMm(month) > 0.0).toList();
        if (dry.isEmpty()) {
            return "Rain covers the evaporative demand in every month" + (known.size() < MONTHS ? " known" : "");
        }
        double total = dry.stream().mapToDouble(ClimateNormalsChart::shortMm).sum();
        if (dry.size() == MONTHS) {
            return "Rain falls short of the evaporative demand in every month, by " + units.waterText(total)
                    + " a year";
        }
        String when = dry.size() == 1
                ? "In " + name(dry.get(0), TextStyle.FULL) + " rain falls"
                : isRun(dry)
                        ? "From " + name(dry.get(0), TextStyle.FULL) + " to "
                                + name(dry.get(dry.size() - 1), TextStyle.FULL) + " rain falls"
                        : "In " + dry.size() + " months of the year rain falls";
        return when + " " + units.waterText(total) + " short of the evaporative demand";
    }

    private boolean isRun(List<ClimateNormal> dry) {
        return months.indexOf(dry.get(dry.size() - 1)) - months.indexOf(dry.get(0)) == dry.size() - 1;
    }

    private static double shortMm(ClimateNormal month) {
        return month.value(ClimateVariable.ET0) - month.value(ClimateVariable.RAIN);
    }

    private String warmest() {
        return months.stream()
                .filter(month -> month.years(ClimateVariable.TMAX) > 0)
                .max(Comparator.comparingDouble(month -> month.value(ClimateVariable.TMAX)))
                .map(month -> name(month, TextStyle.FULL) + " is the warmest month: "
                        + units.temperatureText(month.value(ClimateVariable.TMIN)) + " to "
                        + units.temperatureText(month.value(ClimateVariable.TMAX)))
                .orElse("No calendar month of the record is known well enough for a normal");
    }

    private String note() {
        IntSpan rain = years(ClimateVariable.RAIN);
        IntSpan temperature = years(ClimateVariable.ET0);
        String text = "Years behind a month: temperature " + temperature.words() + ", rain " + rain.words() + ".";
        double solar = months.stream()
                .mapToDouble(month -> month.of(ClimateVariable.SOLAR).measuredPct())
                .filter(share -> !Double.isNaN(share))
                .average()
                .orElse(0.0);
        return text + " Radiation measured on " + Numbers.fixed(solar, 0) + " % of their days, else estimated.";
    }

    private record IntSpan(int low, int high) {
        String words() {
            return low == high ? Integer.toString(low) : low + " to " + high;
        }
    }

    private IntSpan years(ClimateVariable variable) {
        var counts = months.stream().mapToInt(month -> month.years(variable)).summaryStatistics();
        return new IntSpan(counts.getMin(), counts.getMax());
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "month", "tmin_c", "tmax_c", "rain_mm", "et0_mm", "solar_mj_m2", "temperature_years", "rain_years");
        months.forEach(month -> table.row(
                Integer.parseInt(month.name()),
                month.value(ClimateVariable.TMIN),
                month.value(ClimateVariable.TMAX),
                month.value(ClimateVariable.RAIN),
                month.value(ClimateVariable.ET0),
                month.value(ClimateVariable.SOLAR),
                month.years(ClimateVariable.ET0),
                month.years(ClimateVariable.RAIN)));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double labels = 1.7 * canvas.type().smallPx();
        boolean thumbnail = style.size().isThumbnail();
        Panels panels = new Panels(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - labels),
                0.6 * canvas.type().smallPx(),
                thumbnail ? new double[] {1} : new double[] {1.25, 1});
        Frame last = water(canvas, panels.row(0));
        if (!thumbnail) {
            last = temperature(canvas, panels.row(1));
        }
        names(last);
    }

    private Frame frame(Canvas canvas, Rectangle2D row, String title, double low, double high) {
        double step = Numbers.niceStep(high - low, 4);
        return new Frame.Builder(canvas, row)
                .x(-0.6, MONTHS - 0.4, 1000)
                .y(low < 0 ? step * Math.floor(low / step) : low, high, step)
                .titles("", title)
                .left(2.8 * canvas.type().smallPx())
                .noXLabels()
                .draw();
    }

    private Frame water(Canvas canvas, Rectangle2D row) {
        double most = 0.0;
        for (ClimateNormal month : months) {
            most = max(most, month.value(ClimateVariable.RAIN));
            most = max(most, month.value(ClimateVariable.ET0));
        }
        Frame frame = frame(canvas, row, units.waterUnit() + " a month", 0, 1.1 * Math.max(units.water(most), 0.1));
        double width = BAR_SHARE * (frame.x(1) - frame.x(0));
        double[] xs = new double[MONTHS];
        double[] et0 = new double[MONTHS];
        for (int i = 0; i < MONTHS; i++) {
            double rain = units.water(months.get(i).value(ClimateVariable.RAIN));
            if (rain > 0.0) {
                double top = frame.y(rain);
                canvas.fill(
                        new Rectangle2D.Double(frame.x(i) - width / 2, top, width, frame.y(0) - top), palette.wet());
            }
            xs[i] = i;
            et0[i] = units.water(months.get(i).value(ClimateVariable.ET0));
        }
        Path2D line = frame.path(xs, et0);
        canvas.outline(line, palette.background(), 2.6 * canvas.type().strokePx());
        canvas.outline(line, palette.ink(), canvas.type().strokePx());
        double radius = 1.2 * canvas.type().strokePx();
        for (int i = 0; i < MONTHS; i++) {
            if (!Double.isNaN(et0[i])) {
                double y = frame.y(et0[i]);
                canvas.fill(
                        new Ellipse2D.Double(frame.x(i) - radius, y - radius, 2 * radius, 2 * radius), palette.ink());
            }
        }
        return frame;
    }

    private Frame temperature(Canvas canvas, Rectangle2D row) {
        double low = 0.0;
        double high = 1.0;
        for (ClimateNormal month : months) {
            low = -max(-low, -units.temperature(month.value(ClimateVariable.TMIN)));
            high = max(high, units.temperature(month.value(ClimateVariable.TMAX)));
        }
        Frame frame = frame(canvas, row, units.temperatureUnit(), low < 0 ? 1.3 * low : low, 1.2 * high);
        double width = BAR_SHARE * (frame.x(1) - frame.x(0));
        Font font = canvas.strongSmall();
        for (int i = 0; i < MONTHS; i++) {
            double tmin = units.temperature(months.get(i).value(ClimateVariable.TMIN));
            double tmax = units.temperature(months.get(i).value(ClimateVariable.TMAX));
            if (Double.isNaN(tmin + tmax)) {
                continue;
            }
            double x = frame.x(i);
            double top = frame.y(tmax);
            double bottom = frame.y(tmin);
            canvas.fill(new Rectangle2D.Double(x - width / 2, top, width, bottom - top), palette.band());
            double size = font.getSize2D();
            canvas.text(Numbers.fixed(tmax, 0), x, top - 0.25 * size, font, palette.ink(), Align.CENTER);
            if (bottom + size < frame.area().getMaxY()) {
                canvas.text(Numbers.fixed(tmin, 0), x, bottom + 0.95 * size, font, palette.muted(), Align.CENTER);
            }
        }
        return frame;
    }

    private static double max(double a, double b) {
        return Double.isNaN(b) ? a : Math.max(a, b);
    }

    private void names(Frame frame) {
        Canvas canvas = frame.canvas();
        Font font = canvas.small();
        boolean full = frame.x(1) - frame.x(0) > 1.2 * Canvas.width("May", font);
        for (int i = 0; i < MONTHS; i++) {
            String text = name(months.get(i), full ? TextStyle.SHORT : TextStyle.NARROW);
            double baseline = frame.area().getMaxY() + 1.35 * font.getSize2D();
            canvas.text(text, frame.x(i), baseline, font, palette.muted(), Align.CENTER);
        }
    }
}
