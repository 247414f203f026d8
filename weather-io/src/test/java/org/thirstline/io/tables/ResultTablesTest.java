package org.thirstline.io.tables;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.tables.DailyTable.ZoneDays;
import org.thirstline.io.tables.SeasonTable.ZoneSeasons;
import org.thirstline.model.result.CanopyEnd;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ResultTablesTest {

    /** The published order of seasons.csv; more columns may follow. */
    private static final String SEASON_COLUMNS =
            "zone,growth_year,stand_age,emergence_date,full_canopy_date,canopy_end_date,canopy_end_cause,harvest_date,"
                    + "max_leaf_area_index,intercepted_par_mj_m2,season_rain_mm,rain_deficit_mm,season_et0_mm,transpiration_mm,"
                    + "soil_evaporation_mm,runoff_mm,drainage_mm,soil_water_start_mm,soil_water_end_mm,mean_water_factor,"
                    + "stressed_days,shoots_m2,height_m,peak_biomass_mg_ha,harvested_mg_ha,harvest_moisture_pct,"
                    + "harvested_fresh_mg_ha,potential_harvested_mg_ha,drought_penalty_mg_ha,drought_penalty_pct,"
                    + "penalty_this_season_mg_ha,penalty_carried_over_mg_ha,season_class";

    @Test
    void seasonsHaveThePublishedColumnsFirstAndEveryVariableOnce() throws IOException {
        List<String> columns =
                SeasonTable.info().columns().stream().map(ColumnInfo::name).toList();
        List<String> published = List.of(SEASON_COLUMNS.split(","));

        assertThat(columns).startsWith(published.toArray(String[]::new)).doesNotHaveDuplicates();
        assertThat(columns.get(published.size())).isEqualTo("status");
        assertThat(columns)
                .containsAll(Arrays.stream(SeasonVariable.values())
                        .map(SeasonVariable::column)
                        .toList());
        assertThat(text(SeasonTable.of(List.of(), Map.of()))).isEqualTo(String.join(",", columns) + "\n");
    }

    @Test
    void seasonsReadBack() throws IOException {
        SeasonRecord.Dates dates = new SeasonRecord.Dates(
                LocalDate.of(2012, 4, 12),
                null,
                LocalDate.of(2012, 10, 8),
                CanopyEnd.KILLING_FROST,
                LocalDate.of(2013, 3, 1));
        double[] values = new double[SeasonVariable.values().length];
        for (int i = 0; i < values.length; i++) {
            values[i] = 10 + i / 8.0;
        }
        values[SeasonVariable.HARVEST_MOISTURE.ordinal()] = Double.NaN;
        SeasonRecord season = new SeasonRecord(2012, 4, SeasonStatus.COMPLETE, dates, values);
        CsvTable table = SeasonTable.of(List.of(new ZoneSeasons("valley, low", List.of(season))), Map.of(2012, "dry"));

        CSVRecord row = rows(table).get(0);
        assertThat(row.get("zone")).isEqualTo("valley, low");
        assertThat(row.get("growth_year")).isEqualTo("2012");
        assertThat(row.get("stand_age")).isEqualTo("4");
        assertThat(row.get("emergence_date")).isEqualTo("2012-04-12");
        assertThat(row.get("full_canopy_date")).isEmpty();
        assertThat(row.get("canopy_end_cause")).isEqualTo("killing frost");
        assertThat(row.get("harvest_date")).isEqualTo("2013-03-01");
        assertThat(row.get("harvest_moisture_pct")).isEmpty();
        assertThat(row.get("season_class")).isEqualTo("dry");
        assertThat(row.get("status")).isEqualTo("complete");
        assertNumbersReadBack(row, season);
    }

    private static void assertNumbersReadBack(CSVRecord row, SeasonRecord season) {
        for (SeasonVariable variable : SeasonVariable.values()) {
            if (variable != SeasonVariable.HARVEST_MOISTURE) {
                double half = 0.5 * Math.pow(10, -Decimals.of(variable.unit()));
                assertThat(Double.parseDouble(row.get(variable.column())))
                        .as(variable.column())
                        .isBetween(season.value(variable) - half, season.value(variable) + half);
            }
        }
    }

    @Test
    void daysHaveAColumnForEveryVariableAndLayerEdge(@TempDir Path folder) throws IOException {
        List<ZoneDays> zones =
                List.of(new ZoneDays("thin", days(3, 0.1, 0.6)), new ZoneDays("deep", days(2, 0.1, 0.35, 0.6, 1.8)));
        List<CSVRecord> rows = rows(written(zones, folder));

        assertThat(rows).hasSize(5);
        List<String> header =
                DailyTable.info(zones).columns().stream().map(ColumnInfo::name).toList();
        assertThat(header).startsWith("zone", "date", "tmin_c", "tmax_c", "rain_mm");
        assertThat(header.subList(header.size() - 4, header.size()))
                .containsExactly(
                        "soil_water_10cm_mm", "soil_water_35cm_mm", "soil_water_60cm_mm", "soil_water_180cm_mm");
        assertThat(rows.get(2).get("zone")).isEqualTo("thin");
        assertThat(rows.get(2).get("date")).isEqualTo("2012-03-01");
        assertThat(rows.get(2).get("soil_water_35cm_mm")).isEmpty();
        assertThat(rows.get(2).get("soil_water_60cm_mm")).isEqualTo("101.250");
        assertThat(rows.get(4).get("soil_water_35cm_mm")).isEqualTo("101.125");
        assertThat(rows.get(4).get("rain_mm")).isEqualTo("2.125");
    }

    @Test
    void sixtyZoneYearsAreWrittenTheSameAgain(@TempDir Path folder) throws IOException {
        double[] bottoms = {0.1, 0.35, 0.6, 0.9, 1.2, 1.5, 1.8};
        List<ZoneDays> zones =
                List.of(new ZoneDays("a", days(10_957, bottoms)), new ZoneDays("b", days(10_957, bottoms)));
        byte[] first = written(zones, folder);
        assertThat(written(zones, folder)).isEqualTo(first);
        assertThat(rows(first)).hasSize(2 * 10_957);
    }

    @Test
    void theDescriptorNamesEveryColumnWithUnitAndMeaning(@TempDir Path folder) throws IOException {
        List<ZoneDays> zones = List.of(new ZoneDays("a", days(2, 0.1, 0.6)));
        List<TableInfo> tables = List.of(SeasonTable.info(), DailyTable.info(zones));
        SeasonTable.of(List.of(), Map.of()).writeTo(folder.resolve(SeasonTable.FILE));
        DailyTable.write(zones, folder.resolve(DailyTable.FILE));

        String text = DataPackage.descriptor("Larkmoor, north", "invented", tables, folder);
        assertThat(text)
                .isEqualTo(DataPackage.descriptor("Larkmoor, north", "invented", tables, folder))
                .doesNotContain("\r");
        JsonNode descriptor = new JsonMapper().readTree(text);
        assertThat(descriptor.get("resources").size()).isEqualTo(2);
        assertThat(descriptor.get("name").asString()).isEqualTo("larkmoor-north");
        JsonNode daily = descriptor.get("resources").get(1);
        assertThat(daily.get("path").asString()).isEqualTo("daily.csv");
        assertThat(daily.get("bytes").asLong()).isEqualTo(Files.size(folder.resolve("daily.csv")));
        assertThat(daily.get("hash").asString()).isEqualTo("sha256:" + Sha256.of(folder.resolve("daily.csv")));
        for (JsonNode resource : descriptor.get("resources").values()) {
            Path file = folder.resolve(resource.get("path").asString());
            JsonNode fields = resource.get("schema").get("fields");
            assertFieldsAreTheHeader(
                    fields, Files.readString(file).lines().findFirst().orElseThrow());
        }
    }

    private static void assertFieldsAreTheHeader(JsonNode fields, String header) {
        assertThat(fields.values())
                .extracting(field -> field.get("name").asString())
                .containsExactly(header.split(","));
        assertThat(fields.values()).allSatisfy(field -> {
            assertThat(field.get("type").asString()).isIn("string", "integer", "number", "date");
            assertThat(field.get("description").asString()).isNotBlank();
            assertThat(field.has("unit")).isEqualTo(field.get("type").asString().matches("number|integer"));
        });
    }

    @Test
    void everyUnitOfTheModelHasItsDecimals() {
        assertThat(SeasonVariable.values()).allMatch(variable -> Decimals.isKnown(variable.unit()));
        assertThat(DailyVariable.values()).allMatch(variable -> Decimals.isKnown(variable.unit()));
    }

    private static DailyResults days(int count, double... bottomsM) {
        DailyResults days = new DailyResults(LocalDate.of(2012, 2, 28), count, bottomsM);
        double[] water = new double[bottomsM.length];
        for (int day = 0; day < count; day++) {
            for (DailyVariable variable : DailyVariable.values()) {
                days.set(variable, day, variable.ordinal() + day % 100 / 8.0);
            }
            for (int layer = 0; layer < water.length; layer++) {
                water[layer] = 100 + layer + day % 100 / 8.0;
            }
            days.setSoilWater(day, water);
        }
        return days;
    }

    private static byte[] written(List<ZoneDays> zones, Path folder) throws IOException {
        Path file = folder.resolve(DailyTable.FILE);
        DailyTable.write(zones, file);
        return Files.readAllBytes(file);
    }

    private static List<CSVRecord> rows(CsvTable table) throws IOException {
        return rows(table.toBytes());
    }

    private static List<CSVRecord> rows(byte[] table) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(new String(table, StandardCharsets.UTF_8)))
                .getRecords();
    }

    private static String text(CsvTable table) {
        return new String(table.toBytes(), StandardCharsets.UTF_8);
    }
}
