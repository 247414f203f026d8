package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.response.ResponseVerdict;
import org.thirstline.calibration.years.ThirstTable;
import org.thirstline.charts.theme.Palette;
import org.thirstline.model.units.Units;

/** Expected loss by rainfall deficit and available water of the soil: a bar and a number in every cell that the years can fill. */
public final class ThirstTableChart {

    private static final int MOST_ROWS = 10;

    private final ThirstTable table;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;
    private final List<Double> deficitsMm;
    private final double largestMgHa;

    private ThirstTableChart(ThirstTable table, ChartStyle style) {
        this.table = table;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
        this.deficitsMm = steps(table, units);
        this.largestMgHa = table.rungs().stream()
                .flatMap(rung -> deficitsMm.stream().map(rung::at))
                .flatMap(Optional::stream)
                .mapToDouble(ThirstTable.Cell::expectedMgHa)
                .max()
                .orElse(0.0);
    }

    /**
     * Builds the chart.
     *
     * @param table the losses
     * @param style look, units, source
     */
    public static ChartDocument of(ThirstTable table, ChartStyle style) {
        return new ThirstTableChart(table, style).document();
    }

    /**
     * Returns the deficits of the table's rows in steps that read well in the reader's units.
     *
     * @param table the losses
     * @param units the reader's units
     */
    public static List<Double> steps(ThirstTable table, UnitSystem units) {
        double unit = units == UnitSystem.SI ? 50.0 : 2.0 * Units.MM_PER_INCH;
        List<Double> steps = table.deficitsMm(unit);
        for (int factor = 2; steps.size() > MOST_ROWS; factor *= 2) {
            steps = table.deficitsMm(factor * unit);
        }
        return steps;
    }

    private ChartDocument document() {
        String subtitle = "Loss to drought in a growing season that misses so much rain (rows), on the soil of "
                + table.soilOf() + ", cut or continued until it holds so much water for plants (columns)";
        String note =
                "Large: expected on the line of each soil's own years. Small: where 95 of 100 single years fall, at least"
                        + " nothing. Hatched: drier or wetter than any year, or too few years for a line. Roots reach "
                        + Numbers.fixed(units.depth(table.rootDepthM()), 1) + " " + units.depthUnit() + ".";
        var words = new ChartDocument.Words("thirst-table", title(), subtitle, note, title() + ". " + subtitle + ".");
        return new ChartDocument(words, style, List.of(), this::data, this::paint);
    }

    private String title() {
        if (table.rungs().size() < 2 || !table.hasLines()) {
            int years = table.rungs().isEmpty()
                    ? 0
                    : table.rungs().get(0).response().n();
            return "Too few years to say what missing rain costs on other soils: " + years;
        }
        ThirstTable.Rung thin = table.rungs().get(0);
        ThirstTable.Rung deep = table.rungs().get(table.rungs().size() - 1);
        for (int i = deficitsMm.size() - 1; i >= 0; i--) {
            Optional<ThirstTable.Cell> low = thin.at(deficitsMm.get(i));
            Optional<ThirstTable.Cell> high = deep.at(deficitsMm.get(i));
            boolean sure = thin.response().verdict() == ResponseVerdict.LOSS_GROWS;
            if (deficitsMm.get(i) > 0.0 && low.isPresent() && high.isPresent() && sure) {
                return units.waterText(deficitsMm.get(i)) + " of missing rain cost "
                        + units.yieldText(low.get().expectedMgHa()) + " where the soil holds "
                        + units.waterText(thin.availableWaterMm()) + ", "
                        + Numbers.fixed(units.dryMatter(high.get().expectedMgHa()), 1) + " where it holds "
                        + units.waterText(deep.availableWaterMm());
            }
        }
        return "These years show no clear cost of missing rain on the thinnest soil";
    }

    private DataTable data() {
        DataTable.Builder rows = new DataTable.Builder(
                "available_water_mm", "rain_deficit_mm", "expected_mg_ha", "low_mg_ha", "high_mg_ha");
        for (ThirstTable.Rung rung : table.rungs()) {
            for (double deficit : deficitsMm) {
                Optional<ThirstTable.Cell> cell = rung.at(deficit);
                rows.row(
                        rung.availableWaterMm(),
                        deficit,
                        cell.map(ThirstTable.Cell::expectedMgHa).orElse(Double.NaN),
                        cell.map(found -> found.range().lower()).orElse(Double.NaN),
                        cell.map(found -> found.range().upper()).orElse(Double.NaN));
            }
        }
        return rows.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (deficitsMm.isEmpty() || table.rungs().isEmpty()) {
            return;
        }
        Font font = canvas.small();
        double size = font.getSize2D();
        double head = 3.0 * size;
        double left = Canvas.width("\u2212000 mm", canvas.strongSmall()) + 0.8 * size;
        double width = (area.getWidth() - left) / table.rungs().size();
        double height = (area.getHeight() - head) / deficitsMm.size();
        String title = "deficit \u2193   available water of the soil (" + units.waterUnit() + ") \u2192";
        canvas.text(
                Canvas.fitted(title, font, area.getWidth()),
                area.getX(),
                area.getY() + size,
                font,
                palette.muted(),
                Align.LEFT);
        Rectangle2D cells = new Rectangle2D.Double(area.getX() + left, area.getY() + head, width, height);
        for (int column = 0; column < table.rungs().size(); column++) {
            column(canvas, cells, column);
        }
        for (int row = 0; row < deficitsMm.size(); row++) {
            double middle = area.getY() + head + (row + 0.5) * height;
            String deficit = deficitsMm.get(row) == 0.0
                    ? "normal"
                    : Numbers.fixed(units.water(deficitsMm.get(row)), 0) + " " + units.waterUnit();
            canvas.text(deficit, area.getX(), middle + 0.35 * size, canvas.strongSmall(), palette.ink(), Align.LEFT);
        }
    }

    /** Draws one soil; the first cell of the table gives place and size. */
    private void column(Canvas canvas, Rectangle2D first, int column) {
        ThirstTable.Rung rung = table.rungs().get(column);
        double x = first.getX() + column * first.getWidth();
        String water = Numbers.fixed(units.water(rung.availableWaterMm()), decimals());
        double baseline = first.getY() - 0.5 * canvas.small().getSize2D();
        canvas.text(water, x + 0.5 * first.getWidth(), baseline, canvas.strongSmall(), palette.ink(), Align.CENTER);
        for (int row = 0; row < deficitsMm.size(); row++) {
            double y = first.getY() + row * first.getHeight();
            Rectangle2D box = new Rectangle2D.Double(x + 1.5, y + 1.5, first.getWidth() - 3, first.getHeight() - 3);
            cell(canvas, box, rung.at(deficitsMm.get(row)));
        }
    }

    private int decimals() {
        return units == UnitSystem.SI ? 0 : 1;
    }

    private void cell(Canvas canvas, Rectangle2D box, Optional<ThirstTable.Cell> cell) {
        canvas.fill(box, palette.wideBand());
        if (cell.isEmpty()) {
            canvas.fill(box, palette.background());
            canvas.hatch(box, palette.band());
            return;
        }
        double share = largestMgHa > 0.0 ? cell.get().expectedMgHa() / largestMgHa : 0.0;
        canvas.fill(
                new Rectangle2D.Double(box.getX(), box.getY(), share * box.getWidth(), box.getHeight()),
                palette.dryTint());
        canvas.tip(
                box,
                units.yieldText(cell.get().expectedMgHa()) + " expected; 95 of 100 single years between "
                        + number(cell.get().range().lower()) + " and "
                        + number(cell.get().range().upper()));
        Font strong = canvas.strongLabel();
        String range = number(cell.get().range().lower()) + " to "
                + number(cell.get().range().upper());
        boolean both = box.getHeight() > 2.4 * strong.getSize2D()
                && Canvas.width(range, canvas.small()) < 0.96 * box.getWidth();
        double baseline = box.getCenterY() + (both ? -0.05 : 0.36) * strong.getSize2D();
        if (box.getHeight() > 0.95 * strong.getSize2D()) {
            canvas.text(
                    number(cell.get().expectedMgHa()), box.getCenterX(), baseline, strong, palette.ink(), Align.CENTER);
        }
        if (both) {
            double below = baseline + 1.15 * canvas.small().getSize2D();
            canvas.text(range, box.getCenterX(), below, canvas.small(), palette.muted(), Align.CENTER);
        }
    }

    private String number(double mgHa) {
        return Numbers.fixed(units.dryMatter(mgHa), 1);
    }
}
