package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.thirstline.charts.theme.Palette;
import org.thirstline.io.climate.ClimateSummary;
import org.thirstline.io.climate.YearSeason;

/** In how many years frost comes after a date in spring, and before a date in autumn. */
public final class FrostDatesChart {

    private static final int EVERY_PCT = 100;
    private static final int DAYS = 365;
    private static final int MARGIN_DAYS = 15;

    /** One year of ten, as gardeners and growers reckon (common practice, no source). */
    private static final int RARE_PCT = 90;

    /** Fewer years than this carry no share of one in ten. */
    private static final int YEARS_FOR_SHARES = 10;

    private final ClimateView view;
    private final ClimateSummary summary;
    private final ChartStyle style;
    private final Palette palette;
    private final double[] lasts;
    private final double[] firsts;

    private FrostDatesChart(ClimateView view, ChartStyle style) {
        this.view = view;
        this.summary = view.summary();
        this.style = style;
        this.palette = style.theme().palette();
        this.lasts = sorted(YearSeason::lastFrostDay);
        this.firsts = sorted(YearSeason::firstFrostDay);
    }

    private double[] sorted(ToDoubleFunction<YearSeason> day) {
        return summary.years().stream()
                .mapToDouble(day)
                .filter(value -> !Double.isNaN(value))
                .sorted()
                .toArray();
    }

    /**
     * Builds the chart.
     *
     * @param view the climate of a place
     * @param style look, units, source
     */
    public static ChartDocument of(ClimateView view, ChartStyle style) {
        return new FrostDatesChart(view, style).document();
    }

    private ChartDocument document() {
        int years = summary.years().size();
        String subtitle = view.subtitle("share of years with a frost after a date in spring and by a date in autumn, "
                + Subtitles.count(years, "whole year", "whole years"));
        String note = "Frost: a minimum below " + style.units().temperatureText(0.0)
                + " at the height of the thermometer; the ground and hollows freeze before.";
        var words = new ChartDocument.Words(
                "frost-dates", title(), subtitle, note, title() + ". " + subtitle + ". " + dates());
        List<KeyEntry> key = lasts.length + firsts.length == 0
                ? List.of()
                : List.of(
                        KeyEntry.line(palette.wet(), "frost still to come in spring"),
                        KeyEntry.line(palette.dry(), "frost come in autumn"));
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private String title() {
        int years = summary.years().size();
        if (years == 0) {
            return "No whole year to tell the dates of frost from";
        }
        if (lasts.length == 0 && firsts.length == 0) {
            return "No frost in " + Subtitles.count(years, "year", "years");
        }
        if (years < YEARS_FOR_SHARES && lasts.length > 0 && firsts.length > 0) {
            return "Last frost " + span(lasts) + ", first frost " + span(firsts) + " in "
                    + Subtitles.count(years, "year", "years");
        }
        double late = ClimateView.day(summary.lastSpringFrost(), RARE_PCT);
        double early = ClimateView.day(summary.firstAutumnFrost(), 100 - RARE_PCT);
        if (Double.isNaN(late) || Double.isNaN(early)) {
            return "Frost in spring in " + lasts.length + " and in autumn in " + firsts.length + " of "
                    + Subtitles.count(years, "year", "years");
        }
        return "Frost after " + view.date(late) + " in one year of ten, and by " + view.date(early) + " in one of ten";
    }

    private String span(double[] days) {
        String from = view.date(days[0]);
        String to = view.date(days[days.length - 1]);
        return from.equals(to) ? "on " + from : "from " + from + " to " + to;
    }

    private String dates() {
        StringBuilder text = new StringBuilder();
        summary.lastSpringFrost().stream()
                .filter(frost -> !Double.isNaN(frost.day()))
                .forEach(frost -> text.append("Last frost by ")
                        .append(view.date(frost.day()))
                        .append(" in ")
                        .append(frost.sharePct())
                        .append(" % of years. "));
        summary.firstAutumnFrost().stream()
                .filter(frost -> !Double.isNaN(frost.day()))
                .forEach(frost -> text.append("First frost by ")
                        .append(view.date(frost.day()))
                        .append(" in ")
                        .append(frost.sharePct())
                        .append(" % of years. "));
        return text.toString().strip();
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "year", "last_spring_frost_day", "last_spring_frost", "first_autumn_frost_day", "first_autumn_frost");
        summary.years()
                .forEach(year -> table.row(
                        year.year(),
                        year.lastFrostDay(),
                        monthDay(year.lastFrostDay()),
                        year.firstFrostDay(),
                        monthDay(year.firstFrostDay())));
        return table.build();
    }

    private String monthDay(double day) {
        return Double.isNaN(day)
                ? ""
                : YearSeason.date(day, summary.southern()).toString().substring(5);
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (lasts.length == 0 && firsts.length == 0) {
            return;
        }
        MonthScale months = scale();
        double names = 1.7 * canvas.type().smallPx();
        Frame frame = new Frame.Builder(
                        canvas,
                        new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - names))
                .x(months.low(), months.high(), 1000)
                .y(0, 104, 25)
                .titles("", "% of years")
                .noXLabels()
                .draw();
        months.lines(frame);
        months.names(frame);
        LabelPlacer labels = new LabelPlacer(canvas, frame.area());
        double half = frame.y(50);
        canvas.dashed(new Line2D.Double(frame.area().getX(), half, frame.area().getMaxX(), half), palette.axis(), 1.0);
        labels.blockLine(frame.area().getX(), half, frame.area().getMaxX(), half);
        curve(frame, lasts, true, labels);
        curve(frame, firsts, false, labels);
        if (!style.size().isThumbnail()) {
            marks(frame, labels);
        }
    }

    private MonthScale scale() {
        double earliest = lasts.length > 0 ? lasts[0] : firsts[0];
        double latest = firsts.length > 0 ? firsts[firsts.length - 1] : lasts[lasts.length - 1];
        LocalDate zero = summary.southern() ? LocalDate.of(2001, 7, 1) : LocalDate.of(2001, 1, 1);
        long from = (long) Math.max(0, earliest - 1 - MARGIN_DAYS);
        long to = (long) Math.min(DAYS - 1, latest - 1 + MARGIN_DAYS);
        return new MonthScale(zero.minusDays(1), zero.plusDays(from), zero.plusDays(to));
    }

    /** A stair: share of years whose last frost is later, or whose first frost has come. */
    private void curve(Frame frame, double[] days, boolean spring, LabelPlacer labels) {
        int years = summary.years().size();
        int points = 2 * days.length + 2;
        double[] xs = new double[points];
        double[] ys = new double[points];
        double left = spring ? frameLow(frame) : Math.max(frameLow(frame), middle());
        double right = spring ? Math.min(frameHigh(frame), middle()) : frameHigh(frame);
        Arrays.fill(xs, left);
        ys[0] = spring ? 100.0 * days.length / years : 0.0;
        for (int i = 0; i < days.length; i++) {
            xs[2 * i + 1] = days[i];
            ys[2 * i + 1] = ys[2 * i];
            xs[2 * i + 2] = days[i];
            int after = spring ? days.length - i - 1 : i + 1;
            ys[2 * i + 2] = 100.0 * after / years;
        }
        xs[points - 1] = Math.max(right, xs[points - 2]);
        ys[points - 1] = ys[points - 2];
        draw(frame, xs, ys, spring, labels);
    }

    private void draw(Frame frame, double[] xs, double[] ys, boolean spring, LabelPlacer labels) {
        for (int i = 1; i < xs.length; i++) {
            labels.blockLine(frame.x(xs[i - 1]), frame.y(ys[i - 1]), frame.x(xs[i]), frame.y(ys[i]));
        }
        Canvas canvas = frame.canvas();
        canvas.outline(
                frame.path(xs, ys),
                spring ? palette.wet() : palette.dry(),
                canvas.type().strokePx());
    }

    private double middle() {
        double latestSpring = lasts.length > 0 ? lasts[lasts.length - 1] : firsts[0] - 60.0;
        double earliestAutumn = firsts.length > 0 ? firsts[0] : latestSpring + 60.0;
        return 0.5 * (latestSpring + earliestAutumn);
    }

    private static double frameLow(Frame frame) {
        return value(frame, frame.area().getX());
    }

    private static double frameHigh(Frame frame) {
        return value(frame, frame.area().getMaxX());
    }

    private static double value(Frame frame, double px) {
        return (px - frame.x(0)) / (frame.x(1) - frame.x(0));
    }

    /** Dates at 90, 50 and 10 percent on both curves, where there is room between them. */
    private void marks(Frame frame, LabelPlacer labels) {
        double radius = 0.3 * frame.canvas().type().smallPx();
        for (int share : new int[] {10, 50, 90}) {
            mark(frame, labels, ClimateView.day(summary.lastSpringFrost(), share), EVERY_PCT - share);
            mark(frame, labels, ClimateView.day(summary.firstAutumnFrost(), share), share);
        }
        for (int share : new int[] {50, 10, 90}) {
            place(frame, labels, ClimateView.day(summary.lastSpringFrost(), share), EVERY_PCT - share, radius);
            place(frame, labels, ClimateView.day(summary.firstAutumnFrost(), share), share, radius);
        }
    }

    private void mark(Frame frame, LabelPlacer labels, double day, int percent) {
        if (!Double.isNaN(day)) {
            double radius = 0.3 * frame.canvas().type().smallPx();
            frame.canvas().marker(frame.x(day), frame.y(percent), radius, null);
            labels.block(frame.x(day), frame.y(percent), radius);
        }
    }

    private void place(Frame frame, LabelPlacer labels, double day, int percent, double radius) {
        if (!Double.isNaN(day)) {
            Font font = frame.canvas().strongSmall();
            labels.place(view.date(day), frame.x(day), frame.y(percent), 2.2 * radius, font, palette.ink());
        }
    }
}
