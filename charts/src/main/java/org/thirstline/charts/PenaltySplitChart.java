package org.thirstline.charts;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.calibration.years.PenaltySplit;
import org.thirstline.charts.theme.Palette;

/** What drought took by growth year: the season's own part, and what earlier seasons left behind. */
public final class PenaltySplitChart {

    private static final double NOTHING_MG_HA = 0.05;
    private static final double BAR_SHARE = 0.72;

    private final PenaltySplitView view;
    private final List<PenaltySplit.Year> years;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private PenaltySplitChart(PenaltySplitView view, ChartStyle style) {
        this.view = view;
        this.years = view.split().years();
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view the years
     * @param style look, units, source
     */
    public static ChartDocument of(PenaltySplitView view, ChartStyle style) {
        return new PenaltySplitChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = Subtitles.sentence(
                view.zone(),
                "harvest lost to drought by growth year, full-grown stand, by the season in which it arose");
        String description = title() + ". " + subtitle + ". "
                + years.stream()
                        .map(year -> year.growthYear() + ": " + units.yieldText(year.thisSeasonMgHa())
                                + " in the season, " + units.yieldText(year.carriedOverMgHa()) + " carried over")
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("penalty-split", title(), subtitle, note(), description);
        List<KeyEntry> key = List.of(
                KeyEntry.block(palette.dry(), "lost in the season itself"),
                KeyEntry.ghost(palette.dry(), palette.dryTint(), "carried over from earlier seasons"));
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private String title() {
        if (years.isEmpty()) {
            return "No full-grown year with a comparable yield yet";
        }
        double carried = view.split().meanCarriedOverMgHa();
        double all = carried + view.split().meanThisSeasonMgHa();
        if (all < NOTHING_MG_HA) {
            return "Drought took nothing in " + Subtitles.count(years.size(), "year", "years");
        }
        return "Of " + units.yieldText(all) + " lost to drought in an average year, "
                + Numbers.fixed(units.dryMatter(carried), 1) + " came from earlier seasons";
    }

    private String note() {
        double afterDry = view.split().meanAfterDryMgHa();
        String after = Double.isNaN(afterDry)
                ? ""
                : "In years after a dry one " + units.yieldText(afterDry) + " was carried over in the mean. ";
        return after
                + "Carried over here: rhizome reserve only. For comparison: carbon uptake of giant miscanthus in a field fell in"
                + " the year after the 2012 drought (Joo et al. 2016, Plant Cell Environ. 39:1928).";
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "growth_year", "penalty_this_season_mg_ha", "penalty_carried_over_mg_ha", "after_dry_season_class");
        years.forEach(year -> table.row(
                year.growthYear(), year.thisSeasonMgHa(), year.carriedOverMgHa(), year.afterDry() ? "yes" : "no"));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (years.isEmpty()) {
            return;
        }
        double top = NOTHING_MG_HA * 2.0;
        double low = 0.0;
        for (PenaltySplit.Year year : years) {
            top = Math.max(top, Math.max(0, year.thisSeasonMgHa()) + Math.max(0, year.carriedOverMgHa()));
            low = Math.min(low, Math.min(0, year.thisSeasonMgHa()) + Math.min(0, year.carriedOverMgHa()));
        }
        double high = units.dryMatter(top);
        double step = Numbers.niceStep(high, 5);
        double least = low < -NOTHING_MG_HA ? units.dryMatter(low) * 1.1 : 0.0;
        int first = years.get(0).growthYear();
        int last = years.get(years.size() - 1).growthYear();
        Frame frame = new Frame.Builder(canvas, area)
                .x(first - 0.6, last + 0.6, YieldByYearChart.yearStep(canvas, area.getWidth(), last - first + 1))
                .y(least, YieldByYearChart.headroom(high, step), step)
                .titles("", units.yieldUnit() + " dry matter")
                .draw();
        double width = Math.min(BAR_SHARE * (frame.x(1) - frame.x(0)), 90.0);
        years.forEach(year -> bar(frame, year, width));
        canvas.outline(
                new Line2D.Double(frame.area().getX(), frame.y(0), frame.area().getMaxX(), frame.y(0)),
                palette.axis(),
                1.2);
    }

    private void bar(Frame frame, PenaltySplit.Year year, double width) {
        double left = frame.x(year.growthYear()) - width / 2;
        double own = year.thisSeasonMgHa();
        double carried = year.carriedOverMgHa();
        double from = own * carried > 0.0 ? own : 0.0;
        frame.canvas().fill(block(frame, left, width, 0, own), palette.dry());
        if (Math.abs(carried) >= NOTHING_MG_HA) {
            Rectangle2D ghost = block(frame, left + 0.6, width - 1.2, from, from + carried);
            frame.canvas().fill(ghost, palette.dryTint());
            frame.canvas().outline(ghost, palette.dry(), 1.2);
        }
        Rectangle2D both = block(frame, left, width, Math.min(0.0, own + carried), Math.max(0.0, own + carried));
        frame.canvas()
                .tip(
                        both,
                        year.growthYear() + ": " + units.yieldText(own) + " of this season, "
                                + Numbers.fixed(units.dryMatter(carried), 1) + " carried over");
    }

    private Rectangle2D block(Frame frame, double left, double width, double fromMgHa, double toMgHa) {
        double a = frame.y(units.dryMatter(fromMgHa));
        double b = frame.y(units.dryMatter(toMgHa));
        return new Rectangle2D.Double(left, Math.min(a, b), width, Math.abs(a - b));
    }
}
