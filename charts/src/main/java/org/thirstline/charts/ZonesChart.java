package org.thirstline.charts;

import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.calibration.years.ZoneComparison;
import org.thirstline.charts.theme.Palette;

/** Zones of a field side by side: what they yield, from the poorest to the best year, and what lack and excess of water take. */
public final class ZonesChart {

    private static final double NOTHING_MG_HA = 0.05;

    private final ZoneComparison zones;
    private final ChartStyle style;
    private final UnitSystem units;
    private final Palette palette;

    private ZonesChart(ZoneComparison zones, ChartStyle style) {
        this.zones = zones;
        this.style = style;
        this.units = style.units();
        this.palette = style.theme().palette();
    }

    /**
     * Builds the chart.
     *
     * @param zones the zones
     * @param style look, units, source
     */
    public static ChartDocument of(ZoneComparison zones, ChartStyle style) {
        return new ZonesChart(zones, style).document();
    }

    private ChartDocument document() {
        String subtitle = "Mean harvest of the zones over "
                + Subtitles.count(zones.years().size(), "year", "years") + " that all of them have, full-grown stand";
        String note =
                "Whisker: poorest to best year. Lost to drought and to excess water: each against the same stand without it;"
                        + " the two need not add up.";
        String description = title() + ". "
                + zones.zones().stream()
                        .map(row -> row.name() + ": " + units.yieldText(row.harvestedMgHa()) + " harvested, "
                                + units.yieldText(row.droughtPenaltyMgHa()) + " lost to drought")
                        .collect(Collectors.joining("; "));
        var words = new ChartDocument.Words("zones", title(), subtitle, note, description);
        List<KeyEntry> key = new java.util.ArrayList<>(List.of(
                KeyEntry.block(palette.crop(), "harvested"),
                KeyEntry.ghost(palette.dry(), palette.dryTint(), "lost to drought")));
        if (zones.zones().stream().anyMatch(row -> row.excessWaterPenaltyMgHa() >= NOTHING_MG_HA)) {
            key.add(KeyEntry.ghost(palette.wet(), palette.wetTint(), "lost to excess water"));
        }
        return new ChartDocument(words, style, key, this::table, this::paint);
    }

    private String title() {
        if (zones.years().isEmpty()) {
            return "No full-grown year that every zone has";
        }
        Comparator<ZoneComparison.Row> byYield = Comparator.comparingDouble(ZoneComparison.Row::harvestedMgHa);
        ZoneComparison.Row low = zones.zones().stream().min(byYield).orElseThrow();
        ZoneComparison.Row high = zones.zones().stream().max(byYield).orElseThrow();
        if (zones.zones().size() == 1) {
            return "On " + low.name() + " the stand yields " + units.yieldText(low.harvestedMgHa())
                    + " in an average year";
        }
        return "On " + low.name() + " the stand yields "
                + units.yieldText(high.harvestedMgHa() - low.harvestedMgHa()) + " less than on " + high.name()
                + "; drought takes " + Numbers.fixed(units.dryMatter(low.droughtPenaltyMgHa()), 1) + " against "
                + Numbers.fixed(units.dryMatter(high.droughtPenaltyMgHa()), 1);
    }

    private DataTable table() {
        DataTable.Builder table = new DataTable.Builder(
                "zone",
                "area_ha",
                "available_water_mm",
                "harvested_mg_ha",
                "lowest_mg_ha",
                "highest_mg_ha",
                "drought_penalty_mg_ha",
                "excess_water_penalty_mg_ha");
        zones.zones()
                .forEach(row -> table.row(
                        row.name(),
                        row.areaHa(),
                        row.availableWaterMm(),
                        row.harvestedMgHa(),
                        row.lowestMgHa(),
                        row.highestMgHa(),
                        row.droughtPenaltyMgHa(),
                        row.excessWaterPenaltyMgHa()));
        return table.build();
    }

    private void paint(Canvas canvas, Rectangle2D area) {
        if (zones.years().isEmpty()) {
            return;
        }
        double high = units.dryMatter(largestMgHa()) * 1.04;
        double axis = 1.8 * canvas.type().smallPx();
        Font font = canvas.small();
        double head = 1.5 * canvas.type().labelPx();
        canvas.text(
                units.yieldUnit() + " dry matter",
                area.getX(),
                area.getY() + 0.9 * canvas.type().labelPx(),
                font,
                palette.muted(),
                Align.LEFT);
        Rectangle2D plot = new Rectangle2D.Double(
                area.getX(),
                area.getY() + head,
                area.getWidth() - canvas.type().smallPx(),
                area.getHeight() - axis - head);
        double slot = plot.getHeight() / zones.zones().size();
        grid(canvas, plot, high);
        for (int i = 0; i < zones.zones().size(); i++) {
            row(canvas, plot, plot.getY() + i * slot, slot, zones.zones().get(i));
        }
    }

    private void grid(Canvas canvas, Rectangle2D plot, double high) {
        Font font = canvas.small();
        double scale = plot.getWidth() / high;
        double step = Numbers.niceStep(high, 6);
        for (double value = 0; value <= high; value += step) {
            double x = plot.getX() + scale * value;
            canvas.line(x, plot.getY(), x, plot.getMaxY(), palette.grid(), 1.0);
            String text = Numbers.fixed(value, step < 1 ? 1 : 0);
            Align align = value == 0.0 ? Align.LEFT : Align.CENTER;
            canvas.text(text, x, plot.getMaxY() + 1.3 * font.getSize2D(), font, palette.muted(), align);
        }
    }

    private void row(Canvas canvas, Rectangle2D plot, double top, double slot, ZoneComparison.Row row) {
        double high = plot.getWidth();
        double scale = high / (units.dryMatter(largestMgHa()) * 1.04);
        Font strong = canvas.strongLabel();
        double nameHeight = Math.min(0.42 * slot, 1.5 * strong.getSize2D());
        double y = top + nameHeight;
        double bar = Math.min(0.5 * (slot - nameHeight), 110.0);
        double baseline = y - 0.35 * strong.getSize2D();
        canvas.text(Canvas.fitted(label(row), strong, high), plot.getX(), baseline, strong, palette.ink(), Align.LEFT);
        double x = plot.getX();
        x = block(canvas, new double[] {x, y, scale * units.dryMatter(row.harvestedMgHa()), bar}, 0);
        x = block(canvas, new double[] {x, y, scale * units.dryMatter(row.droughtPenaltyMgHa()), bar}, 1);
        block(canvas, new double[] {x, y, scale * units.dryMatter(row.excessWaterPenaltyMgHa()), bar}, 2);
        canvas.tip(
                new Rectangle2D.Double(plot.getX(), y, high, bar),
                label(row) + "; poorest year " + Numbers.fixed(units.dryMatter(row.lowestMgHa()), 1) + ", best "
                        + Numbers.fixed(units.dryMatter(row.highestMgHa()), 1));
        double whisker = y + bar + 0.12 * slot;
        double from = plot.getX() + scale * units.dryMatter(row.lowestMgHa());
        double to = plot.getX() + scale * units.dryMatter(row.highestMgHa());
        canvas.line(from, whisker, to, whisker, palette.ink(), 1.6);
        canvas.line(from, whisker - 4, from, whisker + 4, palette.ink(), 1.6);
        canvas.line(to, whisker - 4, to, whisker + 4, palette.ink(), 1.6);
    }

    private double largestMgHa() {
        double top = 0.1;
        for (ZoneComparison.Row row : zones.zones()) {
            double lost = Math.max(0, row.droughtPenaltyMgHa()) + Math.max(0, row.excessWaterPenaltyMgHa());
            top = Math.max(top, Math.max(row.highestMgHa(), row.harvestedMgHa() + lost));
        }
        return top;
    }

    private String label(ZoneComparison.Row row) {
        return row.name() + ": " + units.yieldText(row.harvestedMgHa()) + ", "
                + Numbers.fixed(units.dryMatter(Math.max(0, row.droughtPenaltyMgHa())), 1) + " lost to drought";
    }

    /** Draws x, y, width and height as harvested, lost to drought or lost to excess water; returns its right edge. */
    private double block(Canvas canvas, double[] box, int kind) {
        if (!(box[2] > 1.0)) {
            return box[0];
        }
        Rectangle2D shape = new Rectangle2D.Double(box[0], box[1], box[2], box[3]);
        if (kind == 0) {
            canvas.fill(shape, palette.crop());
        } else {
            canvas.fill(shape, kind == 1 ? palette.dryTint() : palette.wetTint());
            canvas.outline(shape, kind == 1 ? palette.dry() : palette.wet(), 1.2);
        }
        return box[0] + box[2];
    }
}
