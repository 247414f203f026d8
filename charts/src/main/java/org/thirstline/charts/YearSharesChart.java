package org.thirstline.charts;

import java.awt.Color;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.thirstline.calibration.trial.YearShares;
import org.thirstline.charts.theme.Palette;

/** How far each year's harvest stayed below the potential, and how much of that was drought, stand age and neither. */
public final class YearSharesChart {

    private static final double BAR_SHARE = 0.72;

    private final List<YearShares> years;
    private final boolean called;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private YearSharesChart(List<YearShares> years, boolean called, ChartStyle style) {
        this.years = List.copyOf(years);
        this.called = called;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param years where the potential of each year went
     * @param called whether a decline with age is called
     * @param style look, units, source
     */
    public static ChartDocument of(List<YearShares> years, boolean called, ChartStyle style) {
        return new YearSharesChart(years, called, style).document();
    }

    private ChartDocument document() {
        String subtitle =
                "Harvest below what the same plots would have given unageing and never short of water, mean of the"
                        + " plots by growth year";
        String description = title() + ". " + subtitle + ". "
                + years.stream()
                        .map(year -> year.growthYear() + ": drought " + units.yieldText(year.droughtMgHa()) + ", age "
                                + units.yieldText(year.ageMgHa()) + ", other " + units.yieldText(year.otherMgHa()))
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("lost-by-year", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private double mean(ToDoubleFunction<YearShares> value) {
        return years.stream().mapToDouble(value).average().orElse(0.0);
    }

    private String title() {
        if (years.isEmpty()) {
            return "No established year with a simulation";
        }
        String drought = units.yieldText(mean(YearShares::droughtMgHa));
        if (!called) {
            return "Drought took " + drought + " in an average year; no decline with age is called";
        }
        YearShares last = years.get(years.size() - 1);
        return "By " + last.growthYear() + " age took " + units.yieldText(last.ageMgHa()) + " a year; drought took "
                + Numbers.fixed(units.dryMatter(mean(YearShares::droughtMgHa)), 1) + " in an average one";
    }

    private String note() {
        String age = called
                ? "Age: the fitted decline. "
                : "Nothing is put down to age, since no decline is called; what there is of it is in other. ";
        return age + "Other: what simulation, decline and level of the plots leave over; below zero where more was"
                + " harvested than they say.";
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        entries.add(KeyEntry.block(palette.dry(), "drought"));
        if (called) {
            entries.add(KeyEntry.block(palette.axis(), "stand age"));
        }
        entries.add(KeyEntry.hatch(palette.muted(), "other"));
        entries.add(KeyEntry.line(palette.ink(), "below potential, all told"));
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "growth_year",
                "plots",
                "observed_mg_ha",
                "potential_mg_ha",
                "drought_mg_ha",
                "age_mg_ha",
                "other_mg_ha");
        years.forEach(year -> table.row(
                year.growthYear(),
                year.plots(),
                year.observedMgHa(),
                year.potentialMgHa(),
                year.droughtMgHa(),
                year.ageMgHa(),
                year.otherMgHa()));
        return table.build();
    }

    private static double up(YearShares year) {
        return Math.max(0.0, year.droughtMgHa()) + Math.max(0.0, year.ageMgHa()) + Math.max(0.0, year.otherMgHa());
    }

    private static double down(YearShares year) {
        return Math.min(0.0, year.droughtMgHa()) + Math.min(0.0, year.ageMgHa()) + Math.min(0.0, year.otherMgHa());
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (years.isEmpty()) {
            return;
        }
        int first = years.get(0).growthYear();
        int last = years.get(years.size() - 1).growthYear();
        double high = units.dryMatter(Math.max(
                0.5, years.stream().mapToDouble(YearSharesChart::up).max().orElse(0.0)));
        double low = units.dryMatter(
                years.stream().mapToDouble(YearSharesChart::down).min().orElse(0.0));
        double step = Numbers.niceStep(high - low, 6);
        Frame frame = new Frame.Builder(canvas, area)
                .x(first - 0.6, last + 0.6, YieldByYearChart.yearStep(canvas, area.getWidth(), last - first + 1))
                .y(1.06 * low, 1.06 * high, step)
                .titles("", units.yieldUnit() + " below potential")
                .draw();
        double width = Math.min(BAR_SHARE * (frame.x(1) - frame.x(0)), 70.0);
        years.forEach(year -> bar(frame, year, width));
        double ground = frame.y(0);
        canvas.outline(
                new Line2D.Double(frame.area().getX(), ground, frame.area().getMaxX(), ground), palette.axis(), 1.2);
    }

    private void bar(Frame frame, YearShares year, double width) {
        double left = frame.x(year.growthYear()) - width / 2;
        double[] parts = {year.droughtMgHa(), year.ageMgHa(), year.otherMgHa()};
        Color[] colors = {palette.dry(), palette.axis(), palette.muted()};
        double above = 0.0;
        double below = 0.0;
        for (int i = 0; i < parts.length; i++) {
            double from = parts[i] >= 0.0 ? above : below;
            above += Math.max(0.0, parts[i]);
            below += Math.min(0.0, parts[i]);
            double top = frame.y(units.dryMatter(Math.max(from, from + parts[i])));
            double bottom = frame.y(units.dryMatter(Math.min(from, from + parts[i])));
            part(frame.canvas(), new Rectangle2D.Double(left, top, width, bottom - top), colors[i], i == 2);
        }
        frame.canvas()
                .tip(
                        new Rectangle2D.Double(
                                left, frame.area().getY(), width, frame.area().getHeight()),
                        year.growthYear() + ": " + units.yieldText(year.potentialMgHa() - year.observedMgHa())
                                + " below potential; drought "
                                + Numbers.fixed(units.dryMatter(year.droughtMgHa()), 1) + ", age "
                                + Numbers.fixed(units.dryMatter(year.ageMgHa()), 1) + ", other "
                                + Numbers.fixed(units.dryMatter(year.otherMgHa()), 1));
        double net = frame.y(units.dryMatter(year.potentialMgHa() - year.observedMgHa()));
        double over = 0.12 * width;
        frame.canvas().line(left - over, net, left + width + over, net, palette.ink(), 2.0);
    }

    private static void part(Canvas canvas, Rectangle2D area, Color color, boolean hatched) {
        if (area.getHeight() < 0.3) {
            return;
        }
        if (hatched) {
            canvas.hatch(area, color);
            canvas.outline(area, color, 1.0);
        } else {
            canvas.fill(area, color);
        }
    }
}
