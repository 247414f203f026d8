package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.text.InputErrors;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;

/** Tables of cells: their columns, what a line means, and slips. */
class CellTableTest {

    private static final String STUDY = """
            title: test
            site: {name: nowhere, latitude: 45 deg, elevation: 100 m}
            weather: {file: weather.csv, format: plain, wind_height: 10 m}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 1 m x 1 m}
            zones:
              - {name: deep, soil: {available_water: 150 mm/m, depth: 1.2 m}}
              - {name: Sandy, soil: {texture: {sand: 80 %, clay: 5 %, organic_matter: 2 %}, depth: 1 m, hydrologic_group: A}}
            harvest: {date: 03-01}
            pick_up: 77 %
            """;

    private static final Site NORTH = new Site("north", 50, 0);

    @TempDir
    private Path folder;

    private StudyFolder files;
    private Study study;

    @BeforeEach
    void study() {
        files = new StudyFolder(folder);
        study = StudyReader.read(files.write("study.yaml", STUDY));
    }

    private Path table(String text) {
        return files.write("cells.csv", text);
    }

    private CellRow row(String text) {
        try (CellTable table = CellTable.open(table(text))) {
            CellRow row = table.next();
            assertThat(row).isNotNull();
            return row;
        }
    }

    private CellFields fields() {
        return new CellFields(study, folder.resolve("cells.csv"));
    }

    private FieldConditions field(String text) {
        return fields().field(row(text), NORTH);
    }

    @Test
    void aLineOverridesTheStudyAndNothingElse() {
        FieldConditions usual = study.field(study.zones().get(0));
        FieldConditions field = field("cell;planted;spacing;zone\nc1;1999-05-01;50 cm x 40 cm;deep\n");

        assertThat(field.stand().plantingDate()).isEqualTo(LocalDate.of(1999, 5, 1));
        assertThat(field.stand().plantsPerM2()).isEqualTo(5.0);
        assertThat(field.soil()).isEqualTo(usual.soil());
        assertThat(field.crop()).isSameAs(usual.crop());
        assertThat(field.harvest()).isEqualTo(usual.harvest());
        assertThat(field.pickUpShare()).isEqualTo(0.77);
        assertThat(field("cell,planting_year,zone\nc1,1999,deep\n").stand().plantingDate())
                .isEqualTo(LocalDate.of(1999, 4, 20));
    }

    @Test
    void soilsAreThoseOfTheStudyFile() {
        FieldConditions byZone = field("cell,zone\nc1,sandy\n");
        FieldConditions byTexture =
                field("cell,sand_pct,clay_pct,organic_matter,depth,hydrologic_group\nc1,80,5,2 %,100 cm,a\n");
        FieldConditions byWater = field("cell,available_water_mm_per_m,depth_m\nc1,150,1.2\n");

        assertThat(byZone.soil()).isSameAs(study.zones().get(1).soil());
        assertThat(byTexture.soil()).usingRecursiveComparison().isEqualTo(byZone.soil());
        assertThat(byWater.soil())
                .usingRecursiveComparison()
                .isEqualTo(study.zones().get(0).soil())
                .isNotEqualTo(byTexture.soil());
    }

    @Test
    void anotherCropBringsWhatTheStudyTookFromItsOwn() {
        FieldConditions field = field("cell,crop,zone\nc1,switchgrass,deep\n");

        assertThat(field.crop()).isEqualTo(CropFiles.bundled("switchgrass").parameters());
        assertThat(field.stubbleM()).isEqualTo(field.crop().get(CropParameter.STUBBLE_HEIGHT));
        assertThat(field.pickUpShare()).isEqualTo(0.77);
    }

    @Test
    void ownWeatherIsReadAsTheStudysAndKnowsItsPlace() {
        CellRow own = row("cell,weather,elevation_m\nc1,later.csv,300\n");
        WeatherSource source = fields().weather(own);

        assertThat(source.files()).containsExactly(folder.resolve("later.csv"));
        assertThat(source.sources().get(0).format()).contains("plain");
        assertThat(source.sources().get(0).options().windHeightM()).isEqualTo(10.0);
        assertThat(fields().place(own)).isEqualTo(new SiteInfo(null, null, null, 300.0));

        CellRow none = row("cell,weather,elevation_m\nc1,,300\n");
        assertThat(fields().weather(none)).isEqualTo(study.weather());
        assertThat(fields().place(none)).isEqualTo(new SiteInfo("nowhere", 45.0, null, 300.0));
    }

    @Test
    void linesForPeopleAndColumnsOfTheirOwnArePassedOver() {
        Path path = table("# a grid\ncell,county,Latitude_deg\n\n# first\nc1,Nowhere,45\nc2,Nowhere,46\n");

        assertThat(CellTable.check(path)).isEqualTo(2);
        try (CellTable table = CellTable.open(path)) {
            assertThat(table.ignored()).isEqualTo(List.of("county"));
            CellRow first = table.next();
            assertThat(first.line()).isEqualTo(5);
            assertThat(first.fields()).containsOnlyKeys("cell", "latitude_deg");
            assertThat(first.weatherKey()).isNotEqualTo(table.next().weatherKey());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cell,dpeth_m/c1,1|COLUMN_UNKNOWN|cells.csv:1|did you mean 'depth_m'",
                "cells,depth_m/c1,1|COLUMN_UNKNOWN|cells.csv:1|did you mean 'cell'",
                "depth_m,zone/1,deep|COLUMN_MISSING|cells.csv:1|no column 'cell'",
                "cell,zone,cell/c1,deep,c1|COLUMN_TWICE|cells.csv:1|'cell'",
                "cell,zone/c1|FIELD_COUNT|cells.csv:2|1 fields, expected 2",
                "cell,zone/,deep|NAME_MISSING|cells.csv:2|name",
                "cell,zone/c1,deep/c2,deep/c1,deep|NAME_TWICE|cells.csv:4|first on line 2",
                "cell,zone|NO_CELLS|cells.csv|header"
            })
    void slipsOfTheTableAreFoundBeforeAnythingRuns(String lines, CellError code, String place, String text) {
        Path path = table(lines.replace('/', '\n') + "\n");

        InputErrors.assertRefused(() -> CellTable.check(path), code, place, text);
    }

    @Test
    void aColumnInAnotherUnitIsRefused() {
        Path path = table("cell,depth_cm\nc1,120\n");

        InputErrors.assertRefused(
                () -> CellTable.check(path), InputFileError.WRONG_UNIT, "cells.csv:1", "depth_cm", "depth_m");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "cell,available_water_mm_per_m,depth_m/c1,9,1|OUT_OF_RANGE|cells.csv:2: available_water_mm_per_m",
                "cell,available_water_mm_per_m,depth_m/c1,150,deep|WRONG_KIND|cells.csv:2: depth_m",
                "cell,available_water,depth_m/c1,150,1|MISSING_UNIT|cells.csv:2: available_water",
                "cell,available_water_mm_per_m,sand_pct,depth_m/c1,150,20,1|CONFLICT|cells.csv:2: sand",
                "cell,depth_m/c1,1|SOIL_INCOMPLETE|only depth_m",
                "cell,available_water_mm_per_m/c1,150|SOIL_INCOMPLETE|only available_water_mm_per_m",
                "cell,sand_pct,depth_m/c1,20,1|MISSING_KEY|clay",
                "cell,planted/c1,1999-04-31|BAD_DATE|cells.csv:2: planted",
                "cell,planted,planting_year/c1,1999-04-30,1999|CONFLICT|cells.csv:2: planting_year",
                "cell,zone/c1,depe|ZONE_UNKNOWN|did you mean 'deep'",
                "cell,zone,depth_m/c1,deep,1|ZONE_AND_SOIL|keep one",
                "cell,crop/c1,switchgras|NOT_ALLOWED|did you mean 'switchgrass'",
                "cell/c1|ZONE_NEEDED|deep, Sandy"
            })
    void badFieldsOfALineNameLineAndColumn(String lines, String code, String text) {
        InputErrors.assertRefused(() -> field(lines.replace('/', '\n') + "\n"), codeOf(code), "cells.csv:2", text);
    }

    private static ErrorCode codeOf(String name) {
        for (CellError error : CellError.values()) {
            if (error.name().equals(name)) {
                return error;
            }
        }
        return InputFileError.valueOf(name);
    }

    @Test
    void theOtherHalfOfTheGlobeNeedsAStudyOfItsOwn() {
        CellRow row = row("cell,zone\nc1,deep\n");

        InputErrors.assertRefused(
                () -> fields().field(row, new Site("south", -30, 0)), CellError.OTHER_HEMISPHERE, "-30", "northern");
    }

    @Test
    void missingWeatherIsNamedAsTheTableNamesIt() {
        CellRow row = row("cell,weather\nc1,grid/none.csv\n");

        assertThat(org.assertj.core.api.Assertions.catchThrowableOfType(
                        InputException.class, () -> fields().weather(row)))
                .hasMessageContaining("'grid/none.csv'")
                .hasMessageNotContaining(folder.toString());
    }
}
