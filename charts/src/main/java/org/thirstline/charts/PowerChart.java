package org.thirstline.charts;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.trial.PowerCurve;
import org.thirstline.charts.theme.Palette;

/** The chance that a trial finds a decline, against how fast the decline is, for the trial as it is and for larger ones. */
public final class PowerChart {

    private static final double WHOLE = 100.0;
    private static final double SURE = 0.995;
    private static final int FEWEST_RATES = 4;

    private final PowerView view;
    private final ChartStyle style;
    private final Palette palette;

    private PowerChart(PowerView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view powers of each design, the trial as it is first
     * @param style look, source
     */
    public static ChartDocument of(PowerView view, ChartStyle style) {
        return new PowerChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = "Chance of finding a decline that starts after age " + view.onsetAge()
                + ", by how much is lost each year, for this trial and for larger ones";
        String description =
                title() + ". " + view.curves().stream().map(PowerChart::spoken).collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("power", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private static String spoken(PowerCurve curve) {
        StringBuilder text = new StringBuilder(curve.design()).append(": ");
        for (int i = 0; i < curve.power().length; i++) {
            text.append(i > 0 ? ", " : "")
                    .append(percent(curve.power()[i]))
                    .append(" at ")
                    .append(percent(curve.ratePerYear()[i]));
        }
        return text.toString();
    }

    private static String percent(double share) {
        return Numbers.fixed(WHOLE * share, 0) + " %";
    }

    private String title() {
        return view.smallestFound().isPresent()
                ? "This trial finds a decline of "
                        + Numbers.fixed(WHOLE * view.smallestFound().getAsDouble(), 1)
                        + " % a year in four cases of five"
                : "This trial finds no decline, however fast, in four cases of five";
    }

    private String note() {
        String scatter = view.scatterAssumed()
                ? "Scatter between plots and years is assumed, since the trial is too short to show its own. "
                : "Scatter between plots and years as found in this trial. ";
        return scatter + "By simulated trials, each tested as a real one is; coming weather repeats past weather.";
    }

    private Color color(int index) {
        return index < 2 ? palette.ink() : palette.middle();
    }

    private static boolean dashed(int index) {
        return index % 2 == 1;
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        for (int i = 0; i < view.curves().size(); i++) {
            String design = view.curves().get(i).design();
            entries.add(dashed(i) ? KeyEntry.dash(color(i), design) : KeyEntry.line(color(i), design));
        }
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("design", "decline_pct_per_year", "chance_found_pct");
        for (PowerCurve curve : view.curves()) {
            for (int i = 0; i < curve.power().length; i++) {
                table.row(curve.design(), WHOLE * curve.ratePerYear()[i], WHOLE * curve.power()[i]);
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double last = WHOLE * lastRate();
        Frame frame = new Frame.Builder(canvas, area)
                .x(0, last, Numbers.niceStep(last, style.size().isThumbnail() ? 4 : 8))
                .y(0, 104, 20)
                .right(0.9 * canvas.type().smallPx())
                .titles(
                        style.size().isThumbnail() ? "" : "decline past the onset (% of yield lost each year)",
                        "% of trials that find it")
                .draw();
        LabelPlacer placer = new LabelPlacer(canvas, frame.area());
        for (int i = view.curves().size() - 1; i >= 0; i--) {
            curve(frame, i, placer);
        }
        wanted(frame, placer);
        double[] rates = Arrays.stream(view.curves().get(0).ratePerYear())
                .map(rate -> WHOLE * rate)
                .toArray();
        frame.tips(
                Arrays.copyOf(rates, shown(rates)),
                i -> Numbers.fixed(rates[i], 1) + " % a year: "
                        + view.curves().stream()
                                .map(curve -> curve.design() + " " + Numbers.fixed(WHOLE * curve.power()[i], 0) + " %")
                                .collect(java.util.stream.Collectors.joining(", ")));
    }

    /** Leaves out rates that every design is all but sure to find. */
    private double lastRate() {
        double[] rates = view.curves().get(0).ratePerYear();
        for (int i = FEWEST_RATES; i < rates.length; i++) {
            int at = i - 1;
            if (view.curves().stream().allMatch(curve -> curve.power()[at] >= SURE)) {
                return rates[i];
            }
        }
        return rates[rates.length - 1];
    }

    private void wanted(Frame frame, LabelPlacer placer) {
        Canvas canvas = frame.canvas();
        double y = frame.y(WHOLE * AgeOptions.WANTED_POWER);
        double left = frame.area().getX();
        double right = frame.area().getMaxX();
        canvas.outline(new Line2D.Double(left, y, right, y), palette.muted(), 1.2);
        if (style.size().isThumbnail()) {
            return;
        }
        Font font = canvas.small();
        placer.blockLine(left, y, right, y);
        double half = 0.5 * Canvas.width("four in five", font) + 0.3 * font.getSize2D();
        for (double x = right - half; x > left + half; x -= half) {
            if (placer.place("four in five", x, y, 0.35 * font.getSize2D(), font, palette.muted())) {
                return;
            }
        }
    }

    private void curve(Frame frame, int index, LabelPlacer placer) {
        PowerCurve curve = view.curves().get(index);
        double[] rates = curve.ratePerYear();
        double[] power = curve.power();
        for (int i = 0; i < rates.length; i++) {
            rates[i] *= WHOLE;
            power[i] *= WHOLE;
        }
        int shown = shown(rates);
        rates = Arrays.copyOf(rates, shown);
        power = Arrays.copyOf(power, shown);
        for (int i = 1; i < shown; i++) {
            placer.blockLine(frame.x(rates[i - 1]), frame.y(power[i - 1]), frame.x(rates[i]), frame.y(power[i]));
        }
        Path2D path = frame.path(rates, power);
        float width = frame.canvas().type().strokePx();
        if (dashed(index)) {
            frame.canvas().dashed(path, color(index), 0.75 * width);
        } else {
            frame.canvas().outline(path, color(index), index == 0 ? 1.2 * width : 0.75 * width);
        }
    }

    private int shown(double[] rates) {
        double last = WHOLE * lastRate();
        return (int)
                Arrays.stream(rates).filter(rate -> rate <= last * 1.000001).count();
    }
}
