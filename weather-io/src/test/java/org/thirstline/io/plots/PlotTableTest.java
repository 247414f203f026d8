package org.thirstline.io.plots;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.model.error.InputException;

class PlotTableTest {

    private static final String TIDY = "zone,plot,planting_year,growth_year,variable,value,unit\n";

    @TempDir
    private Path folder;

    private Path studyFile = Path.of("");

    @BeforeEach
    void write() throws IOException {
        studyFile = folder.resolve("study.yaml");
        Files.writeString(folder.resolve("weather.csv"), "date,tmin_c,tmax_c,rain_mm\n2001-01-01,1,2,0\n");
        Files.writeString(studyFile, study(45));
    }

    private static String study(int latitude) {
        return """
                title: test
                site: {name: nowhere, latitude_deg: %d, elevation_m: 100}
                weather: {file: weather.csv}
                crop: giant miscanthus
                stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
                zones:
                  - {name: loam, soil: {available_water: 150 mm/m, depth: 1 m}}
                  - {name: slope, soil: {available_water: 150 mm/m, depth: 1 m}}
                harvest: {date: 03-01}
                """.formatted(latitude);
    }

    private PlotTable read(String text) throws IOException {
        Path file = folder.resolve("plots.csv");
        Files.writeString(file, text);
        Study study = StudyReader.read(studyFile);
        return PlotTable.read(file, study);
    }

    private InputException refusal(String text) {
        return catchThrowableOfType(InputException.class, () -> read(text));
    }

    @Test
    void oneLineForEachValue() throws IOException {
        PlotTable table = read("# invented: true\n" + TIDY.replace("unit", "unit,error,block")
                + "loam,1,2001,2003,yield,12.5,Mg/ha,0.8,A\nslope,1,2002,2005,Harvested,8,t/ha,,B\n");
        assertThat(table.invented()).isTrue();
        assertThat(table.yields()).hasSize(2);
        PlotYield first = table.yields().get(0);
        assertThat(first.plot()).isEqualTo("A 1");
        assertThat(first.standAge()).isEqualTo(3);
        assertThat(first.errorMgHa()).isEqualTo(0.8);
        assertThat(first.line()).isEqualTo(3);
        assertThat(table.yields().get(1).errorMgHa()).isNaN();
    }

    @Test
    void oneColumnForEachYear() throws IOException {
        PlotTable table = read("zone;plot;unit;2003;2002;remarks\nloam;1;kg/ha;12500;;wet\nslope;2;kg/ha;9000;3000;\n");
        assertThat(table.yields()).extracting(PlotYield::growthYear).containsExactly(2003, 2002, 2003);
        assertThat(table.yields()).extracting(PlotYield::yieldMgHa).containsExactly(12.5, 3.0, 9.0);
        assertThat(table.yields()).extracting(PlotYield::plantingYear).containsOnly(2001);
        assertThat(table.notices())
                .containsExactly(
                        "1 plot value that is missing (first on line 2) left out.",
                        "Columns not read: remarks.",
                        "The plot data name no planting year; the study's, 2001, is taken.");
    }

    @ParameterizedTest
    @CsvSource({
        "Mg/ha,12,12",
        "t ha-1,12,12",
        "kg/ha,12000,12",
        "g/m²,1200,12",
        "g m-2,1200,12",
        "short ton/acre,1,2.241702",
        "short tons/acre,1,2.241702"
    })
    void units(String unit, String value, double mgHa) throws IOException {
        // 1 short ton/acre = 907.18474 kg / 4046.856422 m2, printed to seven digits.
        assertThat(read(TIDY + "loam,1,2001,2003,yield," + value + "," + unit + "\n")
                        .yields()
                        .get(0)
                        .yieldMgHa())
                .isCloseTo(mgHa, within(5e-7));
    }

    @ParameterizedTest
    @CsvSource({
        "45,2003-11-20,2003",
        "45,2004-02-20,2003",
        "45,2004-04-10,2003",
        "45,2004-07-01,2004",
        "-35,2004-06-10,2003",
        "-35,2004-09-20,2003",
        "-35,2005-01-15,2004"
    })
    void aWinterHarvestBelongsToTheYearThatGrewIt(int latitude, String date, int growthYear) throws IOException {
        Files.writeString(studyFile, study(latitude));
        PlotTable table = read("zone,plot,harvest_date,variable,value,unit\nloam,1," + date + ",yield,9,Mg/ha\n");
        assertThat(table.yields().get(0).growthYear()).isEqualTo(growthYear);
    }

    @Test
    void aYieldOfNothingIsLeftOutAndSaid() throws IOException {
        PlotTable table = read(TIDY + "loam,1,2001,2001,yield,0,Mg/ha\nloam,1,2001,2003,yield,9,Mg/ha\n");
        assertThat(table.yields()).hasSize(1);
        assertThat(String.join(" ", table.notices())).contains("of nothing (first on line 2)");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "laom,1,2001,2003,yield,9,Mg/ha     | UNKNOWN_ZONE     | did you mean 'loam'",
                "loam,1,2001,2003,yield,900,Mg/ha   | YIELD_IMPOSSIBLE | 900 Mg/ha",
                "loam,1,2001,2003,yield,-1,Mg/ha    | YIELD_IMPOSSIBLE | -1",
                "loam,1,2001,2003,yield,nine,Mg/ha  | BAD_FIELD        | column value",
                "loam,1,2001,2003,yield,9,bushel    | UNKNOWN_UNIT     | short ton/acre",
                "loam,1,2001,2003,yeild,9,Mg/ha     | UNKNOWN_VARIABLE | did you mean 'yield'",
                "loam,1,2001,03,yield,9,Mg/ha       | BAD_FIELD        | growth_year",
                "loam,1,2004,2003,yield,9,Mg/ha     | BEFORE_PLANTING  | 2004",
                "loam,,2001,2003,yield,9,Mg/ha      | BAD_FIELD        | plot",
                "loam,1,2001,2003,yield,9           | FIELD_COUNT      | 6 fields",
            })
    void mistakesNameLineColumnFoundAndAllowed(String row, PlotError code, String expected) {
        InputException refused = refusal(TIDY + row + "\n");
        assertThat(refused.code()).isEqualTo(code);
        assertThat(refused).hasMessageContaining("plots.csv:2: ").hasMessageContaining(expected);
    }

    @Test
    void mistakesOfTheWholeFile() {
        assertThat(refusal("").code()).isEqualTo(PlotError.NO_YIELDS);
        assertThat(refusal(TIDY).code()).isEqualTo(PlotError.NO_YIELDS);
        assertThat(refusal(TIDY.replace("unit", "units"))).hasMessageContaining("did you mean 'unit'");
        assertThat(refusal(TIDY.replace(",value", "") + "loam,1,2001,2003,yield,Mg/ha\n")
                        .code())
                .isEqualTo(PlotError.COLUMN_MISSING);
        String row = "loam,1,2001,2003,yield,9,Mg/ha\n";
        InputException twice = refusal(TIDY + row + row);
        assertThat(twice.code()).isEqualTo(PlotError.TWICE);
        assertThat(twice).hasMessageContaining(":3: ").hasMessageContaining("first on line 2");
        String both = "zone,plot,growth_year,harvest_date,variable,value,unit\nloam,1,2004,2004-02-20,yield,9,Mg/ha\n";
        assertThat(refusal(both).code()).isEqualTo(PlotError.YEARS_DISAGREE);
        assertThat(List.of(PlotError.values()))
                .allSatisfy(error -> assertThat(error.template()).isNotBlank());
    }
}
