package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.YieldLedger;

/** From the potential step by step to what was harvested. */
public final class LedgerChart {

    private static final double NOTHING_MG_HA = 0.05;
    private static final double BAR_SHARE = 0.74;

    private final LedgerView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final List<Step> steps;

    /** One bar: from where to where [Mg/ha], and its names. */
    private record Step(String name, String shortName, String column, double from, double to, boolean total) {
        double amount() {
            return total ? to : from - to;
        }
    }

    private LedgerChart(LedgerView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.steps = steps(view);
    }

    /**
     * Builds the chart.
     *
     * @param view the ledgers
     * @param style look, units, source
     */
    public static ChartDocument of(LedgerView view, ChartStyle style) {
        return new LedgerChart(view, style).document();
    }

    private static List<Step> steps(LedgerView view) {
        List<Step> steps = new ArrayList<>();
        double potential = view.mean(YieldLedger::potentialMgHa);
        steps.add(new Step("potential", "potential", "potential_mg_ha", 0, potential, true));
        double left = potential;
        left = loss(steps, "stand age", "age", "age_mg_ha", left, view.mean(YieldLedger::ageMgHa));
        left = loss(steps, "drought", "drought", "drought_mg_ha", left, view.mean(YieldLedger::droughtMgHa));
        left = loss(steps, "excess water", "wet", "excess_water_mg_ha", left, view.mean(YieldLedger::excessWaterMgHa));
        left = loss(steps, "frost", "frost", "frost_mg_ha", left, view.mean(YieldLedger::frostMgHa));
        left = loss(steps, "winter loss", "winter", "winter_mg_ha", left, view.mean(YieldLedger::winterMgHa));
        loss(steps, "left on field", "left", "left_on_field_mg_ha", left, view.mean(YieldLedger::leftOnFieldMgHa));
        steps.add(new Step("harvested", "harvest", "harvested_mg_ha", 0, view.mean(YieldLedger::harvestedMgHa), true));
        return steps;
    }

    private static double loss(
            List<Step> steps, String name, String shortName, String column, double from, double amount) {
        steps.add(new Step(name, shortName, column, from, from - amount, false));
        return from - amount;
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                view.zone(), "from the potential of a mature stand to the harvest, dry matter, " + view.when());
        String description = title() + ". "
                + steps.stream()
                        .map(step ->
                                step.name() + " " + (step.total() ? "" : "\u2212") + units.yieldText(step.amount()))
                        .collect(Collectors.joining(", "));
        String note = "Potential: the standing peak of a mature stand with unlimited water and no frost.";
        var words = new ChartDocument.Words("yield-ledger", title(), subtitle, note, description);
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("step", "amount_mg_ha");
        steps.forEach(step -> table.row(step.column(), step.amount()));
        return table.build();
    }

    private String title() {
        Step largest = steps.get(1);
        for (Step step : steps) {
            largest = !step.total() && step.amount() > largest.amount() ? step : largest;
        }
        String harvest = "Of " + units.yieldText(steps.get(0).to()) + " possible, "
                + Numbers.fixed(units.dryMatter(steps.get(steps.size() - 1).to()), 1) + " came off the field";
        return largest.amount() < NOTHING_MG_HA
                ? harvest
                : harvest + "; " + largest.name() + " took most, "
                        + Numbers.fixed(units.dryMatter(largest.amount()), 1);
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double top = 0.1;
        double low = 0.0;
        for (Step step : steps) {
            top = Math.max(top, Math.max(step.from(), step.to()));
            low = Math.min(low, step.to());
        }
        double high = units.dryMatter(top) * 1.1;
        double names = 1.75 * canvas.type().smallPx();
        Rectangle2D plot = new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - names);
        Frame frame = new Frame.Builder(canvas, plot)
                .x(-0.5, steps.size() - 0.5, 1000)
                .y(units.dryMatter(low), high, Numbers.niceStep(high, 5))
                .titles("", units.yieldUnit() + " dry matter")
                .noXLabels()
                .draw();
        double width = BAR_SHARE * (frame.x(1) - frame.x(0));
        boolean shortNames = !namesFit(canvas, frame.x(1) - frame.x(0));
        for (int i = 0; i < steps.size(); i++) {
            bar(frame, i, width);
            name(frame, i, shortNames);
        }
    }

    private boolean namesFit(Canvas canvas, double slot) {
        return steps.stream().allMatch(step -> Canvas.width(step.name(), canvas.small()) < 0.94 * slot);
    }

    private Color color(Step step) {
        if (step.total()) {
            return step.column().startsWith("potential") ? palette.middle() : palette.crop();
        }
        return step.column().startsWith("drought") ? palette.dry() : palette.axis();
    }

    private void bar(Frame frame, int index, double width) {
        Step step = steps.get(index);
        double left = frame.x(index) - width / 2;
        double upper = frame.y(units.dryMatter(Math.max(step.from(), step.to())));
        double lower = frame.y(units.dryMatter(Math.min(step.from(), step.to())));
        Canvas canvas = frame.canvas();
        canvas.fill(new Rectangle2D.Double(left, upper, width, Math.max(1.5, lower - upper)), color(step));
        canvas.tip(
                new Rectangle2D.Double(left, upper, width, Math.max(4.0, lower - upper)),
                step.name() + ": " + number(step) + " " + units.yieldUnit());
        if (index < steps.size() - 1) {
            double y = frame.y(units.dryMatter(step.to()));
            double next = frame.x(index + 1) - width / 2;
            canvas.line(left + width, y, next, y, palette.axis(), 1.0);
        }
        Font font = step.total() || step.column().startsWith("drought") ? canvas.strongLabel() : canvas.label();
        canvas.text(number(step), frame.x(index), upper - 0.4 * font.getSize2D(), font, palette.ink(), Align.CENTER);
    }

    private String number(Step step) {
        double amount = units.dryMatter(step.amount());
        if (step.total()) {
            return Numbers.fixed(amount, 1);
        }
        String text = Numbers.fixed(-amount, 1);
        return amount < 0.0 && !text.equals("0.0") ? "+" + text : text;
    }

    private void name(Frame frame, int index, boolean shortName) {
        Canvas canvas = frame.canvas();
        Step step = steps.get(index);
        Font font = step.total() ? canvas.strongSmall() : canvas.small();
        String text = Canvas.fitted(shortName ? step.shortName() : step.name(), font, 0.98 * (frame.x(1) - frame.x(0)));
        double baseline = frame.area().getMaxY() + 1.45 * font.getSize2D();
        canvas.text(text, frame.x(index), baseline, font, step.total() ? palette.ink() : palette.muted(), Align.CENTER);
        double ground = frame.y(0);
        canvas.outline(
                new Line2D.Double(frame.area().getX(), ground, frame.area().getMaxX(), ground), palette.axis(), 1.2);
    }
}
