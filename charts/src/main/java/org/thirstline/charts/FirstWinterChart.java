package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.MonthDay;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.thirstline.calibration.trial.FirstWinter;
import org.thirstline.calibration.trial.FirstWinter.Date;
import org.thirstline.calibration.trial.FirstWinter.Winter;
import org.thirstline.charts.theme.Palette;

/** How many plants outlive the first winter, by the coldest soil temperature and by planting date. */
public final class FirstWinterChart {

    private static final double PERCENT = 100.0;

    private static final double LEFT_SHARE = 0.44;

    private static final int CURVE_POINTS = 60;

    private static final String CAUTION =
            "For guidance only: a bare new planting can freeze deeper; take local advice before planting.";

    private final FirstWinter winter;
    private final ChartStyle style;
    private final Palette palette;

    private FirstWinterChart(FirstWinter winter, ChartStyle style) {
        this.winter = winter;
        this.style = style;
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param winter first winters
     * @param style look, units, source
     */
    public static ChartDocument of(FirstWinter winter, ChartStyle style) {
        return new FirstWinterChart(winter, style).document();
    }

    static String day(MonthDay day) {
        return day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                winter.zone(),
                "plants alive after their first winter, "
                        + Subtitles.count(winter.winters().size(), "winter", "winters")
                        + " of this weather; soil temperature of the rhizome zone, simulated");
        String note = "Half of the plants die at " + Numbers.fixed(winter.halfLethalC(), 1)
                + " °C. Plants count as equally hardy whenever planted; a late planting shows in its shoots. "
                + CAUTION;
        String description = title() + ". "
                + winter.dates().stream()
                        .map(date ->
                                day(date.day()) + ": " + percent(date.meanSurvival()) + " alive, fewer than half in "
                                        + percent(date.failedShare()) + " of years, "
                                        + Numbers.fixed(date.shootsM2(), 0) + " shoots per m² in the second year")
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("first-winter", title(), subtitle, note, description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        if (winter.winters().stream().anyMatch(one -> one.survival() < FirstWinter.FAILED)) {
            entries.add(KeyEntry.block(palette.dry(), "fewer than half live"));
        }
        if (winter.winters().stream().anyMatch(one -> one.survival() >= FirstWinter.FAILED)) {
            entries.add(KeyEntry.ring(palette.middle(), "a winter in which more live"));
        }
        return entries;
    }

    private static String percent(double share) {
        return Numbers.fixed(PERCENT * share, 0) + " %";
    }

    private String title() {
        int count = winter.winters().size();
        if (count == 0 || winter.dates().isEmpty()) {
            return "The weather holds no whole first winter yet";
        }
        long failed = Math.round(winter.failedShare() * count);
        String winters = Subtitles.count(count, "first winter", "first winters");
        if (failed == 0) {
            double worst = winter.winters().stream()
                    .mapToDouble(Winter::survival)
                    .min()
                    .orElse(1.0);
            return "None of " + winters + " leaves fewer than half of the plants alive; the worst leaves "
                    + percent(worst);
        }
        return failed + " of " + winters + " leave fewer than half of the plants alive; on average "
                + percent(winter.meanSurvival()) + " live";
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "planting_date",
                "planting_year",
                "years",
                "soil_at_planting_c",
                "coldest_soil_c",
                "mean_survival",
                "lowest_survival",
                "share_of_years_under_half",
                "reserve_g_m2",
                "second_year_shoots_m2");
        for (Date date : winter.dates()) {
            table.row(
                    date.day().toString().substring(2),
                    null,
                    date.years(),
                    date.soilTemperatureC(),
                    null,
                    date.meanSurvival(),
                    date.lowestSurvival(),
                    date.failedShare(),
                    date.reserveGM2(),
                    date.shootsM2());
        }
        for (Winter one : winter.winters()) {
            table.row(null, one.plantingYear(), 1, null, one.coldestC(), one.survival(), null, null, null, null);
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (winter.winters().isEmpty() || winter.dates().isEmpty()) {
            return;
        }
        double gap = 1.6 * canvas.type().labelPx();
        double width = LEFT_SHARE * (area.getWidth() - gap);
        byTemperature(canvas, new Rectangle2D.Double(area.getX(), area.getY(), width, area.getHeight()));
        byDate(
                canvas,
                new Rectangle2D.Double(
                        area.getX() + width + gap, area.getY(), area.getWidth() - width - gap, area.getHeight()));
    }

    private void byTemperature(Canvas canvas, Rectangle2D area) {
        double coldest =
                winter.winters().stream().mapToDouble(Winter::coldestC).min().orElse(0.0);
        double warmest =
                winter.winters().stream().mapToDouble(Winter::coldestC).max().orElse(0.0);
        double low = Math.floor(Math.min(coldest, winter.halfLethalC()) - 1.0);
        double high = Math.ceil(Math.max(warmest, winter.halfLethalC()) + 1.0);
        double step = Numbers.niceStep(high - low, style.size().isThumbnail() ? 3 : 6);
        Frame frame = new Frame.Builder(canvas, area)
                .x(low, high, step)
                .y(0, 106, 25)
                .right(0.9 * canvas.type().smallPx())
                .titles(
                        style.size().isThumbnail() ? "" : "coldest soil temperature of the winter (°C)",
                        "% of plants alive")
                .draw();
        double[] xs = new double[CURVE_POINTS + 1];
        double[] ys = new double[CURVE_POINTS + 1];
        for (int i = 0; i <= CURVE_POINTS; i++) {
            xs[i] = low + (high - low) * i / CURVE_POINTS;
            ys[i] = PERCENT * winter.frost().winterSurvival(xs[i], true);
        }
        canvas.outline(frame.path(xs, ys), palette.ink(), canvas.type().strokePx());
        double radius = 0.3 * canvas.type().labelPx();
        for (Winter one : winter.winters()) {
            double x = frame.x(one.coldestC());
            double y = frame.y(PERCENT * one.survival());
            var dot = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
            canvas.fill(dot, one.survival() < FirstWinter.FAILED ? palette.dry() : palette.middle());
            canvas.outline(dot, palette.background(), 1.2);
        }
    }

    private void byDate(Canvas canvas, Rectangle2D area) {
        boolean thumbnail = style.size().isThumbnail();
        double labels = (thumbnail ? 0.3 : 3.4) * canvas.type().smallPx();
        Panels panels = new Panels(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - labels),
                0.6 * canvas.type().smallPx(),
                1.0,
                1.0);
        Frame risk = frame(canvas, panels.row(0), "% of years with fewer than half alive", 112, 50);
        bars(risk, true);
        double most = winter.dates().stream().mapToDouble(Date::shootsM2).max().orElse(1.0);
        double high = 1.15 * Math.max(1.0, most);
        Frame shoots =
                frame(canvas, panels.row(1), "shoots per m² in the second year", high, Numbers.niceStep(high, 3));
        bars(shoots, false);
        if (!thumbnail) {
            names(shoots);
        }
    }

    private Frame frame(Canvas canvas, Rectangle2D row, String title, double high, double step) {
        return new Frame.Builder(canvas, row)
                .x(-0.6, winter.dates().size() - 0.4, 1000)
                .y(0, high, step)
                .titles("", title)
                .left(2.8 * canvas.type().smallPx())
                .noXLabels()
                .draw();
    }

    private void bars(Frame frame, boolean risk) {
        Canvas canvas = frame.canvas();
        double width = 0.7 * (frame.x(1) - frame.x(0));
        Font font = canvas.strongSmall();
        for (int i = 0; i < winter.dates().size(); i++) {
            Date date = winter.dates().get(i);
            double value = risk ? PERCENT * date.failedShare() : date.shootsM2();
            double top = frame.y(value);
            Rectangle2D bar = new Rectangle2D.Double(frame.x(i) - width / 2, top, width, frame.y(0) - top);
            if (bar.getHeight() > 0.5) {
                canvas.fill(bar, risk ? palette.dry() : palette.crop());
            }
            String text = Numbers.fixed(value, 0);
            if (Canvas.width(text, font) < width) {
                canvas.text(text, frame.x(i), top - 0.3 * font.getSize2D(), font, palette.ink(), Align.CENTER);
            }
        }
        double y = frame.y(0);
        canvas.outline(new Line2D.Double(frame.area().getX(), y, frame.area().getMaxX(), y), palette.axis(), 1.2);
    }

    /** Planting dates, and under them how warm the soil was. */
    private void names(Frame frame) {
        Canvas canvas = frame.canvas();
        Font font = canvas.small();
        double slot = frame.x(1) - frame.x(0);
        int every = (int) Math.max(1, Math.ceil(1.25 * Canvas.width("15 May", font) / slot));
        double baseline = frame.area().getMaxY() + 1.35 * font.getSize2D();
        for (int i = 0; i < winter.dates().size(); i += every) {
            Date date = winter.dates().get(i);
            String text = day(date.day());
            double half = Canvas.width(text, font) / 2;
            double x = Math.min(Math.max(frame.x(i), frame.area().getX() + half), canvas.right() - half);
            canvas.text(text, x, baseline, font, palette.muted(), Align.CENTER);
            String warmth = Numbers.fixed(date.soilTemperatureC(), 0) + " °C";
            canvas.text(warmth, x, baseline + 1.3 * font.getSize2D(), font, palette.muted(), Align.CENTER);
        }
    }
}
