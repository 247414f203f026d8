package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Rain and demand, canopy, soil water and dry matter through one season, on one time axis. */
public final class SeasonChart {

    private static final double NOTHING_MG_HA = 0.05;

    private final SeasonView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final MonthScale scale;

    private SeasonChart(SeasonView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.scale = view.scale();
    }

    /**
     * Builds the chart.
     *
     * @param view the season
     * @param style look, units, source
     */
    public static ChartDocument of(SeasonView view, ChartStyle style) {
        return new SeasonChart(view, style).document();
    }

    private ChartDocument document() {
        SeasonRecord season = view.season();
        String subtitle = Subtitles.sentence(
                view.zone(), "rain and demand, canopy, soil water and dry matter through the " + kind() + "season");
        LocalDate harvest = season.dates().harvest();
        String note = harvest == null ? "" : "Harvested on " + Subtitles.date(harvest) + ".";
        String description = title() + ". " + subtitle + ". Highest leaf area index "
                + Numbers.fixed(season.value(SeasonVariable.MAX_LEAF_AREA_INDEX), 1) + ", rain in the season "
                + units.waterText(season.value(SeasonVariable.SEASON_RAIN)) + ".";
        var words = new ChartDocument.Words("season-" + season.growthYear(), title(), subtitle, note, description);
        List<KeyEntry> key = List.of(
                KeyEntry.block(palette.wet(), "rain"),
                KeyEntry.line(palette.ink(), "reference evapotranspiration"),
                KeyEntry.block(
                        palette.stress(), "short of water: under nine tenths of the transpiration it could have"));
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private String kind() {
        return view.seasonClass() == null ? "" : view.seasonClass().word() + " ";
    }

    private String title() {
        SeasonRecord season = view.season();
        if (!season.isComplete()) {
            return season.growthYear() + ": " + season.status().words();
        }
        int days = (int) Math.round(season.value(SeasonVariable.STRESSED_DAYS));
        double lost = season.value(SeasonVariable.DROUGHT_PENALTY);
        String cost = lost >= NOTHING_MG_HA ? units.yieldText(lost) + " lost to drought" : "nothing lost to drought";
        if (days == 0) {
            return season.growthYear() + ": never short of water, " + cost;
        }
        return season.growthYear() + ": short of water on " + Subtitles.count(days, "day", "days") + ", " + cost;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "date",
                "rain_mm",
                "et0_mm",
                "leaf_area_index",
                "intercepted_fraction",
                "soil_water_mm",
                "water_factor",
                "standing_mg_ha");
        for (int day = (int) scale.low(); day < scale.high(); day++) {
            table.row(
                    view.daily().date(day),
                    view.at(DailyVariable.RAIN, day),
                    view.at(DailyVariable.ET0, day),
                    view.at(DailyVariable.LEAF_AREA_INDEX, day),
                    view.at(DailyVariable.INTERCEPTED_FRACTION, day),
                    view.at(DailyVariable.SOIL_WATER, day),
                    view.at(DailyVariable.WATER_FACTOR, day),
                    view.at(DailyVariable.STANDING, day) * 0.01);
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        boolean thumbnail = style.size().isThumbnail();
        double events = thumbnail ? 0 : 1.5 * canvas.type().labelPx();
        double months = 1.7 * canvas.type().smallPx();
        Panels panels = new Panels(
                new Rectangle2D.Double(
                        area.getX(), area.getY() + events, area.getWidth(), area.getHeight() - events - months),
                0.5 * canvas.type().smallPx(),
                thumbnail ? new double[] {1, 1} : new double[] {1, 1.15, 1.05, 1});
        List<Frame> frames = new ArrayList<>();
        if (!thumbnail) {
            frames.add(rain(canvas, panels.row(0)));
        }
        frames.add(canopy(canvas, panels.row(frames.size())));
        frames.add(soil(canvas, panels.row(frames.size())));
        if (!thumbnail) {
            frames.add(dryMatter(canvas, panels.row(frames.size())));
        }
        scale.names(frames.get(frames.size() - 1));
        frames.forEach(frame -> frame.dayTips(scale, this::spoken));
        if (!thumbnail) {
            events(canvas, frames, area.getY());
        }
    }

    private String spoken(int place) {
        int day = (int) scale.low() + place;
        return Subtitles.date(view.daily().date(day)) + ": leaf area index "
                + Numbers.fixed(view.at(DailyVariable.LEAF_AREA_INDEX, day), 1) + ", water in the soil "
                + units.waterText(view.at(DailyVariable.SOIL_WATER, day)) + ", standing "
                + units.yieldText(0.01 * view.at(DailyVariable.STANDING, day));
    }

    private Frame.Builder panel(Canvas canvas, Rectangle2D row, String title) {
        double left = 2.6 * canvas.type().smallPx();
        double right = style.size().isThumbnail() ? 0 : 3.0 * canvas.type().smallPx();
        return new Frame.Builder(canvas, row)
                .x(scale.low(), scale.high(), 1000)
                .titles("", title)
                .left(left)
                .right(right)
                .noXLabels()
                .under(this::background);
    }

    /** Shades the days short of water and marks the months. */
    private void background(Frame frame) {
        scale.lines(frame);
        int day = (int) scale.low();
        while (day < scale.high()) {
            int end = day;
            while (end < scale.high() && view.shortOfWater(end)) {
                end++;
            }
            if (end > day) {
                double left = frame.x(day);
                Rectangle2D shade = new Rectangle2D.Double(
                        left,
                        frame.area().getY(),
                        frame.x(end) - left,
                        frame.area().getHeight());
                frame.canvas().fill(shade, palette.stress());
            }
            day = Math.max(end, day + 1);
        }
    }

    private double[] days(double offset) {
        double[] days = new double[scale.days()];
        for (int i = 0; i < days.length; i++) {
            days[i] = scale.low() + i + offset;
        }
        return days;
    }

    private double[] values(DailyVariable variable, double factor) {
        double[] values = new double[scale.days()];
        for (int i = 0; i < values.length; i++) {
            values[i] = factor * view.at(variable, (int) scale.low() + i);
        }
        return values;
    }

    private static double highest(double[] values) {
        double highest = 0.0;
        for (double value : values) {
            highest = Math.max(highest, value);
        }
        return highest;
    }

    private Frame rain(Canvas canvas, Rectangle2D row) {
        double[] rain = values(DailyVariable.RAIN, units.water(1.0));
        double[] demand = values(DailyVariable.ET0, units.water(1.0));
        double high = Math.max(units.water(5.0), Math.max(highest(rain), highest(demand))) * 1.05;
        Frame frame = panel(canvas, row, units.waterUnit() + "/day")
                .y(0, high, Numbers.niceStep(high, 4))
                .draw();
        double width = Math.max(0.8, 0.8 * (frame.x(1) - frame.x(0)));
        Path2D bars = new Path2D.Double();
        for (int i = 0; i < rain.length; i++) {
            if (rain[i] > 0.0) {
                double top = frame.y(rain[i]);
                bars.append(
                        new Rectangle2D.Double(
                                frame.x(scale.low() + i + 0.5) - width / 2, top, width, frame.y(0) - top),
                        false);
            }
        }
        canvas.fill(bars, palette.wet());
        canvas.outline(
                frame.path(days(0.5), demand),
                palette.ink(),
                0.5 * canvas.type().strokePx());
        return frame;
    }

    private Frame canopy(Canvas canvas, Rectangle2D row) {
        double[] days = days(0.5);
        double[] leaf = values(DailyVariable.LEAF_AREA_INDEX, 1.0);
        double high = Math.max(1.0, highest(leaf)) * 1.12;
        double[] caught = values(DailyVariable.INTERCEPTED_FRACTION, high / 1.12);
        String title =
                style.size().isThumbnail() ? "leaf area index" : "leaf area index; dashed: share of light caught";
        Frame frame =
                panel(canvas, row, title).y(0, high, Numbers.niceStep(high, 4)).draw();
        canvas.fill(frame.between(days, new double[days.length], leaf), palette.cropTint());
        canvas.outline(frame.path(days, leaf), palette.crop(), canvas.type().strokePx());
        if (!style.size().isThumbnail()) {
            canvas.dashed(
                    frame.path(days, caught),
                    palette.muted(),
                    0.6 * canvas.type().strokePx());
            double x = frame.area().getMaxX() + 0.4 * canvas.type().smallPx();
            double lift = 0.35 * canvas.type().smallPx();
            for (int percent = 0; percent <= 100; percent += 50) {
                double y = frame.y(high / 1.12 * percent / 100.0) + lift;
                canvas.text(percent + " %", x, y, canvas.small(), palette.muted(), Align.LEFT);
            }
        }
        return frame;
    }

    private Frame soil(Canvas canvas, Rectangle2D row) {
        int layers = Math.min(view.daily().layers(), view.soil().layers().size());
        double depth = units.depth(view.daily().layerBottomM(layers - 1));
        Frame frame = panel(canvas, row, "soil water by depth (" + units.depthUnit() + ")")
                .y(0, depth, Numbers.niceStep(depth, 3))
                .downward()
                .draw();
        for (int layer = 0; layer < layers; layer++) {
            double top = frame.y(layer == 0 ? 0 : units.depth(view.daily().layerBottomM(layer - 1)));
            double bottom = frame.y(units.depth(view.daily().layerBottomM(layer)));
            layer(frame, layer, top, bottom - top);
        }
        SoilKey.paint(canvas, frame.area());
        return frame;
    }

    /** Draws one layer as stretches of equal colour. */
    private void layer(Frame frame, int layer, double top, double height) {
        int day = (int) scale.low();
        while (day < scale.high()) {
            int step = palette.soilStep(view.availableShare(layer, day));
            int end = day + 1;
            while (end < scale.high() && palette.soilStep(view.availableShare(layer, end)) == step) {
                end++;
            }
            double left = frame.x(day);
            double right = frame.x(Math.min(end, scale.high()));
            // Neighbours overlap by a hair, so that no seam shines through.
            double hair = end < scale.high() ? 0.4 : 0.0;
            frame.canvas()
                    .fill(
                            new Rectangle2D.Double(left, top, right - left + hair, height + 0.4),
                            palette.soil().get(step));
            day = end;
        }
    }

    private Frame dryMatter(Canvas canvas, Rectangle2D row) {
        double[] days = days(0.5);
        double[] standing = values(DailyVariable.STANDING, units.dryMatter(0.01));
        double high = Math.max(0.5, highest(standing)) * 1.2;
        Frame frame = panel(canvas, row, units.yieldUnit() + " standing dry matter")
                .y(0, high, Numbers.niceStep(high, 4))
                .draw();
        canvas.fill(frame.between(days, new double[days.length], standing), palette.cropTint());
        canvas.outline(frame.path(days, standing), palette.crop(), canvas.type().strokePx());
        peak(canvas, frame, days, standing);
        return frame;
    }

    private void peak(Canvas canvas, Frame frame, double[] days, double[] standing) {
        int at = 0;
        for (int i = 0; i < standing.length; i++) {
            at = standing[i] > standing[at] ? i : at;
        }
        String text = "peak " + Numbers.fixed(standing[at], 1);
        Font font = canvas.strongSmall();
        double half = Canvas.width(text, font) / 2;
        double x = Math.max(frame.area().getX() + half, Math.min(frame.area().getMaxX() - half, frame.x(days[at])));
        canvas.text(text, x, frame.y(standing[at]) - 0.5 * font.getSize2D(), font, palette.ink(), Align.CENTER);
    }

    /** Marks emergence, full canopy and end of the canopy through all panels, and names them above. */
    private void events(Canvas canvas, List<Frame> frames, double labelTop) {
        var dates = view.season().dates();
        EventLabels labels = new EventLabels(canvas, scale, frames, labelTop);
        String cause = dates.canopyEndCause() == null
                ? ""
                : ": " + dates.canopyEndCause().words();
        labels.add(dates.emergence(), "emerged", "", Align.LEFT);
        labels.add(dates.canopyEnd(), "canopy ended", cause, Align.RIGHT);
        labels.add(dates.fullCanopy(), "full canopy", "", Align.CENTER);
    }
}
