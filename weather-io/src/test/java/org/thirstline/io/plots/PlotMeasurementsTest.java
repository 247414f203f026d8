package org.thirstline.io.plots;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;

/** What is measured on plots beside their yields. */
class PlotMeasurementsTest {

    private static final String HEADER = "plot,planting_year,growth_year,date,depth_m,variable,value,unit,error\n";

    @TempDir
    private Path folder;

    private Study study(int latitude) throws IOException {
        Files.writeString(folder.resolve("weather.csv"), "date,tmin_c,tmax_c,rain_mm\n2001-01-01,1,2,0\n");
        Path file = folder.resolve("study.yaml");
        Files.writeString(file, """
                title: test
                site: {name: nowhere, latitude_deg: %d, elevation_m: 100}
                weather: {file: weather.csv}
                crop: giant miscanthus
                stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
                soil: {available_water: 150 mm/m, depth: 1 m}
                harvest: {date: 03-01}
                """.formatted(latitude));
        return StudyReader.read(file);
    }

    private PlotTable read(String text) throws IOException {
        return read(text, 45);
    }

    private PlotTable read(String text, int latitude) throws IOException {
        Path file = folder.resolve("plots.csv");
        Files.writeString(file, text);
        return PlotTable.readAll(file, study(latitude));
    }

    @ParameterizedTest
    @CsvSource({
        "leaf_area_index,5.1,m²/m²,5.1",
        "LAI,5.1,1,5.1",
        "intercepted_fraction,93,%,0.93",
        "standing biomass,18000,kg/ha,18",
        "soil_water,310,mm,310",
        "soil_water,0.25,m3/m3,225",
        "soil moisture,25,% vol,225"
    })
    void valuesOfDays(String variable, String value, String unit, double expected) throws IOException {
        PlotTable table = read(HEADER + "1,2001,,2003-07-01,0.9," + variable + "," + value + "," + unit + ",\n");
        PlotObservation only = table.observations().get(0);
        assertThat(only.value()).isCloseTo(expected, within(1e-9));
        assertThat(only.date()).isEqualTo(LocalDate.of(2003, 7, 1));
        assertThat(only.growthYear()).isEqualTo(2003);
        assertThat(only.error()).isNaN();
        assertThat(Double.isNaN(only.depthM())).isEqualTo(only.variable() != PlotVariable.SOIL_WATER);
    }

    /** Growth years start on 1 July in the south, so that 25 August 2003 is its 56th day: 31 days of July and 25. */
    @Test
    void datesAreDaysOfTheGrowthYear() throws IOException {
        String rows = "1,2001,,,,emergence,2003-05-04,date,2\n1,2001,2003,,,canopy_end,300,day of year,\n";
        PlotTable north = read(HEADER + rows);
        assertThat(north.observations().get(0).value()).isEqualTo(31 + 28 + 31 + 30 + 4);
        assertThat(north.observations().get(0).error()).isEqualTo(2.0);
        assertThat(north.observations().get(1).value()).isEqualTo(300.0);
        PlotTable south = read(HEADER + "1,2001,,,,emergence,2003-08-25,date,\n", -35);
        assertThat(south.observations().get(0).value()).isEqualTo(56.0);
        assertThat(south.observations().get(0).growthYear()).isEqualTo(2003);
    }

    @Test
    void moistureBelongsToTheHarvest() throws IOException {
        String header = "plot,harvest_date,variable,value,unit\n";
        PlotTable table = read(header + "1,2004-03-01,harvest_moisture,18,%\n1,2004-03-01,yield,12,Mg/ha\n");
        assertThat(table.observations().get(0).growthYear()).isEqualTo(2003);
        assertThat(table.observations().get(0).value()).isEqualTo(18.0);
        assertThat(table.yields()).hasSize(1);
    }

    @Test
    void mixedUnitsAreConvertedAndSaid() throws IOException {
        PlotTable table = read(HEADER + "1,2001,2003,,,yield,12,Mg/ha,\n1,2001,2004,,,yield,9000,kg/ha,\n");
        assertThat(table.yields()).extracting(PlotYield::yieldMgHa).containsExactly(12.0, 9.0);
        assertThat(table.notices()).anyMatch(notice -> notice.startsWith("Units are mixed in yield (Mg/ha, kg/ha)"));
    }

    @Test
    void rowsOfOtherSitesAreLeftOutAndNamed() throws IOException {
        String header = "site,plot,growth_year,variable,value,unit\n";
        PlotTable table = read(header + "nowhere,1,2003,yield,12,Mg/ha\nelsewhere,1,2003,yield,13,Mg/ha\n");
        assertThat(table.yields()).hasSize(1);
        assertThat(table.otherSites()).containsExactly("elsewhere");
        assertThat(table.notices()).anyMatch(notice -> notice.contains("elsewhere"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,2001,,2003-07-01,,leaf_area_index,5,Mg/ha,   | UNIT_OF_VARIABLE | m2/m2",
                "1,2001,,2003-07-01,,leaf_area_index,55,m2/m2,  | VALUE_IMPOSSIBLE | 0 to 20",
                "1,2001,,2003-07-01,,intercepted_fraction,93,1, | VALUE_IMPOSSIBLE | Is the unit right",
                "1,2001,,2003-07-01,,soil_water,0.25,m3/m3,     | DEPTH_MISSING    | depth_m",
                "1,2001,,2003-07-01,-1,soil_water,250,mm,       | BAD_FIELD        | depth_m",
                "1,2001,,,,leaf_area_index,5,m2/m2,             | BAD_FIELD        | column date",
                "1,2001,,01.07.2003,,leaf_area_index,5,m2/m2,   | BAD_FIELD        | year-month-day",
                "1,2001,,2000-07-01,,leaf_area_index,5,m2/m2,   | BEFORE_PLANTING  | 2000",
                "1,2001,,,,emergence,soon,date,                 | BAD_FIELD        | column value",
                "1,2001,2003,,,emergence,400,day of year,       | BAD_FIELD        | 1 to 366",
                "1,2001,,2003-07-01,,leaf_area_index,5,m2/m2,0  | BAD_FIELD        | column error",
                "1,2001,,2003-07-01,,leaf_araa_index,5,m2/m2,   | UNKNOWN_VARIABLE | did you mean 'leaf_area_index'"
            })
    void refusals(String row, PlotError code, String part) {
        assertRefused(() -> read(HEADER + row + "\n"), code, "plots.csv", "2", part);
    }

    @Test
    void aValueTwiceIsRefused() {
        String row = "1,2001,,2003-07-01,,leaf_area_index,5,m2/m2,\n";
        assertRefused(() -> read(HEADER + row + row), PlotError.MEASURED_TWICE, "first on line 2");
    }
}
