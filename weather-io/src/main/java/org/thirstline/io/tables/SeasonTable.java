package org.thirstline.io.tables;

import static org.thirstline.model.result.SeasonVariable.DRAINAGE;
import static org.thirstline.model.result.SeasonVariable.DROUGHT_PENALTY;
import static org.thirstline.model.result.SeasonVariable.DROUGHT_PENALTY_PCT;
import static org.thirstline.model.result.SeasonVariable.HARVESTED;
import static org.thirstline.model.result.SeasonVariable.HARVESTED_FRESH;
import static org.thirstline.model.result.SeasonVariable.HARVEST_MOISTURE;
import static org.thirstline.model.result.SeasonVariable.HEIGHT;
import static org.thirstline.model.result.SeasonVariable.INTERCEPTED_PAR;
import static org.thirstline.model.result.SeasonVariable.MAX_LEAF_AREA_INDEX;
import static org.thirstline.model.result.SeasonVariable.MEAN_WATER_FACTOR;
import static org.thirstline.model.result.SeasonVariable.PEAK_BIOMASS;
import static org.thirstline.model.result.SeasonVariable.PENALTY_CARRIED_OVER;
import static org.thirstline.model.result.SeasonVariable.PENALTY_THIS_SEASON;
import static org.thirstline.model.result.SeasonVariable.POTENTIAL_HARVESTED;
import static org.thirstline.model.result.SeasonVariable.RAIN_DEFICIT;
import static org.thirstline.model.result.SeasonVariable.RUNOFF;
import static org.thirstline.model.result.SeasonVariable.SEASON_ET0;
import static org.thirstline.model.result.SeasonVariable.SEASON_RAIN;
import static org.thirstline.model.result.SeasonVariable.SHOOTS;
import static org.thirstline.model.result.SeasonVariable.SOIL_EVAPORATION;
import static org.thirstline.model.result.SeasonVariable.SOIL_WATER_END;
import static org.thirstline.model.result.SeasonVariable.SOIL_WATER_START;
import static org.thirstline.model.result.SeasonVariable.STRESSED_DAYS;
import static org.thirstline.model.result.SeasonVariable.TRANSPIRATION;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.thirstline.model.result.CanopyEnd;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** The table of seasons: one row for each zone and growth year. */
public final class SeasonTable {

    /** File name inside the result folder. */
    public static final String FILE = "seasons.csv";

    /** The numeric columns whose place is fixed; all others follow in the order of the model. */
    private static final List<SeasonVariable> FIXED = List.of(
            MAX_LEAF_AREA_INDEX,
            INTERCEPTED_PAR,
            SEASON_RAIN,
            RAIN_DEFICIT,
            SEASON_ET0,
            TRANSPIRATION,
            SOIL_EVAPORATION,
            RUNOFF,
            DRAINAGE,
            SOIL_WATER_START,
            SOIL_WATER_END,
            MEAN_WATER_FACTOR,
            STRESSED_DAYS,
            SHOOTS,
            HEIGHT,
            PEAK_BIOMASS,
            HARVESTED,
            HARVEST_MOISTURE,
            HARVESTED_FRESH,
            POTENTIAL_HARVESTED,
            DROUGHT_PENALTY,
            DROUGHT_PENALTY_PCT,
            PENALTY_THIS_SEASON,
            PENALTY_CARRIED_OVER);

    private static final List<SeasonVariable> FURTHER = Arrays.stream(SeasonVariable.values())
            .filter(variable -> !FIXED.contains(variable))
            .toList();

    private SeasonTable() {}

    /**
     * The seasons of a zone.
     *
     * @param zone its name
     * @param seasons its seasons, in order
     */
    public record ZoneSeasons(String zone, List<SeasonRecord> seasons) {}

    /** Returns what the table holds. */
    public static TableInfo info() {
        List<ColumnInfo> columns = new ArrayList<>(List.of(
                ColumnInfo.text("zone", "Zone of the field"),
                ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                ColumnInfo.integer("stand_age", "yr", "Age of the stand in growth years, planting year = 1"),
                ColumnInfo.date("emergence_date", "Emergence of the canopy"),
                ColumnInfo.date(
                        "full_canopy_date", "First day with nine tenths of the highest interception of the season"),
                ColumnInfo.date("canopy_end_date", "End of the green canopy"),
                ColumnInfo.text("canopy_end_cause", "What ended the green canopy"),
                ColumnInfo.date("harvest_date", "Day of the cut")));
        FIXED.forEach(variable -> columns.add(info(variable)));
        columns.add(ColumnInfo.text("season_class", "Dry, middle or wet by the rain of the season or by the user"));
        columns.add(ColumnInfo.text("status", "Whether the yields of the season can be compared, and if not, why"));
        FURTHER.forEach(variable -> columns.add(info(variable)));
        return new TableInfo(FILE, "Seasons by zone and growth year", columns);
    }

    /**
     * Returns the table.
     *
     * @param zones the zones, in order
     * @param classes class of a growth year in words; a year that is not in the map has none
     */
    public static CsvTable of(List<ZoneSeasons> zones, Map<Integer, String> classes) {
        CsvTable table = new CsvTable();
        info().header(table);
        for (ZoneSeasons zone : zones) {
            for (SeasonRecord season : zone.seasons()) {
                row(table, zone.zone(), season, classes);
            }
        }
        return table;
    }

    private static void row(CsvTable table, String zone, SeasonRecord season, Map<Integer, String> classes) {
        SeasonRecord.Dates dates = season.dates();
        CanopyEnd cause = dates.canopyEndCause();
        table.text(zone)
                .whole(season.growthYear())
                .whole(season.standAge())
                .date(dates.emergence())
                .date(dates.fullCanopy())
                .date(dates.canopyEnd())
                .text(cause == null ? null : cause.words())
                .date(dates.harvest());
        FIXED.forEach(variable -> value(table, season, variable));
        table.text(classes.get(season.growthYear())).text(season.status().words());
        FURTHER.forEach(variable -> value(table, season, variable));
        table.endRow();
    }

    private static void value(CsvTable table, SeasonRecord season, SeasonVariable variable) {
        table.number(season.value(variable), Decimals.of(variable.unit()));
    }

    private static ColumnInfo info(SeasonVariable variable) {
        return ColumnInfo.number(variable.column(), variable.unit(), variable.meaning());
    }
}
