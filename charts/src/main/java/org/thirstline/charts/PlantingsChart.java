package org.thirstline.charts;

import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.trial.PlantingCurve;
import org.thirstline.calibration.trial.PlantingCurve.Point;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.climate.SeasonClass;

/** Small multiples: yield against stand age for each planting, weather left in and taken out, beside the decline fitted to all of them. */
public final class PlantingsChart {

    /** More panels than this are too small to read. */
    private static final int MOST_PANELS = 12;

    private static final double PANEL_SHAPE = 1.6;

    private static final double EMPTY_WEIGHT = 2.0;

    private final PlantingsView view;
    private final List<PlantingCurve> shown;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private PlantingsChart(PlantingsView view, ChartStyle style) {
        this.view = view;
        this.shown = view.plantings()
                .subList(0, Math.min(MOST_PANELS, view.plantings().size()));
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view plantings and verdict
     * @param style look, units, source
     */
    public static ChartDocument of(PlantingsView view, ChartStyle style) {
        return new PlantingsChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle =
                "Harvested dry matter by stand age, a panel for each planting, differences between its plots taken out";
        String description =
                title() + ". " + view.plantings().stream().map(this::words).collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("plantings", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String words(PlantingCurve planting) {
        return planting.name() + ": " + years(planting) + ", " + units.yieldText(planting.levelMgHa())
                + " before any decline";
    }

    private String title() {
        String who = Subtitles.count(view.plantings().size(), "planting", "plantings") + starts();
        if (!view.simulated()) {
            return who + ": without the weather of these years nothing can be put down to age";
        }
        if (view.fit().isEmpty()) {
            return who + ": too few years to tell age from weather";
        }
        DeclineFit fit = view.fit().get();
        return switch (view.verdict()) {
            case DECLINE_BEYOND_WEATHER ->
                who + " lost " + percent(fit.ratePerYear()) + " a year after age " + fit.onsetAge()
                        + ", beyond what weather explains";
            case WEATHER_EXPLAINS_IT ->
                who + ": weather explains it, without it " + percent(fit.meanDeclinePerYear()) + " a year are lost";
            case CANNOT_TELL_YET ->
                who + " can\u2019t tell yet: between "
                        + percent(fit.meanDeclineInterval().lower()) + " and "
                        + percent(fit.meanDeclineInterval().upper()) + " a year lost";
        };
    }

    /** Whether all began in one year, or staggered. */
    private String starts() {
        int first = view.plantings().stream()
                .mapToInt(PlantingCurve::plantingYear)
                .min()
                .orElse(0);
        int last = view.plantings().stream()
                .mapToInt(PlantingCurve::plantingYear)
                .max()
                .orElse(0);
        return first == last ? " of " + first : " of " + first + " to " + last;
    }

    private static String percent(double share) {
        return Numbers.fixed(100.0 * share, 1) + " %";
    }

    private String note() {
        String out = view.simulated()
                ? "Weather taken out: in the mean weather of the planting's own years. "
                : "No simulation: the weather does not hold these years. ";
        String fit =
                view.plantings().stream().anyMatch(planting -> planting.fit().isPresent())
                        ? "Line and 90 % band: one decline fitted to all plantings, at the level of each. "
                        : "";
        int hidden = view.plantings().size() - shown.size();
        return out + fit + (hidden > 0 ? hidden + " more plantings are in the table." : "");
    }

    private List<KeyEntry> key() {
        Set<SeasonClass> seasons = EnumSet.noneOf(SeasonClass.class);
        boolean young = false;
        for (PlantingCurve planting : shown) {
            for (Point point : planting.points()) {
                SeasonClass seasonClass = view.classes().get(point.growthYear());
                young |= !point.fitted();
                if (point.fitted() && seasonClass != null) {
                    seasons.add(seasonClass);
                }
            }
        }
        List<KeyEntry> entries = new ArrayList<>();
        for (SeasonClass seasonClass : seasons) {
            entries.add(KeyEntry.mark(palette, seasonClass, seasonClass.word() + " season"));
        }
        if (young) {
            entries.add(KeyEntry.ring(palette.muted(), "building up, not fitted"));
        }
        if (view.simulated()) {
            entries.add(KeyEntry.dash(palette.muted(), "as harvested (marks: weather taken out)"));
        }
        if (shown.stream().anyMatch(planting -> planting.fit().isPresent())) {
            entries.add(KeyEntry.line(palette.ink(), "fitted"));
            entries.add(KeyEntry.block(palette.band(), "90 % band"));
        }
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "zone",
                "planting_year",
                "growth_year",
                "stand_age",
                "plots",
                "harvested_mg_ha",
                "weather_taken_out_mg_ha",
                "fitted_mg_ha",
                "band_low_mg_ha",
                "band_high_mg_ha");
        for (PlantingCurve planting : view.plantings()) {
            for (Point point : planting.points()) {
                Optional<Interval> band = planting.band(point.standAge());
                table.row(
                        planting.site(),
                        planting.plantingYear(),
                        point.growthYear(),
                        point.standAge(),
                        point.plots(),
                        point.harvestedMgHa(),
                        point.weatherOutMgHa(),
                        planting.fit().isPresent() && point.fitted() ? planting.at(point.standAge()) : null,
                        band.map(Interval::lower).orElse(null),
                        band.map(Interval::upper).orElse(null));
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (shown.isEmpty()) {
            return;
        }
        boolean thumbnail = style.size().isThumbnail();
        double head = thumbnail ? 0.0 : 1.3 * canvas.type().smallPx();
        double foot = thumbnail ? 0.0 : 1.45 * canvas.type().smallPx();
        double gap = canvas.type().smallPx();
        Font font = canvas.small();
        if (!thumbnail) {
            canvas.text(
                    units.yieldUnit() + " dry matter",
                    area.getX(),
                    area.getY() + 0.8 * font.getSize2D(),
                    font,
                    palette.muted(),
                    Align.LEFT);
            canvas.text(
                    "stand age (planting year = 1)",
                    area.getCenterX(),
                    area.getMaxY() - 0.2 * font.getSize2D(),
                    font,
                    palette.muted(),
                    Align.CENTER);
        }
        int columns = columns(area);
        int rows = (shown.size() + columns - 1) / columns;
        double width = (area.getWidth() - gap * (columns - 1)) / columns;
        double height = (area.getHeight() - head - foot - 0.6 * gap * (rows - 1)) / rows;
        for (int i = 0; i < shown.size(); i++) {
            double x = area.getX() + i % columns * (width + gap);
            int row = i / columns;
            double y = area.getY() + head + row * (height + 0.6 * gap);
            panel(canvas, new Rectangle2D.Double(x, y, width, height), shown.get(i));
        }
    }

    /** Columns whose panels come closest to the wanted shape and leave little empty. */
    private int columns(Rectangle2D area) {
        int best = 1;
        double smallest = Double.POSITIVE_INFINITY;
        for (int columns = 1; columns <= shown.size(); columns++) {
            int rows = (shown.size() + columns - 1) / columns;
            double shape = area.getWidth() / columns / (area.getHeight() / rows);
            double empty = rows * columns / (double) shown.size();
            double off = Math.abs(Math.log(shape / PANEL_SHAPE)) + EMPTY_WEIGHT * Math.log(empty);
            if (off < smallest) {
                smallest = off;
                best = columns;
            }
        }
        return best;
    }

    private void panel(Canvas canvas, Rectangle2D area, PlantingCurve planting) {
        boolean thumbnail = style.size().isThumbnail();
        double head = thumbnail ? 0.0 : 1.45 * canvas.type().smallPx();
        if (!thumbnail) {
            heading(canvas, area, planting);
        }
        double high = 1.08 * units.dryMatter(view.largestMgHa());
        int ages = view.oldest() - view.youngest() + 1;
        double needed = 2.2 * Canvas.width("20", canvas.small());
        double step = Math.max(1.0, Numbers.niceStep(ages, (int) Math.max(1, area.getWidth() / needed)));
        int labels = (int)
                Math.max(1, (area.getHeight() - head) / (2.6 * canvas.type().smallPx()));
        Frame frame = new Frame.Builder(
                        canvas,
                        new Rectangle2D.Double(
                                area.getX(), area.getY() + head, area.getWidth(), area.getHeight() - head))
                .x(view.youngest() - 0.7, view.oldest() + 0.7, step)
                .y(0, high, Numbers.niceStep(high, Math.min(4, labels)))
                .under(of -> under(of, planting))
                .draw();
        points(frame, planting);
    }

    private void heading(Canvas canvas, Rectangle2D area, PlantingCurve planting) {
        Font strong = canvas.strongSmall();
        Font font = canvas.small();
        double baseline = area.getY() + strong.getSize2D();
        String right = years(planting);
        double rightWidth = Canvas.width(right, font) + 0.8 * font.getSize2D();
        boolean both = rightWidth < 0.4 * area.getWidth();
        double room = both ? area.getWidth() - rightWidth : area.getWidth();
        canvas.text(
                Canvas.fitted(planting.name(), strong, room), area.getX(), baseline, strong, palette.ink(), Align.LEFT);
        if (both) {
            double x = area.getMaxX() - Canvas.width(right, font);
            canvas.text(right, x, baseline, font, palette.muted(), Align.LEFT);
        }
    }

    private static String years(PlantingCurve planting) {
        int first = planting.points().get(0).growthYear();
        int last = planting.points().get(planting.points().size() - 1).growthYear();
        String plots = Subtitles.count(planting.plots(), "plot", "plots");
        return plots + ", " + (first == last ? Integer.toString(first) : first + "\u2013" + last);
    }

    private void under(Frame frame, PlantingCurve planting) {
        double[] ages = planting.fit().stream()
                .flatMap(fit -> fit.keptByAge().keySet().stream())
                .filter(age -> planting.points().stream().anyMatch(point -> point.standAge() >= age))
                .mapToDouble(Integer::doubleValue)
                .toArray();
        Canvas canvas = frame.canvas();
        Shape before = canvas.graphics().getClip();
        canvas.graphics().clip(frame.area());
        if (ages.length > 1) {
            double[] lower = new double[ages.length];
            double[] upper = new double[ages.length];
            double[] fitted = new double[ages.length];
            for (int i = 0; i < ages.length; i++) {
                Interval band = planting.band((int) ages[i]).orElseThrow();
                lower[i] = units.dryMatter(band.lower());
                upper[i] = units.dryMatter(band.upper());
                fitted[i] = units.dryMatter(planting.at((int) ages[i]));
            }
            canvas.fill(frame.between(ages, lower, upper), palette.band());
            canvas.outline(
                    frame.path(ages, fitted), palette.ink(), 0.8 * canvas.type().strokePx());
        }
        harvested(frame, planting);
        canvas.graphics().setClip(before);
    }

    private void harvested(Frame frame, PlantingCurve planting) {
        if (!view.simulated()) {
            return;
        }
        List<Point> points = planting.points();
        double[] xs = points.stream().mapToDouble(Point::standAge).toArray();
        double[] ys = points.stream()
                .mapToDouble(point -> units.dryMatter(point.harvestedMgHa()))
                .toArray();
        frame.canvas().dashed(frame.path(xs, ys), palette.muted(), 1.4);
    }

    private void points(Frame frame, PlantingCurve planting) {
        Canvas canvas = frame.canvas();
        double radius = Math.min(0.3 * canvas.type().labelPx(), 0.42 * (frame.x(1) - frame.x(0)));
        for (Point point : planting.points()) {
            double x = frame.x(point.standAge());
            double y = frame.y(units.dryMatter(view.simulated() ? point.weatherOutMgHa() : point.harvestedMgHa()));
            if (point.fitted()) {
                canvas.marker(x, y, radius, view.classes().get(point.growthYear()));
            } else {
                Shape ring = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
                canvas.fill(ring, palette.background());
                canvas.outline(ring, palette.muted(), 1.4);
            }
        }
    }
}
