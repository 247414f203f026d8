package org.thirstline.charts;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Seasons side by side through the year: rain so far against the mean, soil water, leaf area, light, dry matter, water factor. */
public final class CompareChart {

    /** Days over which the water factor is averaged, so that the curves can be told apart. */
    private static final int SMOOTHING_DAYS = 7;

    private static final int DAYS_OF_MONTH = 31;
    private static final int DATES = 12 * DAYS_OF_MONTH;

    /** The 29th of February. */
    private static final int LEAP_DAY = DAYS_OF_MONTH + 28;

    private static final double THREE_COLUMNS_PX = 900.0;

    private static final float[][] DASHES = {{}, {9f, 5f}, {2.5f, 4f}, {12f, 4f, 3f, 4f}};

    private final CompareView view;
    private final CompareTopic topic;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final CommonSeason common;
    private final MonthScale scale;

    /** A small multiple: its title, and a season's values on a day of its own calendar. */
    private record Panel(
            String title,
            double least,
            Reader reader,
            @Nullable DailyVariable added) {
        Panel(String title, double least, Reader reader) {
            this(title, least, reader, null);
        }
    }

    @FunctionalInterface
    private interface Reader {
        double at(SeasonView season, int day, double before);
    }

    private CompareChart(CompareView view, ChartStyle style, CompareTopic topic) {
        this.topic = topic;
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.common = new CommonSeason(view.seasons());
        this.scale = common.scale();
    }

    /**
     * Builds the chart.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument of(CompareView view, ChartStyle style) {
        return new CompareChart(view, style, CompareTopic.ALL).document();
    }

    /**
     * Builds the chart of rain and reference evapotranspiration added up, against the mean of all years.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument water(CompareView view, ChartStyle style) {
        return new CompareChart(view, style, CompareTopic.WATER).document();
    }

    /**
     * Builds the chart of standing dry matter.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument growth(CompareView view, ChartStyle style) {
        return new CompareChart(view, style, CompareTopic.GROWTH).document();
    }

    /**
     * Builds the chart of leaf area and light.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument canopy(CompareView view, ChartStyle style) {
        return new CompareChart(view, style, CompareTopic.CANOPY).document();
    }

    private ChartDocument document() {
        String title = topic.title(view, units);
        String subtitle = topic.subtitle(view);
        String note = topic == CompareTopic.WATER ? "Dashed in grey: mean of all years of the weather." : "";
        var words = new ChartDocument.Words(topic.id(), title, subtitle, note, title + ". " + subtitle + ".");
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "growth_year",
                "date",
                "rain_mm",
                "et0_mm",
                "soil_water_mm",
                "leaf_area_index",
                "intercepted_fraction",
                "standing_mg_ha",
                "water_factor");
        for (SeasonView season : view.seasons()) {
            MonthScale own = season.scale();
            for (int day = (int) own.low(); day < own.high(); day++) {
                table.row(
                        season.season().growthYear(),
                        season.daily().date(day),
                        season.at(DailyVariable.RAIN, day),
                        season.at(DailyVariable.ET0, day),
                        season.at(DailyVariable.SOIL_WATER, day),
                        season.at(DailyVariable.LEAF_AREA_INDEX, day),
                        season.at(DailyVariable.INTERCEPTED_FRACTION, day),
                        season.at(DailyVariable.STANDING, day) * 0.01,
                        season.at(DailyVariable.WATER_FACTOR, day));
            }
        }
        return table.build();
    }

    /** A panel of something that adds up day by day, with its mean over all years. */
    private Panel soFar(String of, DailyVariable variable) {
        return new Panel(
                units.waterUnit() + " of " + of + (style.size().isThumbnail() ? " so far" : " so far (dashed: mean)"),
                units.water(10),
                (season, day, before) -> (Double.isNaN(before) ? 0.0 : before) + units.water(season.at(variable, day)),
                variable);
    }

    private List<Panel> panels() {
        Panel rain = soFar("rain", DailyVariable.RAIN);
        String asked = style.size().isThumbnail() ? "ET0" : "reference evapotranspiration";
        Panel demand = soFar(asked, DailyVariable.ET0);
        Panel soil = new Panel(
                units.waterUnit() + " of water in the soil",
                units.water(10),
                (season, day, before) -> units.water(season.at(DailyVariable.SOIL_WATER, day)));
        Panel leaves = new Panel(
                "leaf area index", 0.5, (season, day, before) -> season.at(DailyVariable.LEAF_AREA_INDEX, day));
        Panel light = new Panel(
                "share of light caught",
                1.0,
                (season, day, before) -> season.at(DailyVariable.INTERCEPTED_FRACTION, day));
        Panel standing = new Panel(
                units.yieldUnit() + " standing dry matter",
                units.dryMatter(0.5),
                (season, day, before) -> units.dryMatter(0.01) * season.at(DailyVariable.STANDING, day));
        Panel factor = new Panel("water factor, " + SMOOTHING_DAYS + "-day mean", 1.0, CompareChart::smoothedFactor);
        boolean thumbnail = style.size().isThumbnail();
        return switch (topic) {
            case ALL -> thumbnail ? List.of(soil, standing) : List.of(rain, soil, leaves, light, standing, factor);
            case WATER -> List.of(rain, demand);
            case GROWTH -> List.of(standing);
            case CANOPY -> List.of(leaves, light);
        };
    }

    private static double smoothedFactor(SeasonView season, int day, double before) {
        if (!season.isGreen(day)) {
            return Double.NaN;
        }
        double sum = 0.0;
        int count = 0;
        for (int near = day - SMOOTHING_DAYS / 2; near <= day + SMOOTHING_DAYS / 2; near++) {
            if (near >= 0 && near < season.daily().days() && season.isGreen(near)) {
                sum += season.at(DailyVariable.WATER_FACTOR, near);
                count++;
            }
        }
        return sum / count;
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        List<Panel> panels = panels();
        boolean wide = area.getWidth() > 1.2 * area.getHeight();
        int columns = panels.size() == 1
                ? 1
                : panels.size() == 2 ? (wide ? 2 : 1) : area.getWidth() > THREE_COLUMNS_PX ? 3 : 2;
        int rows = (panels.size() + columns - 1) / columns;
        double gap = 1.6 * canvas.type().labelPx();
        double width = (area.getWidth() - (columns - 1) * gap) / columns;
        double height = area.getHeight() / rows;
        for (int i = 0; i < panels.size(); i++) {
            Rectangle2D cell = new Rectangle2D.Double(
                    area.getX() + (i % columns) * (width + gap), area.getY() + (i / columns) * height, width, height);
            panel(canvas, cell, panels.get(i));
        }
    }

    private double[] values(SeasonView season, Panel panel) {
        double[] values = new double[scale.days()];
        double before = Double.NaN;
        for (int i = 0; i < values.length; i++) {
            int day = common.dayOf(season, i);
            // A year without 29 February keeps the value of the day before.
            values[i] = day == CommonSeason.NO_DAY
                    ? heldOver(season, i, before)
                    : panel.reader().at(season, day, before);
            before = values[i];
        }
        return values;
    }

    private double heldOver(SeasonView season, int place, double before) {
        boolean goesOn = place + 1 < scale.days() && common.dayOf(season, place + 1) != CommonSeason.NO_DAY;
        return goesOn ? before : Double.NaN;
    }

    private void panel(Canvas canvas, Rectangle2D cell, Panel panel) {
        List<double[]> lines =
                view.seasons().stream().map(season -> values(season, panel)).toList();
        double[] normal = panel.added() == null ? new double[0] : meanSoFar(panel.added());
        double high = Math.max(panel.least(), normal.length > 0 ? normal[normal.length - 1] : 0.0);
        for (double[] line : lines) {
            for (double value : line) {
                high = value > high ? value : high;
            }
        }
        high *= 1.06;
        Frame frame = new Frame.Builder(canvas, cell)
                .x(scale.low(), scale.high(), 1000)
                .y(0, high, Numbers.niceStep(high, 3))
                .titles("", panel.title())
                .left(3.0 * canvas.type().smallPx())
                .right(style.size().isThumbnail() ? 0 : Canvas.width(" 2000", canvas.strongSmall()))
                .ownXLabels()
                .under(scale::lines)
                .draw();
        if (normal.length > 0) {
            canvas.dashed(frame.path(places(), normal), palette.muted(), 1.4);
        }
        for (int i = 0; i < lines.size(); i++) {
            line(frame, lines.get(i), i);
        }
        scale.names(frame);
        frame.dayTips(scale, place -> spoken(lines, place));
        if (!style.size().isThumbnail()) {
            ends(frame, lines);
        }
    }

    private String spoken(List<double[]> lines, int place) {
        List<String> values = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            double value = lines.get(i)[place];
            int year = view.seasons().get(i).season().growthYear();
            values.add(year + " " + (Double.isNaN(value) ? "none" : Numbers.fixed(value, value < 10.0 ? 2 : 0)));
        }
        return Subtitles.dayMonth(scale.from().plusDays(place)) + ": " + String.join(", ", values);
    }

    /** Adds up the mean of each date over every year of the run that has it: for rain, the gap below it is the deficit so far. */
    private double[] meanSoFar(DailyVariable variable) {
        DailyResults daily = view.seasons().get(0).daily();
        double[] totals = new double[DATES];
        int[] years = new int[DATES];
        for (int day = 0; day < daily.days(); day++) {
            int date = dateIndex(daily.date(day));
            totals[date] += daily.at(variable, day);
            years[date]++;
        }
        double[] sums = new double[scale.days()];
        double sum = 0.0;
        for (int i = 0; i < sums.length; i++) {
            int date = dateIndex(scale.from().plusDays(i));
            sum += years[date] == 0 || date == LEAP_DAY ? 0.0 : units.water(totals[date] / years[date]);
            sums[i] = sum;
        }
        return sums;
    }

    /** One number for each date, the same in every year. */
    private static int dateIndex(LocalDate date) {
        return DAYS_OF_MONTH * (date.getMonthValue() - 1) + date.getDayOfMonth() - 1;
    }

    private double[] places() {
        double[] xs = new double[scale.days()];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = i + 0.5;
        }
        return xs;
    }

    private void line(Frame frame, double[] values, int index) {
        Path2D path = frame.path(places(), values);
        Canvas canvas = frame.canvas();
        float[] dash = DASHES[sameClassBefore(index) % DASHES.length];
        float width = 0.85f * canvas.type().strokePx();
        canvas.graphics()
                .setStroke(
                        dash.length == 0
                                ? new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                                : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, dash, 0f));
        canvas.graphics().setColor(palette.of(view.seasons().get(index).seasonClass()));
        canvas.graphics().draw(path);
    }

    private int sameClassBefore(int index) {
        int count = 0;
        for (int i = 0; i < index; i++) {
            count += view.seasons().get(i).seasonClass()
                            == view.seasons().get(index).seasonClass()
                    ? 1
                    : 0;
        }
        return count;
    }

    /** Names the lines at their right ends, pushed apart where they would touch. */
    private void ends(Frame frame, List<double[]> lines) {
        Canvas canvas = frame.canvas();
        Font font = canvas.strongSmall();
        List<double[]> ends = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            double[] line = lines.get(i);
            int last = line.length - 1;
            while (last > 0 && Double.isNaN(line[last])) {
                last--;
            }
            if (!Double.isNaN(line[last])) {
                ends.add(new double[] {frame.y(line[last]), i, frame.x(last + 0.5)});
            }
        }
        ends.sort(Comparator.comparingDouble(end -> end[0]));
        double gap = 1.02 * font.getSize2D();
        double lowest = frame.area().getMaxY() - (ends.size() - 1) * gap;
        double y = Double.NEGATIVE_INFINITY;
        for (double[] end : ends) {
            y = Math.max(y + gap, Math.min(end[0], lowest));
            lowest += gap;
            SeasonView season = view.seasons().get((int) end[1]);
            String year = String.valueOf(season.season().growthYear());
            double x = frame.area().getMaxX() + 0.3 * font.getSize2D();
            canvas.text(year, x, y + 0.35 * font.getSize2D(), font, palette.ink(), Align.LEFT);
            canvas.fill(
                    new Rectangle2D.Double(x, y + 0.42 * font.getSize2D(), Canvas.width(year, font), 2.2),
                    palette.of(season.seasonClass()));
        }
    }

    /** Says what each season came to. */
    private List<KeyEntry> key() {
        return view.seasons().stream()
                .map(season -> KeyEntry.season(
                        palette, season.seasonClass(), season.season().growthYear() + ": " + verdict(season.season())))
                .toList();
    }

    private String verdict(SeasonRecord record) {
        if (!record.isComplete()) {
            return record.status().words();
        }
        double loss = Math.max(0.0, record.value(SeasonVariable.DROUGHT_PENALTY));
        return units.yieldText(record.value(SeasonVariable.HARVESTED)) + " harvested, "
                + Numbers.fixed(units.dryMatter(loss), 1) + " lost to drought";
    }
}
