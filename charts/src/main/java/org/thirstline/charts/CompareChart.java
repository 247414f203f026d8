package org.thirstline.charts;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Seasons side by side through the year: rain so far, soil water, leaf area, dry matter, water factor. */
public final class CompareChart {

    /** The leap year that all seasons are laid over, so that every date has a place. */
    private static final int COMMON_YEAR = 2000;

    /** Days over which the water factor is averaged, so that the curves can be told apart. */
    private static final int SMOOTHING_DAYS = 7;

    private static final float[][] DASHES = {{}, {9f, 5f}, {2.5f, 4f}, {12f, 4f, 3f, 4f}};

    private final CompareView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final MonthScale scale;

    /** A small multiple: its title, and a season's values on a day of its own calendar. */
    private record Panel(String title, double least, Reader reader) {}

    @FunctionalInterface
    private interface Reader {
        double at(SeasonView season, int day, double before);
    }

    private CompareChart(CompareView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.scale = commonScale(view.seasons());
    }

    /**
     * Builds the chart.
     *
     * @param view the seasons
     * @param style look, units, source
     */
    public static ChartDocument of(CompareView view, ChartStyle style) {
        return new CompareChart(view, style).document();
    }

    private static int shift(SeasonView season) {
        return COMMON_YEAR - season.season().growthYear();
    }

    private static MonthScale commonScale(List<SeasonView> seasons) {
        LocalDate from = seasons.stream()
                .map(season -> season.scale().from().plusYears(shift(season)))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        LocalDate to = seasons.stream()
                .map(season -> season.scale().to().plusYears(shift(season)))
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return new MonthScale(from, from, to);
    }

    private ChartDocument document() {
        String years = view.seasons().stream()
                .map(season -> season.season().growthYear()
                        + (season.seasonClass() == null
                                ? ""
                                : " (" + season.seasonClass().word() + ")"))
                .collect(Collectors.joining(", "));
        String subtitle = Subtitles.sentence(view.zone(), "the seasons " + years + " day by day");
        var words = new ChartDocument.Words("compare", title(), subtitle, "", title() + ". " + subtitle + ".");
        return new ChartDocument(words, style, List.of(), this::table, this::paint);
    }

    private String title() {
        List<SeasonRecord> whole = view.seasons().stream()
                .map(SeasonView::season)
                .filter(SeasonRecord::isComplete)
                .sorted(Comparator.comparingDouble(season -> season.value(SeasonVariable.HARVESTED)))
                .toList();
        if (whole.size() < 2) {
            return "Seasons side by side";
        }
        SeasonRecord low = whole.get(0);
        SeasonRecord high = whole.get(whole.size() - 1);
        double difference = high.value(SeasonVariable.HARVESTED) - low.value(SeasonVariable.HARVESTED);
        double rain = high.value(SeasonVariable.SEASON_RAIN) - low.value(SeasonVariable.SEASON_RAIN);
        String how = Double.isNaN(rain)
                ? ""
                : " on " + units.waterText(Math.abs(rain)) + (rain >= 0.0 ? " less rain" : " more rain");
        return low.growthYear() + " yielded " + units.yieldText(difference) + " less than " + high.growthYear() + how;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "growth_year", "date", "rain_mm", "soil_water_mm", "leaf_area_index", "standing_mg_ha", "water_factor");
        for (SeasonView season : view.seasons()) {
            MonthScale own = season.scale();
            for (int day = (int) own.low(); day < own.high(); day++) {
                table.row(
                        season.season().growthYear(),
                        season.daily().date(day),
                        season.at(DailyVariable.RAIN, day),
                        season.at(DailyVariable.SOIL_WATER, day),
                        season.at(DailyVariable.LEAF_AREA_INDEX, day),
                        season.at(DailyVariable.STANDING, day) * 0.01,
                        season.at(DailyVariable.WATER_FACTOR, day));
            }
        }
        return table.build();
    }

    private List<Panel> panels() {
        List<Panel> panels = new ArrayList<>();
        panels.add(new Panel(
                units.waterUnit() + " of rain so far",
                units.water(10),
                (season, day, before) ->
                        (Double.isNaN(before) ? 0.0 : before) + units.water(season.at(DailyVariable.RAIN, day))));
        panels.add(new Panel(
                units.waterUnit() + " of water in the soil",
                units.water(10),
                (season, day, before) -> units.water(season.at(DailyVariable.SOIL_WATER, day))));
        panels.add(new Panel(
                "leaf area index", 0.5, (season, day, before) -> season.at(DailyVariable.LEAF_AREA_INDEX, day)));
        panels.add(new Panel(
                units.yieldUnit() + " standing dry matter",
                units.dryMatter(0.5),
                (season, day, before) -> units.dryMatter(0.01) * season.at(DailyVariable.STANDING, day)));
        panels.add(new Panel("water factor, " + SMOOTHING_DAYS + "-day mean", 1.0, CompareChart::smoothedFactor));
        return style.size().isThumbnail() ? List.of(panels.get(1), panels.get(3)) : panels;
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
        int columns = wide ? 2 : 1;
        int cells = panels.size() == 5 && wide ? 6 : panels.size();
        int rows = (cells + columns - 1) / columns;
        double gap = 1.6 * canvas.type().labelPx();
        double width = (area.getWidth() - (columns - 1) * gap) / columns;
        double height = area.getHeight() / rows;
        for (int i = 0; i < panels.size(); i++) {
            Rectangle2D cell = new Rectangle2D.Double(
                    area.getX() + (i % columns) * (width + gap), area.getY() + (i / columns) * height, width, height);
            panel(canvas, cell, panels.get(i));
        }
        if (cells > panels.size()) {
            verdicts(canvas, area.getX() + width + gap, area.getY() + (rows - 1) * height, width);
        }
    }

    private double[] values(SeasonView season, Panel panel) {
        double[] values = new double[scale.days()];
        double before = Double.NaN;
        for (int i = 0; i < values.length; i++) {
            LocalDate date = scale.from().plusDays(i).plusYears(-shift(season));
            int day = (int) (date.toEpochDay() - season.daily().start().toEpochDay());
            boolean known = day >= 0 && day < season.daily().days();
            values[i] = known ? panel.reader().at(season, day, before) : Double.NaN;
            before = values[i];
        }
        return values;
    }

    private void panel(Canvas canvas, Rectangle2D cell, Panel panel) {
        List<double[]> lines =
                view.seasons().stream().map(season -> values(season, panel)).toList();
        double high = panel.least();
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
        for (int i = 0; i < lines.size(); i++) {
            line(frame, lines.get(i), i);
        }
        scale.names(frame);
        if (!style.size().isThumbnail()) {
            ends(frame, lines);
        }
    }

    private void line(Frame frame, double[] values, int index) {
        double[] xs = new double[values.length];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = i + 0.5;
        }
        Path2D path = frame.path(xs, values);
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

    /** Says in the free cell what each season came to. */
    private void verdicts(Canvas canvas, double left, double top, double width) {
        double lineHeight = 1.75 * canvas.type().labelPx();
        double y = top + 1.9 * canvas.type().labelPx();
        double radius = 0.4 * canvas.type().labelPx();
        for (SeasonView season : view.seasons()) {
            SeasonRecord record = season.season();
            canvas.marker(left + radius, y - 0.34 * canvas.type().labelPx(), radius, season.seasonClass());
            double x = left + 3 * radius;
            String year = record.growthYear() + "  ";
            canvas.text(year, x, y, canvas.strongLabel(), palette.ink(), Align.LEFT);
            x += Canvas.width(year, canvas.strongLabel());
            String text = verdict(record, canvas, left + width - x);
            canvas.text(text, x, y, canvas.label(), palette.muted(), Align.LEFT);
            y += lineHeight;
        }
    }

    private String verdict(SeasonRecord record, Canvas canvas, double room) {
        if (!record.isComplete()) {
            return Canvas.fitted(record.status().words(), canvas.label(), room);
        }
        String harvested = units.yieldText(record.value(SeasonVariable.HARVESTED));
        double loss = Math.max(0.0, record.value(SeasonVariable.DROUGHT_PENALTY));
        String lost = Numbers.fixed(units.dryMatter(loss), 1) + " lost to drought";
        String whole = harvested + " harvested, " + lost;
        boolean fits = Canvas.width(whole, canvas.label()) <= room;
        return Canvas.fitted(fits ? whole : harvested + ", " + lost, canvas.label(), room);
    }
}
