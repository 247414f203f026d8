package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.List;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.DailyVariable;

/** What waiting for dry stems costs: standing dry matter and moisture from the end of the canopy to the cut. */
public final class HarvestWindowChart {

    private static final int DAYS_WITHOUT_CUT = 150;

    private final HarvestWindowView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final MonthScale scale;

    private HarvestWindowChart(HarvestWindowView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.scale = window(view);
    }

    /**
     * Builds the chart.
     *
     * @param view the window
     * @param style look, units, source
     */
    public static ChartDocument of(HarvestWindowView view, ChartStyle style) {
        return new HarvestWindowChart(view, style).document();
    }

    private static MonthScale window(HarvestWindowView view) {
        LocalDate last = view.daily().date(view.daily().days() - 1);
        LocalDate end = view.season().dates().canopyEnd();
        LocalDate from = end == null ? last : end;
        LocalDate cut = view.season().dates().harvest();
        LocalDate to = cut == null ? from.plusDays(DAYS_WITHOUT_CUT) : cut.minusDays(1);
        to = to.isAfter(last) ? last : to;
        return new MonthScale(view.daily().start(), from, to.isBefore(from) ? from : to);
    }

    private double standing(int day) {
        return 0.01 * view.daily().at(DailyVariable.STANDING, day);
    }

    private double moisture(int day) {
        return view.daily().at(DailyVariable.MOISTURE, day);
    }

    private int firstDay() {
        return (int) scale.low();
    }

    private int lastDay() {
        return (int) scale.high() - 1;
    }

    private ChartDocument document() {
        LocalDate cut = view.season().dates().harvest();
        String until = cut == null ? "the end of the weather" : "the cut on " + Subtitles.date(cut);
        String subtitle = Subtitles.sentence(
                view.zone(),
                "standing dry matter and its moisture from the end of the canopy to " + until + ", growth year "
                        + view.season().growthYear());
        String note = "Above about 20 % moisture bales can heat, grow mould and catch fire in storage.";
        var words = new ChartDocument.Words(
                "harvest-window-" + view.season().growthYear(), title(), subtitle, note, title() + ". " + subtitle);
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private String title() {
        double lost = standing(firstDay()) - standing(lastDay());
        return "Waiting " + Subtitles.count(scale.days() - 1, "day", "days") + " cost " + units.yieldText(lost)
                + " and took moisture from " + Numbers.fixed(moisture(firstDay()), 0) + " to "
                + Numbers.fixed(moisture(lastDay()), 0) + " %";
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("date", "standing_mg_ha", "moisture_pct");
        for (int day = firstDay(); day <= lastDay(); day++) {
            table.row(view.daily().date(day), standing(day), moisture(day));
        }
        return table.build();
    }

    private double[] column(java.util.function.IntToDoubleFunction value) {
        double[] values = new double[scale.days()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value.applyAsDouble(firstDay() + i);
        }
        return values;
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double months = 1.7 * canvas.type().smallPx();
        Panels panels = new Panels(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - months),
                0.8 * canvas.type().smallPx(),
                1,
                1);
        double[] days = column(day -> day + 0.5);
        double[] mass = column(day -> units.dryMatter(standing(day)));
        double[] water = column(this::moisture);
        Frame upper =
                panel(canvas, panels.row(0), units.yieldUnit() + " standing dry matter", 1.15 * Math.max(0.1, mass[0]));
        canvas.fill(upper.between(days, new double[days.length], mass), palette.cropTint());
        canvas.outline(upper.path(days, mass), palette.crop(), canvas.type().strokePx());
        double wettest = view.moistureLimitPct();
        for (double percent : water) {
            wettest = percent > wettest ? percent : wettest;
        }
        Frame lower = panel(canvas, panels.row(1), "% moisture, wet basis", 1.15 * wettest);
        limit(canvas, lower);
        canvas.outline(lower.path(days, water), palette.wet(), canvas.type().strokePx());
        ends(canvas, upper, days, mass, 1);
        ends(canvas, lower, days, water, 0);
        scale.names(lower);
        for (Frame frame : List.of(upper, lower)) {
            frame.dayTips(
                    scale,
                    place -> Subtitles.date(view.daily().date(firstDay() + place)) + ": "
                            + units.yieldText(standing(firstDay() + place)) + " standing, "
                            + Numbers.fixed(water[place], 0) + " % moisture");
        }
    }

    private void limit(Canvas canvas, Frame frame) {
        double y = frame.y(view.moistureLimitPct());
        canvas.dashed(new Line2D.Double(frame.area().getX(), y, frame.area().getMaxX(), y), palette.dry(), 1.4);
        double gap = 0.4 * canvas.type().smallPx();
        String text = "limit " + Numbers.fixed(view.moistureLimitPct(), 0) + " %";
        canvas.text(text, frame.area().getX() + gap, y - gap, canvas.small(), palette.ink(), Align.LEFT);
    }

    private Frame.Builder axes(Canvas canvas, Rectangle2D row, String title) {
        return new Frame.Builder(canvas, row)
                .x(scale.low(), scale.high(), 1000)
                .titles("", title)
                .left(2.6 * canvas.type().smallPx())
                .right(2.8 * canvas.type().smallPx())
                .noXLabels()
                .under(scale::lines);
    }

    private Frame panel(Canvas canvas, Rectangle2D row, String title, double high) {
        return axes(canvas, row, title).y(0, high, Numbers.niceStep(high, 4)).draw();
    }

    /** Writes the last value beside the line's end. */
    private void ends(Canvas canvas, Frame frame, double[] days, double[] values, int decimals) {
        int last = values.length - 1;
        Font font = canvas.strongSmall();
        canvas.text(
                Numbers.fixed(values[last], decimals),
                frame.x(days[last]) + 0.7 * font.getSize2D(),
                frame.y(values[last]) + 0.35 * font.getSize2D(),
                font,
                palette.ink(),
                Align.LEFT);
    }
}
