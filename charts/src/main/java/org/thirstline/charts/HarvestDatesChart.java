package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.time.MonthDay;
import java.time.format.TextStyle;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.thirstline.calibration.years.HarvestDates;
import org.thirstline.calibration.years.HarvestDates.CutDate;
import org.thirstline.calibration.years.HarvestDates.Spread;
import org.thirstline.charts.theme.Palette;

/** What a cut on each half month brings in, how moist, and in how many years it could be done. */
public final class HarvestDatesChart {

    private final HarvestDates dates;
    private final List<CutDate> cuts;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private HarvestDatesChart(HarvestDates dates, ChartStyle style) {
        this.dates = dates;
        this.cuts = dates.dates();
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param dates the half months
     * @param style look, units, source
     */
    public static ChartDocument of(HarvestDates dates, ChartStyle style) {
        return new HarvestDatesChart(dates, style).document();
    }

    private static String day(MonthDay day) {
        return day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }

    private ChartDocument document() {
        int years = cuts.stream().mapToInt(CutDate::years).max().orElse(0);
        String subtitle = Subtitles.sentence(
                dates.zone(),
                "a cut on each half month from the end of the canopy to the next shoots, "
                        + Subtitles.count(years, "full-grown year", "full-grown years")
                        + "; line: mean, band: middle eight tenths of years");
        String note = "Ready: moisture at most " + Numbers.fixed(dates.moistureLimitPct(), 0)
                + " % and ground frozen or topsoil at most " + Numbers.fixed(100 * dates.wetnessLimit(), 0)
                + " % of field capacity. Above about 20 % moisture bales can heat, grow mould and catch fire in storage.";
        String description = title() + ". "
                + cuts.stream()
                        .map(cut -> day(cut.day()) + ": "
                                + units.yieldText(cut.harvested().mean()) + ", "
                                + Numbers.fixed(cut.moisture().mean(), 0) + " % moisture, ready in "
                                + Numbers.fixed(100 * cut.readyShare(), 0) + " % of years")
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("harvest-dates", title(), subtitle, note, description);
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private String title() {
        if (cuts.isEmpty()) {
            return "No full-grown year with a standing crop to cut yet";
        }
        CutDate first = cuts.get(0);
        CutDate best = cuts.stream()
                .max(Comparator.comparingDouble(CutDate::readyShare))
                .orElseThrow();
        double cost = first.harvested().mean() - best.harvested().mean();
        if (best.readyShare() == 0.0) {
            return "In none of the years was a crop dry enough on ground that carries a machine";
        }
        return "On " + day(best.day()) + " the crop could be baled in " + Numbers.fixed(100 * best.readyShare(), 0)
                + " % of years; waiting from " + day(first.day()) + " cost " + units.yieldText(cost);
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "date",
                "years",
                "harvested_mean_mg_ha",
                "harvested_low_mg_ha",
                "harvested_high_mg_ha",
                "moisture_mean_pct",
                "moisture_low_pct",
                "moisture_high_pct",
                "dry_share",
                "carries_share",
                "ready_share");
        for (CutDate cut : cuts) {
            table.row(
                    cut.day().toString().substring(2),
                    cut.years(),
                    cut.harvested().mean(),
                    cut.harvested().low(),
                    cut.harvested().high(),
                    cut.moisture().mean(),
                    cut.moisture().low(),
                    cut.moisture().high(),
                    cut.dryShare(),
                    cut.carriesShare(),
                    cut.readyShare());
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (cuts.isEmpty()) {
            return;
        }
        double labels = 1.7 * canvas.type().smallPx();
        boolean thumbnail = style.size().isThumbnail();
        Panels panels = new Panels(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - labels),
                0.6 * canvas.type().smallPx(),
                thumbnail ? new double[] {1, 1} : new double[] {1.2, 1.2, 1});
        double mass =
                cuts.stream().mapToDouble(cut -> cut.harvested().high()).max().orElse(1.0);
        Frame harvested = frame(
                canvas, panels.row(0), units.yieldUnit() + " brought in", 1.12 * units.dryMatter(Math.max(0.1, mass)));
        spread(harvested, CutDate::harvested, units.dryMatter(1.0), true);
        Frame last = harvested;
        if (!thumbnail) {
            double moist = cuts.stream()
                    .mapToDouble(cut -> cut.moisture().high())
                    .max()
                    .orElse(1.0);
            last = frame(
                    canvas, panels.row(1), "% moisture, wet basis", 1.12 * Math.max(moist, dates.moistureLimitPct()));
            spread(last, CutDate::moisture, 1.0, false);
            limit(last);
        }
        last = frame(canvas, panels.row(thumbnail ? 1 : 2), "% of years ready: dry enough and the ground carries", 119);
        shares(last);
        Frame ready = last;
        double[] places = new double[cuts.size()];
        java.util.Arrays.setAll(places, i -> i);
        for (Frame frame : List.of(harvested, ready)) {
            frame.tips(places, i -> spoken(cuts.get(i)));
        }
        names(last);
    }

    private String spoken(CutDate cut) {
        return day(cut.day()) + ": " + units.yieldText(cut.harvested().mean()) + " brought in, "
                + Numbers.fixed(cut.moisture().mean(), 0) + " % moisture, ready in "
                + Numbers.fixed(100 * cut.readyShare(), 0) + " % of years";
    }

    private Frame frame(Canvas canvas, Rectangle2D row, String title, double high) {
        return new Frame.Builder(canvas, row)
                .x(-0.6, cuts.size() - 0.4, 1000)
                .y(0, high, high == 119 ? 50 : Numbers.niceStep(high, 4))
                .titles("", title)
                .left(2.8 * canvas.type().smallPx())
                .noXLabels()
                .draw();
    }

    private void spread(Frame frame, Function<CutDate, Spread> part, double factor, boolean crop) {
        double[] xs = new double[cuts.size()];
        double[] mean = new double[cuts.size()];
        double[] low = new double[cuts.size()];
        double[] high = new double[cuts.size()];
        for (int i = 0; i < cuts.size(); i++) {
            Spread spread = part.apply(cuts.get(i));
            xs[i] = i;
            mean[i] = factor * spread.mean();
            low[i] = factor * spread.low();
            high[i] = factor * spread.high();
        }
        Canvas canvas = frame.canvas();
        canvas.fill(frame.between(xs, low, high), crop ? palette.cropTint() : palette.wetTint());
        canvas.outline(
                frame.path(xs, mean),
                crop ? palette.crop() : palette.wet(),
                canvas.type().strokePx());
    }

    private void limit(Frame frame) {
        Canvas canvas = frame.canvas();
        double y = frame.y(dates.moistureLimitPct());
        canvas.dashed(new Line2D.Double(frame.area().getX(), y, frame.area().getMaxX(), y), palette.dry(), 1.4);
        double gap = 0.4 * canvas.type().smallPx();
        String text = "limit " + Numbers.fixed(dates.moistureLimitPct(), 0) + " %";
        canvas.text(text, frame.area().getX() + gap, y - gap, canvas.small(), palette.ink(), Align.LEFT);
    }

    private void shares(Frame frame) {
        Canvas canvas = frame.canvas();
        double width = 0.7 * (frame.x(1) - frame.x(0));
        Font font = canvas.strongSmall();
        for (int i = 0; i < cuts.size(); i++) {
            double percent = 100.0 * cuts.get(i).readyShare();
            double top = frame.y(percent);
            canvas.fill(new Rectangle2D.Double(frame.x(i) - width / 2, top, width, frame.y(0) - top), palette.crop());
            String text = Numbers.fixed(percent, 0);
            if (Canvas.width(text, font) < width) {
                canvas.text(text, frame.x(i), top - 0.3 * font.getSize2D(), font, palette.ink(), Align.CENTER);
            }
        }
    }

    private void names(Frame frame) {
        Canvas canvas = frame.canvas();
        Font font = canvas.small();
        double slot = frame.x(1) - frame.x(0);
        int every = (int) Math.max(1, Math.ceil(1.25 * Canvas.width("15 May", font) / slot));
        double baseline = frame.area().getMaxY() + 1.35 * font.getSize2D();
        for (int i = 0; i < cuts.size(); i += every) {
            String text = day(cuts.get(i).day());
            double half = Canvas.width(text, font) / 2;
            double x = Math.min(Math.max(frame.x(i), frame.area().getX() + half), canvas.right() - half);
            canvas.text(text, x, baseline, font, palette.muted(), Align.CENTER);
        }
    }
}
