package org.thirstline.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.response.StraightLine;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.years.IndexKind;
import org.thirstline.calibration.years.YearIndices;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** {@code drought.csv}: what each year lacked in rain and lost in yield, and what the fitted line says about it. */
final class DroughtTable {

    static final String FILE = "drought.csv";
    private static final int YIELD_DECIMALS = 3;
    private static final int RAIN_DECIMALS = 2;

    /** Indices beside those of the growing-season window. */
    private static final List<IndexKind> MORE = Arrays.stream(IndexKind.values())
            .filter(kind -> kind != IndexKind.SEASON && kind != IndexKind.ET0_MINUS_RAIN)
            .toList();

    private DroughtTable() {}

    static TableInfo info() {
        return new TableInfo(
                FILE,
                "Rainfall deficit and drought penalty by zone and growth year",
                joined(
                        List.of(
                                ColumnInfo.text("zone", "Zone of the field"),
                                ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                                ColumnInfo.integer(
                                        "stand_age", "yr", "Age of the stand in growth years, planting year = 1"),
                                ColumnInfo.text(
                                        "season_class", "Dry, middle or wet by the rain of the season or by the user"),
                                rain("season_rain_mm", "Precipitation in the growing-season window"),
                                rain("normal_rain_mm", "Normal precipitation of the window"),
                                rain("rain_deficit_mm", "Normal minus actual precipitation"),
                                rain(
                                        "et0_minus_rain_mm",
                                        "Reference evapotranspiration minus precipitation in the window"),
                                dryMatter("drought_penalty_mg_ha", "Harvest lost to lack of water"),
                                ColumnInfo.number(
                                        "drought_penalty_pct", "%", "The same as a share of the potential harvest"),
                                ColumnInfo.text(
                                        "in_line",
                                        "Whether the year is one of those the line is fitted to (yes or no)"),
                                dryMatter("line_mg_ha", "Penalty on the fitted line at this year's deficit"),
                                dryMatter("confidence_low_mg_ha", "Lower edge of the 95 % band of the line"),
                                dryMatter("confidence_high_mg_ha", "Upper edge of the 95 % band of the line"),
                                dryMatter("prediction_low_mg_ha", "Lower edge of the 95 % band of a single year"),
                                dryMatter("prediction_high_mg_ha", "Upper edge of the 95 % band of a single year")),
                        MORE.stream().map(DroughtTable::column).toList()));
    }

    private static List<ColumnInfo> joined(List<ColumnInfo> first, List<ColumnInfo> then) {
        List<ColumnInfo> all = new ArrayList<>(first);
        all.addAll(then);
        return all;
    }

    private static ColumnInfo column(IndexKind kind) {
        String meaning =
                Character.toUpperCase(kind.words().charAt(0)) + kind.words().substring(1);
        return kind.isSpi()
                ? ColumnInfo.number(kind.column(), "1", meaning + " (WMO-No. 1090), negative when dry")
                : rain(kind.column(), meaning);
    }

    private static ColumnInfo rain(String name, String meaning) {
        return ColumnInfo.number(name, "mm", meaning);
    }

    private static ColumnInfo dryMatter(String name, String meaning) {
        return ColumnInfo.number(name, "Mg/ha", meaning);
    }

    static CsvTable of(StudyOutcome outcome, YearIndices indices) {
        CsvTable table = new CsvTable();
        info().header(table);
        for (ZoneOutcome zone : outcome.zones()) {
            zone.stand().seasons().forEach(season -> row(table, outcome, zone, season, indices));
        }
        return table;
    }

    private static void row(
            CsvTable table, StudyOutcome outcome, ZoneOutcome zone, SeasonRecord season, YearIndices indices) {
        double deficit = season.value(SeasonVariable.RAIN_DEFICIT);
        double rain = season.value(SeasonVariable.SEASON_RAIN);
        SeasonClass kind = outcome.classes().get(season.growthYear());
        table.text(zone.zone().name())
                .whole(season.growthYear())
                .whole(season.standAge())
                .text(kind == null ? null : kind.word())
                .number(rain, RAIN_DECIMALS)
                .number(outcome.deficit().normals().meanRainMm(), RAIN_DECIMALS)
                .number(deficit, RAIN_DECIMALS)
                .number(season.value(SeasonVariable.SEASON_ET0) - rain, RAIN_DECIMALS)
                .number(season.value(SeasonVariable.DROUGHT_PENALTY), YIELD_DECIMALS)
                .number(season.value(SeasonVariable.DROUGHT_PENALTY_PCT), RAIN_DECIMALS)
                .text(zone.responseSeasons().contains(season) ? "yes" : "no");
        line(table, zone, deficit);
        MORE.forEach(index -> table.number(indices.at(index, season), RAIN_DECIMALS));
        table.endRow();
    }

    private static void line(CsvTable table, ZoneOutcome zone, double deficit) {
        Optional<StraightLine> line = zone.response().line();
        if (line.isEmpty() || Double.isNaN(deficit)) {
            for (int column = 0; column < 5; column++) {
                table.empty();
            }
            return;
        }
        Interval confidence = line.get().confidenceBand(deficit);
        Interval prediction = line.get().predictionBand(deficit);
        table.number(line.get().at(deficit), YIELD_DECIMALS)
                .number(confidence.lower(), YIELD_DECIMALS)
                .number(confidence.upper(), YIELD_DECIMALS)
                .number(prediction.lower(), YIELD_DECIMALS)
                .number(prediction.upper(), YIELD_DECIMALS);
    }
}
