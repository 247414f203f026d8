package org.thirstline.charts;

import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;

/** Soil water by depth through several seasons, one picture above the other on one axis of dates. */
public final class SoilWaterCompareChart {

    private final CompareView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final CommonSeason common;

    private SoilWaterCompareChart(CompareView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.common = new CommonSeason(view.seasons());
    }

    /**
     * Builds the chart.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument of(CompareView view, ChartStyle style) {
        return new SoilWaterCompareChart(view, style).document();
    }

    private ChartDocument document() {
        String years = view.seasons().stream()
                .map(season -> String.valueOf(season.season().growthYear()))
                .collect(Collectors.joining(", "));
        String subtitle = Subtitles.sentence(view.zone(), "soil water by depth and day, growth years " + years);
        var words = new ChartDocument.Words("soil-water", title(), subtitle, "", title() + ". " + subtitle + ".");
        return new ChartDocument(
                words,
                style,
                List.of(KeyEntry.block(palette.dry(), "days short of water, above each picture")),
                this::table,
                this::paint);
    }

    private int daysShort(SeasonView season) {
        int days = 0;
        for (int place = 0; place < common.scale().days(); place++) {
            int day = common.dayOf(season, place);
            days += day != CommonSeason.NO_DAY && season.shortOfWater(day) ? 1 : 0;
        }
        return days;
    }

    private String title() {
        return "Days short of water: "
                + view.seasons().stream()
                        .map(season ->
                                daysShort(season) + " in " + season.season().growthYear())
                        .collect(Collectors.joining(", "));
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder("growth_year", "date", "soil_water_mm", "water_factor");
        for (SeasonView season : view.seasons()) {
            for (int place = 0; place < common.scale().days(); place++) {
                int day = common.dayOf(season, place);
                if (day != CommonSeason.NO_DAY) {
                    table.row(
                            season.season().growthYear(),
                            season.daily().date(day),
                            season.at(DailyVariable.SOIL_WATER, day),
                            season.at(DailyVariable.WATER_FACTOR, day));
                }
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double months = 1.7 * canvas.type().smallPx();
        double[] weights = new double[view.seasons().size()];
        java.util.Arrays.fill(weights, 1.0);
        Panels panels = new Panels(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - months),
                0.5 * canvas.type().smallPx(),
                weights);
        Frame last = null;
        for (int i = 0; i < weights.length; i++) {
            last = panel(canvas, panels.row(i), view.seasons().get(i));
            if (i == 0) {
                SoilKey.paint(canvas, last.area());
            }
        }
        if (last != null) {
            common.scale().names(last);
        }
    }

    private String title(SeasonView season) {
        SeasonRecord record = season.season();
        String kind =
                season.seasonClass() == null ? "" : " (" + season.seasonClass().word() + ")";
        return record.growthYear() + kind + ", depth in " + units.depthUnit();
    }

    private Frame panel(Canvas canvas, Rectangle2D row, SeasonView season) {
        int layers = Math.min(season.daily().layers(), season.soil().layers().size());
        double depth = units.depth(season.daily().layerBottomM(layers - 1));
        Frame frame = new Frame.Builder(canvas, row)
                .x(common.scale().low(), common.scale().high(), 1000)
                .y(0, depth, Numbers.niceStep(depth, row.getHeight() > 110 ? 3 : 1))
                .downward()
                .titles("", title(season))
                .left(2.6 * canvas.type().smallPx())
                .noXLabels()
                .draw();
        for (int layer = 0; layer < layers; layer++) {
            double top = frame.y(layer == 0 ? 0 : units.depth(season.daily().layerBottomM(layer - 1)));
            double bottom = frame.y(units.depth(season.daily().layerBottomM(layer)));
            layer(frame, season, layer, new double[] {top, bottom - top});
        }
        shortDays(frame, season);
        frame.dayTips(common.scale(), place -> spoken(season, place));
        return frame;
    }

    private String spoken(SeasonView season, int place) {
        int day = common.dayOf(season, place);
        return day == CommonSeason.NO_DAY
                ? "no day of " + season.season().growthYear()
                : Subtitles.date(season.daily().date(day)) + ": "
                        + units.waterText(season.at(DailyVariable.SOIL_WATER, day)) + " of water in the soil";
    }

    private int step(SeasonView season, int layer, int place) {
        int day = common.dayOf(season, place);
        return day == CommonSeason.NO_DAY ? -1 : palette.soilStep(season.availableShare(layer, day));
    }

    /** Draws one layer as stretches of equal colour. */
    private void layer(Frame frame, SeasonView season, int layer, double[] topAndHeight) {
        int place = 0;
        int days = common.scale().days();
        while (place < days) {
            int step = step(season, layer, place);
            int end = place + 1;
            while (end < days && step(season, layer, end) == step) {
                end++;
            }
            if (step >= 0) {
                double left = frame.x(place);
                double hair = end < days ? 0.4 : 0.0;
                frame.canvas()
                        .fill(
                                new Rectangle2D.Double(
                                        left, topAndHeight[0], frame.x(end) - left + hair, topAndHeight[1] + 0.8),
                                palette.soil().get(step));
            }
            place = end;
        }
    }

    /** Marks the days short of water by a line along the upper edge. */
    private void shortDays(Frame frame, SeasonView season) {
        for (int place = 0; place < common.scale().days(); place++) {
            int day = common.dayOf(season, place);
            if (day != CommonSeason.NO_DAY && season.shortOfWater(day)) {
                double left = frame.x(place);
                frame.canvas()
                        .fill(
                                new Rectangle2D.Double(
                                        left, frame.area().getY() - 3.5, frame.x(place + 1) - left + 0.4, 3.5),
                                palette.dry());
            }
        }
    }
}
