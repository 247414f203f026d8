package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.YieldLedger;

/** Mean ledgers side by side: a row for every step from potential to harvest, a column for every group, one scale for all. */
public final class LedgersChart {

    private static final double BAR_SHARE = 0.62;

    private final LedgersView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    /** A step; losses are taken off what is left above them. */
    private record Step(
            String name, String shortName, String column, boolean total, ToDoubleFunction<YieldLedger> part) {}

    private static final List<Step> STEPS = List.of(
            new Step("potential", "potential", "potential_mg_ha", true, YieldLedger::potentialMgHa),
            new Step("stand age", "age", "age_mg_ha", false, YieldLedger::ageMgHa),
            new Step("drought", "drought", "drought_mg_ha", false, YieldLedger::droughtMgHa),
            new Step("excess water", "wet", "excess_water_mg_ha", false, YieldLedger::excessWaterMgHa),
            new Step("frost", "frost", "frost_mg_ha", false, YieldLedger::frostMgHa),
            new Step("winter loss", "winter", "winter_mg_ha", false, YieldLedger::winterMgHa),
            new Step("left on field", "left", "left_on_field_mg_ha", false, YieldLedger::leftOnFieldMgHa),
            new Step("harvested", "harvest", "harvested_mg_ha", true, YieldLedger::harvestedMgHa));

    private LedgersChart(LedgersView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view the groups
     * @param style look, units, source
     */
    public static ChartDocument of(LedgersView view, ChartStyle style) {
        return new LedgersChart(view, style).document();
    }

    private static double mean(LedgersView.Group group, Step step) {
        return group.ledgers().stream().mapToDouble(step.part()).average().orElse(0.0);
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                view.zone(),
                "from the potential to the harvest, " + units.yieldUnit() + " dry matter, means of " + view.by());
        String description = title() + ". "
                + view.groups().stream()
                        .map(group -> group.name() + ": "
                                + STEPS.stream()
                                        .map(step -> step.name() + " " + units.yieldText(mean(group, step)))
                                        .collect(Collectors.joining(", ")))
                        .collect(Collectors.joining("; "));
        String note =
                "Potential: the standing peak of a mature stand with unlimited water and no frost. Steps of each column add up.";
        var words = new ChartDocument.Words("yield-ledgers", title(), subtitle, note, description);
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private String title() {
        LedgersView.Group first = view.groups().get(0);
        LedgersView.Group last = view.groups().get(view.groups().size() - 1);
        return "Drought took " + units.yieldText(mean(first, STEPS.get(2))) + " from " + first.name() + ", "
                + Numbers.fixed(units.dryMatter(mean(last, STEPS.get(2))), 1) + " from " + last.name();
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("group", "years", "step", "amount_mg_ha");
        for (LedgersView.Group group : view.groups()) {
            STEPS.forEach(step -> table.row(group.name(), group.ledgers().size(), step.column(), mean(group, step)));
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        Font font = canvas.small();
        boolean small = area.getWidth() < 460 || view.groups().size() > 4;
        double names = STEPS.stream()
                        .mapToDouble(step -> Canvas.width(small ? step.shortName() : step.name(), canvas.strongSmall()))
                        .max()
                        .orElse(0)
                + font.getSize2D();
        double head = 2.0 * canvas.type().labelPx();
        double row = (area.getHeight() - head) / STEPS.size();
        double column = (area.getWidth() - names) / view.groups().size();
        for (int i = 0; i < STEPS.size(); i++) {
            Step step = STEPS.get(i);
            double middle = area.getY() + head + (i + 0.5) * row;
            canvas.text(
                    small ? step.shortName() : step.name(),
                    area.getX(),
                    middle + 0.35 * font.getSize2D(),
                    step.total() ? canvas.strongSmall() : font,
                    step.total() ? palette.ink() : palette.muted(),
                    Align.LEFT);
        }
        double top = view.groups().stream()
                .mapToDouble(group -> mean(group, STEPS.get(0)))
                .max()
                .orElse(1.0);
        for (int g = 0; g < view.groups().size(); g++) {
            Rectangle2D cell = new Rectangle2D.Double(
                    area.getX() + names + g * column, area.getY(), column - font.getSize2D(), area.getHeight());
            group(canvas, view.groups().get(g), cell, head, row, Math.max(top, 0.1));
        }
    }

    private void group(Canvas canvas, LedgersView.Group group, Rectangle2D cell, double head, double row, double top) {
        heading(canvas, group, cell);
        double widest = Canvas.width("\u221200.0", canvas.strongSmall())
                + 0.6 * canvas.small().getSize2D();
        double scale = (cell.getWidth() - widest) / (top * 1.02);
        double left = cell.getX();
        canvas.line(left, cell.getY() + head, left, cell.getMaxY(), palette.axis(), 1.2);
        double rest = 0.0;
        for (int i = 0; i < STEPS.size(); i++) {
            Step step = STEPS.get(i);
            double amount = mean(group, step);
            double from = step.total() ? 0.0 : rest - amount;
            double to = step.total() ? amount : rest;
            rest = step.total() ? amount : rest - amount;
            double x = left + scale * Math.min(from, to);
            double width = Math.max(1.5, scale * Math.abs(to - from));
            double y = cell.getY() + head + (i + 0.5 * (1.0 - BAR_SHARE)) * row;
            canvas.fill(new Rectangle2D.Double(x, y, width, BAR_SHARE * row), color(step));
            canvas.tip(
                    new Rectangle2D.Double(left, y, cell.getWidth(), BAR_SHARE * row),
                    group.name() + ", " + step.name() + ": " + number(step, amount) + " " + units.yieldUnit());
            Font font = step.total() || step.name().equals("drought") ? canvas.strongSmall() : canvas.small();
            double baseline = y + 0.5 * BAR_SHARE * row + 0.35 * font.getSize2D();
            canvas.text(
                    number(step, amount),
                    x + width + 0.35 * font.getSize2D(),
                    baseline,
                    font,
                    palette.ink(),
                    Align.LEFT);
        }
    }

    private void heading(Canvas canvas, LedgersView.Group group, Rectangle2D cell) {
        Font strong = canvas.strongSmall();
        double baseline = cell.getY() + 1.1 * canvas.type().labelPx();
        double x = cell.getX();
        if (group.seasonClass() != null) {
            double radius = 0.36 * strong.getSize2D();
            canvas.marker(x + radius, baseline - 0.34 * strong.getSize2D(), radius, group.seasonClass());
            x += 3 * radius;
        }
        String years = " (" + group.ledgers().size() + ")";
        String whole = group.name() + years;
        canvas.text(Canvas.fitted(whole, strong, cell.getMaxX() - x), x, baseline, strong, palette.ink(), Align.LEFT);
    }

    private Color color(Step step) {
        if (step.total()) {
            return step.column().startsWith("potential") ? palette.middle() : palette.crop();
        }
        return step.name().equals("drought") ? palette.dry() : palette.axis();
    }

    private String number(Step step, double mgHa) {
        double amount = units.dryMatter(mgHa);
        if (step.total()) {
            return Numbers.fixed(amount, 1);
        }
        String text = Numbers.fixed(-amount, 1);
        return amount < 0.0 && !text.equals("0.0") ? "+" + text : text;
    }
}
