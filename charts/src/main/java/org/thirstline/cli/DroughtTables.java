package org.thirstline.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.thirstline.calibration.response.BrokenLine;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.response.RobustLine;
import org.thirstline.calibration.response.StraightLine;
import org.thirstline.calibration.years.IndexResponse;
import org.thirstline.calibration.years.ThirstTable;
import org.thirstline.charts.ThirstTableChart;
import org.thirstline.charts.UnitSystem;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;

/** Tables of {@code drought} about what missing rain cost. Stateless and thread-safe. */
final class DroughtTables {

    private static final double MM_SHOWN = 100.0;
    private static final int DECIMALS = 4;

    private DroughtTables() {}

    /** Every index of every zone with its lines. */
    static ResultTable indices(DroughtFindings findings) {
        ResultTable result = ResultTable.start(indexInfo());
        for (DroughtFindings.ZoneFindings zone : findings.zones()) {
            for (IndexResponse response : zone.responses()) {
                index(result.table(), zone.zone().zone().name(), response);
            }
        }
        return result;
    }

    private static TableInfo indexInfo() {
        return new TableInfo(
                "drought-indices.csv",
                "Drought penalty against every index of dryness, by zone",
                List.of(
                        ColumnInfo.text("zone", "Zone of the field"),
                        ColumnInfo.text(
                                "index",
                                "Index of dryness; SPI counts with its sign turned, so that x grows as it gets drier"),
                        ColumnInfo.text("per", "Step of x that slopes are told for"),
                        ColumnInfo.integer("years", "1", "Years behind the line"),
                        ColumnInfo.text("verdict", "What the years can say"),
                        number("slope_mg_ha", "Least-squares slope per step"),
                        number("slope_low_mg_ha", "Lower limit of its 95 % interval"),
                        number("slope_high_mg_ha", "Upper limit of its 95 % interval"),
                        number("intercept_mg_ha", "Penalty on the line at x = 0"),
                        ColumnInfo.number("r_squared", "1", "Share of the variance that the line takes up"),
                        number("robust_slope_mg_ha", "Theil-Sen slope per step"),
                        number("robust_slope_low_mg_ha", "Lower limit of its 95 % interval"),
                        number("robust_slope_high_mg_ha", "Upper limit of its 95 % interval"),
                        number("slope_without_any_year_low_mg_ha", "Smallest slope with one year left out"),
                        number("slope_without_any_year_high_mg_ha", "Largest slope with one year left out"),
                        ColumnInfo.text("influential_years", "Years with a Cook's distance over 4/n, strongest first"),
                        ColumnInfo.number(
                                "broken_line_gain_aicc", "1", "AICc of the straight minus that of the broken line"),
                        ColumnInfo.number(
                                "threshold", "unit of the index", "Threshold of the broken line, where it is better"),
                        ColumnInfo.number("threshold_low", "unit of the index", "Lower limit of its 95 % interval"),
                        ColumnInfo.number("threshold_high", "unit of the index", "Upper limit of its 95 % interval"),
                        number("broken_slope_mg_ha", "Slope beyond the threshold per step")));
    }

    private static ColumnInfo number(String name, String meaning) {
        return ColumnInfo.number(name, "Mg/ha", meaning);
    }

    private static void index(CsvTable table, String zone, IndexResponse found) {
        DroughtResponse response = found.response();
        double step = found.kind().isSpi() ? 1.0 : MM_SHOWN;
        table.text(zone)
                .text(found.kind().id())
                .text(found.kind().isSpi() ? "1 SPI" : "100 mm")
                .whole(response.n())
                .text(response.verdict().words());
        straight(table, response.line(), step);
        Optional<RobustLine> robust = response.robustLine();
        table.number(robust.map(RobustLine::slope).orElse(Double.NaN) * step, DECIMALS);
        interval(table, robust.map(RobustLine::slopeInterval), step);
        interval(table, response.slopeWithoutAnyYear(), step);
        table.text(response.influentialYears().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        table.number(finite(response.brokenLineGain()), DECIMALS);
        Optional<BrokenLine> broken = response.brokenLine();
        table.number(broken.map(BrokenLine::threshold).orElse(Double.NaN), DECIMALS);
        interval(table, broken.map(BrokenLine::thresholdInterval), 1.0);
        table.number(broken.map(BrokenLine::slope).orElse(Double.NaN) * step, DECIMALS)
                .endRow();
    }

    private static double finite(double value) {
        return Double.isFinite(value) ? value : Double.NaN;
    }

    private static void straight(CsvTable table, Optional<StraightLine> line, double step) {
        table.number(line.map(StraightLine::slope).orElse(Double.NaN) * step, DECIMALS);
        interval(table, line.map(StraightLine::slopeInterval), step);
        table.number(line.map(StraightLine::intercept).orElse(Double.NaN), DECIMALS)
                .number(line.map(StraightLine::rSquared).orElse(Double.NaN), DECIMALS);
    }

    private static void interval(CsvTable table, Optional<Interval> interval, double step) {
        table.number(interval.map(Interval::lower).orElse(Double.NaN) * step, DECIMALS)
                .number(interval.map(Interval::upper).orElse(Double.NaN) * step, DECIMALS);
    }

    /** Losses by deficit and available water. */
    static ResultTable thirst(ThirstTable thirst) {
        ResultTable result = ResultTable.start(new TableInfo(
                "thirst-table.csv",
                "Expected loss to drought by rainfall deficit and available water of the soil; cells beyond the data are empty",
                List.of(
                        ColumnInfo.text("soil_of_zone", "Zone whose soil is cut or continued"),
                        ColumnInfo.number("available_water_mm", "mm", "Available water capacity of the soil"),
                        ColumnInfo.number("soil_depth_m", "m", "Depth of the soil"),
                        ColumnInfo.integer("years", "1", "Years behind the line of this soil"),
                        ColumnInfo.number("rain_deficit_mm", "mm", "Normal minus actual rain of the growing season"),
                        number("expected_loss_mg_ha", "Loss on the line, at least nothing"),
                        number("loss_low_mg_ha", "Lower edge of the 95 % band of a single year, at least nothing"),
                        number("loss_high_mg_ha", "Upper edge of the 95 % band of a single year"))));
        for (ThirstTable.Rung rung : thirst.rungs()) {
            for (double deficit : ThirstTableChart.steps(thirst, UnitSystem.SI)) {
                Optional<ThirstTable.Cell> cell = rung.at(deficit);
                result.table()
                        .text(thirst.soilOf())
                        .number(rung.availableWaterMm(), 1)
                        .number(rung.depthM(), 3)
                        .whole(rung.response().n())
                        .number(deficit, 1)
                        .number(cell.map(ThirstTable.Cell::expectedMgHa).orElse(Double.NaN), 3);
                result.table()
                        .number(cell.map(found -> found.range().lower()).orElse(Double.NaN), 3)
                        .number(cell.map(found -> found.range().upper()).orElse(Double.NaN), 3)
                        .endRow();
            }
        }
        return result;
    }
}
