package org.thirstline.charts;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.bands.Band;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.charts.theme.Palette;

/** Share of years that bring at least so much, by zone. */
public final class ExceedanceChart {

    private static final float[][] DASHES = {{}, {9f, 5f}, {2.5f, 4f}, {12f, 4f, 3f, 4f}};
    private static final int FEW_YEARS = 5;
    private static final int NAMED_IN_TITLE = 2;

    private final RiskView view;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private ExceedanceChart(RiskView view, ChartStyle style) {
        this.view = view;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param view the zones
     * @param style look, units, source
     */
    public static ChartDocument of(RiskView view, ChartStyle style) {
        return new ExceedanceChart(view, style).document();
    }

    private ChartDocument document() {
        String subtitle = "Share of years that bring at least so much harvested dry matter, full-grown stand: "
                + view.zones().stream()
                        .map(zone ->
                                zone.name() + ", " + Subtitles.count(zone.risk().n(), "year", "years"))
                        .collect(Collectors.joining("; "));
        String note =
                "Every point is a simulated year at rank / (n + 1) (Weibull plotting position); nothing is assumed about the"
                        + " shape between or beyond the points." + bandNote();
        var words = new ChartDocument.Words("exceedance", title(), subtitle, note, title() + ". " + subtitle + ".");
        return new ChartDocument(words, style, key(), this::table, this::paint);
    }

    private List<KeyEntry> key() {
        return view.hasBands()
                ? List.of(KeyEntry.ghost(palette.crop(), palette.cropTint(), "5 to 95 % of calibration draws"))
                : List.of();
    }

    private String bandNote() {
        int draws = view.zones().stream()
                .flatMap(zone -> zone.bands().stream())
                .mapToInt(Band::draws)
                .max()
                .orElse(0);
        return view.hasBands()
                ? " Bands: " + draws
                        + " draws of the calibrated parameters, the years ranked anew in each, without weather not seen and"
                        + " without scatter of plots."
                : "";
    }

    private List<RiskView.ZoneRisk> withYears() {
        return view.zones().stream().filter(zone -> zone.risk().n() > 0).toList();
    }

    private String title() {
        List<RiskView.ZoneRisk> zones = withYears();
        if (zones.isEmpty()) {
            return "No full-grown year with a comparable yield yet";
        }
        List<RiskView.ZoneRisk> named = zones.subList(0, Math.min(NAMED_IN_TITLE, zones.size()));
        if (view.targetMgHa().isPresent()) {
            double target = view.targetMgHa().getAsDouble();
            return units.yieldText(target) + " was reached in "
                    + named.stream()
                            .map(zone -> zone.risk().reached(target) + " of "
                                    + Subtitles.count(zone.risk().n(), "year", "years") + " on " + zone.name())
                            .collect(Collectors.joining(", in "));
        }
        int fewest = named.stream().mapToInt(zone -> zone.risk().n()).min().orElse(0);
        if (fewest < FEW_YEARS) {
            return "Too few years to speak of risk: " + fewest;
        }
        return "The poorest year brought "
                + named.stream()
                        .map(zone -> units.yieldText(worst(zone).harvestedMgHa()) + " on " + zone.name() + " ("
                                + worst(zone).growthYear() + ")")
                        .collect(Collectors.joining(", "));
    }

    private static YieldRisk.YearYield worst(RiskView.ZoneRisk zone) {
        return zone.risk().years().stream()
                .min(Comparator.comparingDouble(YieldRisk.YearYield::harvestedMgHa))
                .orElseThrow();
    }

    private DataTable table() {
        List<String> columns =
                new ArrayList<>(List.of("zone", "growth_year", "harvested_mg_ha", "probability_of_at_least"));
        if (view.hasBands()) {
            columns.addAll(Whiskers.columns("harvested_of_this_rank", "mg_ha"));
        }
        DataTable.Builder table = new DataTable.Builder(columns.toArray(String[]::new));
        for (RiskView.ZoneRisk zone : view.zones()) {
            List<YieldRisk.Exceedance> curve = zone.risk().exceedance();
            for (int i = 0; i < curve.size(); i++) {
                YieldRisk.Exceedance point = curve.get(i);
                List<@Nullable Object> cells = new ArrayList<>(Arrays.asList(
                        zone.name(), point.year().growthYear(), point.year().harvestedMgHa(), point.probability()));
                if (view.hasBands()) {
                    cells.addAll(Whiskers.cells(
                            i < zone.bands().size() ? zone.bands().get(i) : null));
                }
                table.row(cells.toArray());
            }
        }
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        List<RiskView.ZoneRisk> zones = withYears();
        if (zones.isEmpty()) {
            return;
        }
        double top = view.targetMgHa().orElse(0.1);
        for (RiskView.ZoneRisk zone : zones) {
            for (YieldRisk.YearYield year : zone.risk().years()) {
                top = Math.max(top, year.harvestedMgHa());
            }
            for (Band band : zone.bands()) {
                top = Math.max(top, band.high());
            }
        }
        double high = units.dryMatter(top) * 1.08;
        Frame frame = new Frame.Builder(canvas, area)
                .x(0, 100, 20)
                .y(0, high, Numbers.niceStep(high, 5))
                .titles(style.size().isThumbnail() ? "" : "% of years", units.yieldUnit() + " dry matter")
                .right(1.2 * canvas.type().smallPx())
                .under(this::bands)
                .draw();
        LabelPlacer placer = new LabelPlacer(canvas, frame.area());
        target(frame, placer);
        for (int i = 0; i < zones.size(); i++) {
            curve(frame, zones.get(i), i);
            block(frame, zones.get(i), placer);
        }
        for (RiskView.ZoneRisk zone : zones) {
            name(frame, zone, placer);
        }
    }

    private void target(Frame frame, LabelPlacer placer) {
        if (view.targetMgHa().isEmpty()) {
            return;
        }
        Canvas canvas = frame.canvas();
        double y = frame.y(units.dryMatter(view.targetMgHa().getAsDouble()));
        canvas.dashed(new Line2D.Double(frame.area().getX(), y, frame.area().getMaxX(), y), palette.ink(), 1.3);
        placer.blockLine(frame.area().getX(), y, frame.area().getMaxX(), y);
        placer.place("target", frame.area().getX(), y, 5.0, canvas.small(), palette.muted());
    }

    /** Areas first, edges over all of them, so that where two zones overlap both can be followed. */
    private void bands(Frame frame) {
        List<Path2D> areas = withYears().stream()
                .filter(zone -> zone.bands().size() == zone.risk().n())
                .filter(zone -> zone.bands().stream().allMatch(Band::isKnown))
                .map(zone -> band(frame, zone))
                .toList();
        areas.forEach(area -> frame.canvas().fill(area, palette.cropTint()));
        areas.forEach(area -> frame.canvas().outline(area, palette.crop(), 0.8));
    }

    private Path2D band(Frame frame, RiskView.ZoneRisk zone) {
        double[] shares = zone.risk().exceedance().stream()
                .mapToDouble(point -> 100.0 * point.probability())
                .toArray();
        return frame.between(
                shares,
                zone.bands().stream()
                        .mapToDouble(band -> units.dryMatter(band.low()))
                        .toArray(),
                zone.bands().stream()
                        .mapToDouble(band -> units.dryMatter(band.high()))
                        .toArray());
    }

    private double[][] points(Frame frame, RiskView.ZoneRisk zone) {
        List<double[]> points = new ArrayList<>();
        for (YieldRisk.Exceedance point : zone.risk().exceedance()) {
            points.add(new double[] {
                frame.x(100.0 * point.probability()),
                frame.y(units.dryMatter(point.year().harvestedMgHa()))
            });
        }
        return points.toArray(new double[0][]);
    }

    private void curve(Frame frame, RiskView.ZoneRisk zone, int index) {
        double[][] points = points(frame, zone);
        Canvas canvas = frame.canvas();
        float width = 0.8f * canvas.type().strokePx();
        float[] dash = DASHES[index % DASHES.length];
        canvas.graphics().setColor(palette.crop());
        canvas.graphics()
                .setStroke(
                        dash.length == 0
                                ? new BasicStroke(width)
                                : new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, dash, 0f));
        for (int i = 1; i < points.length; i++) {
            canvas.graphics().draw(new Line2D.Double(points[i - 1][0], points[i - 1][1], points[i][0], points[i][1]));
        }
        double radius = 0.22 * canvas.type().labelPx();
        List<YieldRisk.Exceedance> exceedance = zone.risk().exceedance();
        for (int i = 0; i < points.length; i++) {
            YieldRisk.YearYield year = exceedance.get(i).year();
            canvas.tip(
                    points[i][0],
                    points[i][1],
                    radius,
                    zone.name() + ", " + year.growthYear() + ": " + units.yieldText(year.harvestedMgHa())
                            + " or more in "
                            + Numbers.fixed(100.0 * exceedance.get(i).probability(), 0)
                            + " % of years");
        }
        for (double[] point : points) {
            canvas.fill(
                    new java.awt.geom.Ellipse2D.Double(point[0] - radius, point[1] - radius, 2 * radius, 2 * radius),
                    palette.crop());
        }
    }

    private void block(Frame frame, RiskView.ZoneRisk zone, LabelPlacer placer) {
        double[][] points = points(frame, zone);
        for (int i = 1; i < points.length; i++) {
            placer.blockLine(points[i - 1][0], points[i - 1][1], points[i][0], points[i][1]);
        }
    }

    /** Writes the zone's name beside its curve, where there is room. */
    private void name(Frame frame, RiskView.ZoneRisk zone, LabelPlacer placer) {
        Font font = frame.canvas().strongLabel();
        String name = Canvas.fitted(zone.name(), font, 0.45 * frame.area().getWidth());
        double[][] points = points(frame, zone);
        Optional<double[]> placed = Optional.empty();
        int middle = points.length / 2;
        for (int away = 0; away <= middle && placed.isEmpty(); away++) {
            for (int i : new int[] {middle - away, Math.min(points.length - 1, middle + away)}) {
                if (i >= 0 && placed.isEmpty()) {
                    boolean room = placer.place(name, points[i][0], points[i][1], 8.0, font, palette.ink());
                    placed = room ? Optional.of(points[i]) : Optional.empty();
                }
            }
        }
    }
}
