package org.thirstline.charts;

import java.awt.Font;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.thirstline.calibration.age.DeclineFit;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.trial.AgeCurve;
import org.thirstline.calibration.trial.AgeCurve.Point;
import org.thirstline.charts.theme.Palette;

/** Yield against stand age with the weather left in, and beside it with the weather taken out, with the fitted decline. */
public final class AgeCurveChart {

    private static final double GAP_LABELS = 1.6;

    private final AgeCurveView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private AgeCurveChart(AgeCurveView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view curves and verdict
     * @param style look, units, source
     */
    public static ChartDocument of(AgeCurveView view, ChartStyle style) {
        return new AgeCurveChart(view, style).document();
    }

    private ChartDocument document() {
        String what =
                "harvested dry matter by stand age, a point for each zone, planting and year, differences between plots taken out";
        String subtitle = Subtitles.sentence("", what);
        String description = title() + ". " + subtitle + ". "
                + view.takenOut().orElse(view.leftIn()).points().stream()
                        .map(point -> "year " + point.standAge() + ": " + units.yieldText(point.yieldMgHa()))
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("yield-by-age", title(), subtitle, note(), description);
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private String title() {
        Optional<DeclineFit> fair = view.takenOut().flatMap(AgeCurve::fit);
        if (view.takenOut().isEmpty()) {
            return "Without the weather of these years nothing can be put down to age";
        }
        if (fair.isEmpty()) {
            return "Too few years to tell age from weather";
        }
        return switch (view.verdict()) {
            case DECLINE_BEYOND_WEATHER ->
                "Yield fell by " + percent(fair.get().ratePerYear()) + " a year after age "
                        + fair.get().onsetAge() + ", beyond what weather explains";
            case WEATHER_EXPLAINS_IT ->
                "Weather explains it: without it, yield fell by "
                        + percent(fair.get().meanDeclinePerYear()) + " a year on average";
            case CANNOT_TELL_YET ->
                "Can\u2019t tell yet: between "
                        + percent(fair.get().meanDeclineInterval().lower()) + " and "
                        + percent(fair.get().meanDeclineInterval().upper()) + " a year lost";
        };
    }

    private static String percent(double share) {
        return Numbers.fixed(100.0 * share, 1) + " %";
    }

    private String note() {
        String out = view.takenOut().isPresent()
                ? "Weather taken out: each yield over that of an unageing stand simulated in its year, times the mean of these. "
                : "No simulation: the weather does not hold these years. ";
        boolean band = curves().anyMatch(curve -> curve.fit().isPresent());
        return out + (band ? "Band: 90 % of fits to resampled years, against the level before the decline." : "");
    }

    private Stream<AgeCurve> curves() {
        return Stream.concat(Stream.of(view.leftIn()), view.takenOut().stream());
    }

    private List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>(Subtitles.marks(palette, new TreeSet<>(view.shownClasses())));
        if (curves().anyMatch(curve -> curve.points().stream().anyMatch(point -> !point.fitted()))) {
            entries.add(KeyEntry.ring(palette.muted(), "building up, not fitted"));
        }
        if (curves().anyMatch(curve -> curve.fit().isPresent())) {
            entries.add(KeyEntry.line(palette.ink(), "fitted"));
            entries.add(KeyEntry.block(palette.band(), "90 % band"));
        }
        return entries;
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "weather",
                "planting",
                "growth_year",
                "stand_age",
                "plots",
                "yield_mg_ha",
                "fitted_mg_ha",
                "band_low_mg_ha",
                "band_high_mg_ha");
        rows(table, "left in", view.leftIn());
        view.takenOut().ifPresent(curve -> rows(table, "taken out", curve));
        return table.build();
    }

    private static void rows(DataTable.Builder table, String weather, AgeCurve curve) {
        for (Point point : curve.points()) {
            Optional<Interval> band = curve.band(point.standAge());
            table.row(
                    weather,
                    point.planting(),
                    point.growthYear(),
                    point.standAge(),
                    point.plots(),
                    point.yieldMgHa(),
                    curve.fit().isPresent() && point.fitted() ? curve.at(point.standAge()) : null,
                    band.map(Interval::lower).orElse(null),
                    band.map(Interval::upper).orElse(null));
        }
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        double high = curves().flatMap(curve -> curve.points().stream())
                        .mapToDouble(point -> units.dryMatter(point.yieldMgHa()))
                        .max()
                        .orElse(1.0)
                * 1.08;
        double gap = GAP_LABELS * canvas.type().labelPx();
        boolean two = view.takenOut().isPresent();
        double width = two ? (area.getWidth() - gap) / 2 : area.getWidth();
        panel(canvas, left(area, width), view.leftIn(), "weather left in", high);
        view.takenOut()
                .ifPresent(curve -> panel(
                        canvas,
                        new Rectangle2D.Double(area.getMaxX() - width, area.getY(), width, area.getHeight()),
                        curve,
                        "weather taken out",
                        high));
    }

    private static Rectangle2D left(Rectangle2D area, double width) {
        return new Rectangle2D.Double(area.getX(), area.getY(), width, area.getHeight());
    }

    private void panel(Canvas canvas, Rectangle2D area, AgeCurve curve, String name, double high) {
        Font font = canvas.strongLabel();
        double head = style.size().isThumbnail() ? 0.0 : 1.5 * font.getSize2D();
        if (head > 0.0) {
            String fitted = Canvas.fitted(name, font, area.getWidth());
            canvas.text(fitted, area.getX(), area.getY() + font.getSize2D(), font, palette.ink(), Align.LEFT);
        }
        int first = view.youngest();
        int last = view.oldest();
        Frame frame = new Frame.Builder(
                        canvas,
                        new Rectangle2D.Double(
                                area.getX(), area.getY() + head, area.getWidth(), area.getHeight() - head))
                .x(first - 0.7, last + 0.7, ageStep(canvas, area.getWidth(), last - first + 1))
                .y(0, high, Numbers.niceStep(high, 5))
                .titles(style.size().isThumbnail() ? "" : "stand age", units.yieldUnit() + " dry matter")
                .under(frameOf -> band(frameOf, curve))
                .draw();
        line(frame, curve);
        points(frame, curve);
    }

    private static double ageStep(Canvas canvas, double width, int ages) {
        double needed = 2.2 * Canvas.width("20", canvas.small());
        return Math.max(1.0, Numbers.niceStep(ages, (int) Math.max(1, width / needed)));
    }

    private double[] ages(AgeCurve curve) {
        return curve.fit().stream()
                .flatMap(fit -> fit.keptByAge().keySet().stream())
                .mapToDouble(Integer::doubleValue)
                .toArray();
    }

    private void band(Frame frame, AgeCurve curve) {
        double[] ages = ages(curve);
        if (ages.length < 2) {
            return;
        }
        double[] lower = new double[ages.length];
        double[] upper = new double[ages.length];
        for (int i = 0; i < ages.length; i++) {
            Interval band = curve.band((int) ages[i]).orElseThrow();
            lower[i] = units.dryMatter(band.lower());
            upper[i] = units.dryMatter(band.upper());
        }
        Canvas canvas = frame.canvas();
        Shape before = canvas.graphics().getClip();
        canvas.graphics().clip(frame.area());
        canvas.fill(frame.between(ages, lower, upper), palette.band());
        canvas.graphics().setClip(before);
    }

    private void line(Frame frame, AgeCurve curve) {
        double[] ages = ages(curve);
        double[] fitted = new double[ages.length];
        for (int i = 0; i < ages.length; i++) {
            fitted[i] = units.dryMatter(curve.at((int) ages[i]));
        }
        Canvas canvas = frame.canvas();
        Shape before = canvas.graphics().getClip();
        canvas.graphics().clip(frame.area());
        canvas.outline(frame.path(ages, fitted), palette.ink(), canvas.type().strokePx());
        canvas.graphics().setClip(before);
    }

    private void points(Frame frame, AgeCurve curve) {
        Canvas canvas = frame.canvas();
        double radius = Math.min(0.36 * canvas.type().labelPx(), 0.45 * (frame.x(1) - frame.x(0)));
        for (Point point : curve.points()) {
            double x = frame.x(point.standAge());
            double y = frame.y(units.dryMatter(point.yieldMgHa()));
            canvas.tip(
                    x,
                    y,
                    radius,
                    point.growthYear() + ", age " + point.standAge() + ": " + units.yieldText(point.yieldMgHa())
                            + ", mean of " + Subtitles.count(point.plots(), "plot", "plots"));
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
