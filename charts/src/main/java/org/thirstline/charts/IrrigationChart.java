package org.thirstline.charts;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.years.IrrigationSweep;
import org.thirstline.charts.theme.Palette;

/** Mean harvest against the water given in a season, and where more water gains too little. */
public final class IrrigationChart {

    private static final double NOTHING_MM = 0.5;

    private final IrrigationSweep sweep;
    private final double worthKgHaMm;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final Optional<IrrigationSweep.Step> flat;

    private IrrigationChart(IrrigationSweep sweep, double worthKgHaMm, ChartStyle style) {
        this.sweep = sweep;
        this.worthKgHaMm = worthKgHaMm;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.flat = sweep.flattensAt(worthKgHaMm);
    }

    /**
     * Builds the chart.
     *
     * @param sweep the rules
     * @param worthKgHaMm what a mm must gain to be worth it [kg/ha per mm]
     * @param style look, units, source
     */
    public static ChartDocument of(IrrigationSweep sweep, double worthKgHaMm, ChartStyle style) {
        return new IrrigationChart(sweep, worthKgHaMm, style).document();
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                sweep.zone(),
                "mean harvest of the full-grown years against water given in the growing season, " + dose()
                        + " at a time once the share of available water at each point is used");
        String note = "Flattens: where a further mm gains less than " + Numbers.fixed(worthKgHaMm, 0) + " kg/ha. "
                + range() + "Water reaches the soil without loss and has no cap.";
        var words = new ChartDocument.Words("irrigation", title(), subtitle, note, title() + ". " + subtitle + ".");
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private String range() {
        return flat.map(step -> "Single years gained "
                        + Numbers.fixed(units.dryMatter(step.leastGainMgHa()), 1) + " to "
                        + units.yieldText(step.mostGainMgHa()) + " at the dashed line. ")
                .orElse("");
    }

    private String dose() {
        return Numbers.fixed(units.water(sweep.depthMm()), units == UnitSystem.SI ? 0 : 1) + " " + units.waterUnit();
    }

    private String title() {
        IrrigationSweep.Step most = sweep.steps().get(sweep.steps().size() - 1);
        if (Double.isNaN(most.leastGainMgHa())) {
            return "No full-grown year with a comparable yield yet";
        }
        if (most.waterMm() < NOTHING_MM) {
            return "These years never called for irrigation";
        }
        if (flat.isEmpty()) {
            return "Irrigation gained less than " + Numbers.fixed(worthKgHaMm, 0)
                    + " kg/ha for a mm from the first mm on";
        }
        boolean last = flat.get().equals(most);
        return units.waterText(flat.get().waterMm()) + " of water a year gained "
                + units.yieldText(sweep.gainMgHa(flat.get()))
                + (last ? "; the response has not flattened yet" : "; from there on the response flattens");
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "depletion",
                "water_mm",
                "harvested_mg_ha",
                "gain_mg_ha",
                "least_gain_mg_ha",
                "most_gain_mg_ha",
                "marginal_kg_ha_mm");
        for (int i = 0; i < sweep.steps().size(); i++) {
            IrrigationSweep.Step step = sweep.steps().get(i);
            table.row(
                    step.depletion(),
                    step.waterMm(),
                    step.harvestedMgHa(),
                    sweep.gainMgHa(step),
                    step.leastGainMgHa(),
                    step.mostGainMgHa(),
                    sweep.marginalKgHaMm(i));
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        List<IrrigationSweep.Step> steps = sweep.steps();
        IrrigationSweep.Step most = steps.get(steps.size() - 1);
        if (Double.isNaN(most.leastGainMgHa())) {
            return;
        }
        double top = 0.1;
        for (IrrigationSweep.Step step : steps) {
            top = Math.max(top, step.harvestedMgHa());
        }
        double high = units.dryMatter(top) * 1.15;
        double wide = Math.max(units.water(20.0), units.water(most.waterMm())) * 1.06;
        Frame frame = new Frame.Builder(canvas, area)
                .x(-0.03 * wide, wide, Numbers.niceStep(wide, 6))
                .y(0, high, Numbers.niceStep(high, 5))
                .titles(
                        style.size().isThumbnail() ? "" : units.waterUnit() + " of water given in a growing season",
                        units.yieldUnit() + " dry matter")
                .right(1.2 * canvas.type().smallPx())
                .draw();
        double[] xs =
                steps.stream().mapToDouble(step -> units.water(step.waterMm())).toArray();
        double[] ys = steps.stream()
                .mapToDouble(step -> units.dryMatter(step.harvestedMgHa()))
                .toArray();
        flat.ifPresent(step -> flat(frame, step));
        canvas.outline(frame.path(xs, ys), palette.crop(), canvas.type().strokePx());
        points(frame, xs, ys);
    }

    private void flat(Frame frame, IrrigationSweep.Step step) {
        double x = frame.x(units.water(step.waterMm()));
        frame.canvas()
                .dashed(
                        new Line2D.Double(
                                x, frame.area().getY(), x, frame.area().getMaxY()),
                        palette.muted(),
                        1.3);
    }

    private void points(Frame frame, double[] xs, double[] ys) {
        Canvas canvas = frame.canvas();
        LabelPlacer placer = new LabelPlacer(canvas, frame.area());
        flat.ifPresent(step -> {
            double x = frame.x(units.water(step.waterMm()));
            placer.blockLine(x, frame.area().getY(), x, frame.area().getMaxY());
        });
        double radius = 0.34 * canvas.type().labelPx();
        for (int i = 1; i < xs.length; i++) {
            placer.blockLine(frame.x(xs[i - 1]), frame.y(ys[i - 1]), frame.x(xs[i]), frame.y(ys[i]));
        }
        for (int i = 0; i < xs.length; i++) {
            double x = frame.x(xs[i]);
            double y = frame.y(ys[i]);
            canvas.fill(
                    new java.awt.geom.Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius), palette.wet());
            placer.block(x, y, radius);
            canvas.tip(
                    x,
                    y,
                    radius,
                    units.waterText(sweep.steps().get(i).waterMm()) + " given: "
                            + units.yieldText(sweep.steps().get(i).harvestedMgHa()));
        }
        if (style.size().isThumbnail()) {
            return;
        }
        for (int i = 0; i < xs.length; i++) {
            double depletion = sweep.steps().get(i).depletion();
            String text = Double.isNaN(depletion) ? "rain only" : Numbers.fixed(100 * depletion, 0) + " % used";
            placer.place(text, frame.x(xs[i]), frame.y(ys[i]), radius + 5.0, canvas.small(), palette.muted());
        }
    }
}
