package org.thirstline.io.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.text.InputFileError;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/** Each case replaces one line of the smallest study; every refusal names code, file, line and key. */
class StudyReaderErrorsTest {

    @TempDir
    private Path folder;

    private StudyFolder files;

    @BeforeEach
    void makeFiles() {
        files = new StudyFolder(folder);
    }

    // spotless:off — one case a line: code, line of the study replaced, its new text, key, part of the message
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '^', textBlock = """
            UNKNOWN_KEY   | 4  | ^  latitud: 40.05 deg^              | site.latitud      | did you mean 'latitude'?
            UNKNOWN_KEY   | 1  | ^tittle: x^                         | tittle            | did you mean 'title'?
            UNKNOWN_KEY   | 14 | ^  albedo: 3^                       | soil.albedo       | allowed here: layers, available_water
            WRONG_UNIT    | 5  | ^  elevation_ft: 700^               | site.elevation_ft | elevation_m
            MISSING_UNIT  | 5  | ^  elevation: 213^                  | site.elevation    | elevation_m: 213
            MISSING_UNIT  | 11 | ^  spacing: 75 x 70^                | stand.spacing     | 75 cm x 70 cm
            WRONG_UNIT    | 5  | ^  elevation: 213 kg^               | site.elevation    | m, cm, mm, ft, in
            WRONG_UNIT    | 13 | ^  available_water: 2 ft^           | soil.available_water | in/ft
            WRONG_UNIT    | 11 | ^  spacing: 75 cm x 70 kg^          | stand.spacing     | 'kg'
            WRONG_KIND    | 11 | ^  spacing: 75 cm^                  | stand.spacing     | 75 cm x 70 cm
            WRONG_KIND    | 5  | ^  elevation_m: 213 m^              | site.elevation_m  | bare number
            WRONG_KIND    | 5  | ^  elevation: high^                 | site.elevation    | 'high'
            WRONG_KIND    | 3  | ^  name:^                           | site.name         | nothing
            WRONG_KIND    | 3  | ^  name: [a, b]^                    | site.name         | a list
            OUT_OF_RANGE  | 4  | ^  latitude: 95 deg^                | site.latitude     | -90 to 90
            OUT_OF_RANGE  | 4  | ^  latitude_deg: 95^                | site.latitude_deg | -90 to 90
            OUT_OF_RANGE  | 14 | ^  depth: 30 m^                     | soil.depth        | 0.15 to 10 m
            OUT_OF_RANGE  | 11 | ^  spacing: 75 cm x 70 ft^          | stand.spacing     | 0.001 to 10 m
            BAD_DATE      | 10 | ^  planted: 2009-02-30^             | stand.planted     | 2009-02-30
            BAD_DATE      | 10 | ^  planted: 20.4.2009^              | stand.planted     | year-month-day
            BAD_DATE      | 16 | ^  date: 2013-03-01^                | harvest.date      | month-day
            BAD_DATE      | 16 | ^  window: 02-01^                   | harvest.window    | 02-01 to 04-15
            BAD_DATE      | 16 | ^  window: 02-01 to 04-31^          | harvest.window    | 02-01 to 04-15
            FILE_NOT_FOUND | 7 | ^  file: wether.csv^                | weather.file      | wether.csv
            FILE_NOT_FOUND | 7 | ^  files: [weather.csv, none.csv]^  | weather.files[2]  | none.csv
            FILE_NOT_FOUND | 8 | ^crop: mine.yaml^                   | crop              | mine.yaml
            NOT_ALLOWED   | 8  | ^crop: giant miscantus^             | crop              | did you mean 'giant miscanthus'?
            NOT_ALLOWED   | 14 | ^  depth: 1 m\n  hydrologic_group: E^             | soil.hydrologic_group | A, B, C, D
            MISSING_KEY   | 4  | ^^                                  | site.latitude     | latitude: 40.05 deg
            MISSING_KEY   | 1  | ^^                                  | title             | title
            MISSING_KEY   | 14 | ^^                                  | soil.depth        | depth: 1.8 m
            MISSING_KEY   | 13 | ^^                                  | soil.layers       | available_water
            MISSING_KEY   | 11 | ^^                                  | stand.spacing     | 'spacing' or 'plants'
            CONFLICT      | 11 | ^  spacing: 75 cm x 70 cm\n  plants: 2 per m2^ | stand.plants | 'spacing'
            CONFLICT      | 4  | ^  latitude: 40 deg\n  latitude_deg: 40^ | site.latitude | 'latitude_deg'
            CONFLICT      | 14 | ^  depth: 1.8 m\n  curve_number: 60\n  hydrologic_group: B^ | soil.hydrologic_group | curve_number
            CONFLICT      | 16 | ^  date: 03-01\n  max_moisture: 20 %^ | harvest.max_moisture | 'date'
            CONFLICT      | 12 | ^zones: [{name: a, soil: {available_water: 170 mm/m, depth: 1 m}}]\nsoil:^ | zones | 'soil'
            DUPLICATE_KEY | 4  | ^  latitude: 40 deg\n  latitude: 41 deg^ | latitude | line 4
            """)
    // spotless:on
    void refusesWithFileLineAndKey(String code, int line, String text, String key, String part) {
        Path file = withLine(line, text.replace("\\n", "\n"));
        assertRefused(() -> StudyReader.read(file), InputFileError.valueOf(code), file + ":", key, part);
    }

    @Test
    void linesAreThoseOfTheKeyInQuestion() {
        refused(4, "  latitude: 95 deg", InputFileError.OUT_OF_RANGE, ":4: site.latitude: ");
        refused(5, "\n\n  # a comment\n  elevation: 213", InputFileError.MISSING_UNIT, ":8: site.elevation: ");
        refused(4, "", InputFileError.MISSING_KEY, ":2: site.latitude: ");
        refused(
                7,
                "  files:\n    - weather.csv\n    - none.csv",
                InputFileError.FILE_NOT_FOUND,
                ":9: weather.files[2]: ");
        refused(
                12,
                "zones:\n  - {name: a, soil: {available_water: 1 mm/m, depth: 1 m}}\nsoil:",
                InputFileError.CONFLICT,
                ":12: zones: ");
    }

    @Test
    void theModelsOwnRefusalsGetThePlace() {
        refusedSoil(
                "layers:\n    - {thickness: 30 cm, wilting_point: 15 %, field_capacity: 32 %}\n"
                        + "    - {thickness: 30 cm, wilting_point: 35 %, field_capacity: 32 %}",
                ModelError.VALUES_OUT_OF_ORDER,
                ":15: soil.layers[2].field_capacity: ",
                "wilting point (0.35)",
                "field capacity (0.32)");
        refusedSoil(
                "layers:\n    - {thickness: 30 cm, wilting_point: 15 %, field_capacity: 32 %, saturation: 30 %}",
                ModelError.VALUES_OUT_OF_ORDER, ":14: soil.layers[1]: ", "saturation (0.3)");
        refusedSoil(
                "layers:\n    - {thickness: 10 cm, wilting_point: 15 %, field_capacity: 32 %}",
                ModelError.VALUE_OUT_OF_RANGE, ":12: soil: ", "soil depth");
        refusedSoil(
                "texture: {sand: 70 %, clay: 50 %, organic_matter: 2 %}\n  depth: 1 m",
                ModelError.INCONSISTENT, ":13: soil.texture: ", "exceed 100 %");
        refusedSoil(
                "available_water: 170 mm/m\n  depth: 1 m\n  readily_evaporable_water: 45 mm",
                ModelError.VALUE_OUT_OF_RANGE,
                ":12: soil: ",
                "readily evaporable water");
    }

    @Test
    void aLayerNeedsItsWaterOrItsTexture() {
        refusedSoil(
                "layers:\n    - {thickness: 30 cm}",
                InputFileError.MISSING_KEY,
                ":14: soil.layers[1].wilting_point: ",
                "texture");
        refusedSoil(
                "layers:\n    - {thickness: 30 cm, wilting_point: 15 %}",
                InputFileError.MISSING_KEY, ":14: soil.layers[1].field_capacity: ");
        refusedSoil("layers: []", InputFileError.WRONG_KIND, ":13: soil.layers: ", "empty list");
        refusedSoil("layers: 30 cm", InputFileError.WRONG_KIND, ":13: soil.layers: ", "'30 cm'", "a list");
        refusedSoil("layers: [30 cm]", InputFileError.WRONG_KIND, ":13: soil.layers[1]: ", "thickness");
    }

    @Test
    void refusesZonesOfTheSameName() {
        String zone = "  - {name: a, soil: {available_water: 170 mm/m, depth: 1 m}}\n";
        Path zones = files.write(
                "zones.yaml",
                StudyFolder.text("small.yaml")
                        .replace("soil:\n  available_water: 170 mm/m\n  depth: 1.8 m\n", "zones:\n" + zone + zone));
        assertRefused(
                () -> StudyReader.read(zones),
                InputFileError.DUPLICATE_NAME,
                zones + ":14: zones[2].name: ",
                "'a'",
                "line 13");
    }

    @Test
    void refusesEntriesBelowTheSmallestStudy() {
        appended("growing_season: 10-01 to 03-31", InputFileError.INCONSISTENT, "growing_season", "1 January");
        appended("invented: maybe", InputFileError.WRONG_KIND, "invented", "true or false");
        appended("years: 2020-2010", InputFileError.BAD_DATE, "years", "2020-2010");
        appended("normal: {years: last}", InputFileError.BAD_DATE, "normal.years", "1991-2020");
        appended("classes: {dry: [2012], wet: [2010, 2012]}", InputFileError.CONFLICT, "classes.wet", "2012");
        appended("classes: {dry: [dry]}", InputFileError.BAD_DATE, "classes.dry[1]", "2012");
        appended("plots: none.csv", InputFileError.FILE_NOT_FOUND, "plots", "none.csv");
        appended("co2: 42 %", InputFileError.WRONG_UNIT, "co2", "ppm");
        appended("pick_up: 120 %", InputFileError.OUT_OF_RANGE, "pick_up", "0 to 100 %");
    }

    @Test
    void refusesIrrigationThatIsNone() {
        appended("irrigation: {when_depleted: 50 %}", InputFileError.MISSING_KEY, "irrigation.depth", "30 mm");
        appended(
                "irrigation: {schedule: [{date: 2012-07-10, depth: 30}]}",
                InputFileError.MISSING_UNIT,
                "irrigation.schedule[1].depth",
                "depth_mm: 30");
        appended(
                "irrigation: {schedule: [{date: 2012-07-10, depth: 3 cm}, {date: 2012-07-10, depth: 3 cm}]}",
                InputFileError.DUPLICATE_NAME,
                "irrigation.schedule[2].date",
                "2012-07-10");
        appended("irrigation: yes", InputFileError.WRONG_KIND, "irrigation", "schedule");
    }

    @Test
    void aCropFilesFaultsAreToldWithItsOwnPlace() {
        Path crop = files.write("clone.yaml", "name: clone\nbased_on: switchgrass\nparameters:\n  max_height_m: 20\n");
        Path file = withLine(8, "crop: clone.yaml");
        assertRefused(
                () -> StudyReader.read(file), ModelError.VALUE_OUT_OF_RANGE, crop + ":4: parameters.max_height_m: ");
    }

    @Test
    void noDamagedStudyBringsAnythingButARefusal() {
        String text = StudyFolder.text("everything-layers.yaml");
        Random random = new Random(3);
        for (int trial = 0; trial < 400; trial++) {
            int at = random.nextInt(text.length());
            String damaged = text.substring(0, at)
                    + ":x-{[ 9\n".charAt(random.nextInt(8))
                    + text.substring(at + random.nextInt(3) % (text.length() - at));
            Path file = files.write("damaged.yaml", damaged);
            try {
                StudyReader.read(file);
            } catch (InputException refused) {
                assertThat(refused).hasMessageContaining(folder.toString());
            }
        }
    }

    private void refused(int line, String text, ErrorCode code, String place, String... parts) {
        Path file = withLine(line, text);
        assertRefused(() -> StudyReader.read(file), code, with(file + place, parts));
    }

    private void refusedSoil(String lines, ErrorCode code, String place, String... parts) {
        Path file = files.write(
                "study.yaml",
                StudyFolder.text("small.yaml").replace("available_water: 170 mm/m\n  depth: 1.8 m", lines));
        assertRefused(() -> StudyReader.read(file), code, with(file + place, parts));
    }

    private static String[] with(String first, String... others) {
        return Stream.concat(Stream.of(first), Stream.of(others)).toArray(String[]::new);
    }

    private void appended(String line, ErrorCode code, String key, String part) {
        Path file = files.write("study.yaml", StudyFolder.text("small.yaml") + line + "\n");
        assertRefused(() -> StudyReader.read(file), code, file + ":17: " + key + ": ", part);
    }

    private Path withLine(int line, String text) {
        String[] lines = StudyFolder.text("small.yaml").split("\n");
        lines[line - 1] = text;
        return files.write("study.yaml", String.join("\n", lines) + "\n");
    }
}
