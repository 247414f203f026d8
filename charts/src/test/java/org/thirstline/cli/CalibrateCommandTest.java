package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.crop.Evidence;
import org.thirstline.model.crop.CropParameter;

/** A calibration as somebody with a table of plots runs it. */
class CalibrateCommandTest {

    private static final String STUDY = """
            title: test
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: CROP
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            soil: {available_water: 150 mm/m, depth: 1 m}
            harvest: {date: 03-01}
            plots: plots.csv
            calibration:
              parameters: [{name: radiation_use_efficiency_g_mj}, {name: soil_available_water_factor}]
            """;

    private static final int LAST_YEAR = 2007;

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY.replace("CROP", "giant miscanthus"));
        Files.writeString(folder.resolve("weather.csv"), weather());
        SplittableRandom random = new SplittableRandom(9);
        StringBuilder text = new StringBuilder("plot,planting_year,growth_year,variable,value,unit\n");
        for (int plot = 1; plot <= 3; plot++) {
            for (int year = 2003; year <= LAST_YEAR; year++) {
                double value = (year % 2 == 0 ? 13.0 : 11.0) * (0.9 + 0.2 * random.nextDouble());
                text.append(String.format(Locale.ROOT, "%d,2001,%d,yield,%.2f,Mg/ha%n", plot, year, value));
            }
        }
        Files.writeString(folder.resolve("plots.csv"), text.toString());
    }

    private static String weather() {
        SplittableRandom random = new SplittableRandom(5);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(LAST_YEAR + 1, 4, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 11.0 - 11.0 * Math.cos(2.0 * Math.PI * (date.getDayOfYear() - 20) / 365.0);
            double wetness = date.getYear() % 2 == 0 ? 12.0 : 5.0;
            double rain = random.nextDouble() < 0.3 ? wetness * random.nextDouble() : 0.0;
            text.append(String.format(Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - 5.0, mean + 5.0, rain));
        }
        return text.toString();
    }

    private int thirstline(String... arguments) {
        return Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    private int calibrate(String to, String... more) {
        List<String> arguments = new ArrayList<>(List.of(
                "calibrate",
                folder.resolve("study.yaml").toString(),
                "--out",
                folder.resolve(to).toString(),
                "--date",
                "2026-03-14",
                "--starts",
                "3",
                "--unclear",
                "keep"));
        arguments.addAll(Arrays.asList(more));
        return thirstline(arguments.toArray(String[]::new));
    }

    private String text(String file) throws IOException {
        return Files.readString(folder.resolve(file));
    }

    @Test
    void writesACropThatRunTakesAndTablesBesideIt() throws IOException {
        assertThat(calibrate("fitted", "--posterior", "80")).as(err.toString()).isZero();
        CropFile crop = CropFiles.read(folder.resolve("fitted/crop.yaml"));
        assertThat(crop.note(CropParameter.RADIATION_USE_EFFICIENCY).status()).isEqualTo(Evidence.FITTED);
        assertThat(crop.calibration().orElseThrow().draws()).hasSize(80);
        assertThat(crop.calibration().orElseThrow().date()).isEqualTo("2026-03-14");
        assertThat(crop.calibration().orElseThrow().data())
                .extracting(file -> file.file())
                .containsExactly("study.yaml", "weather.csv", "plots.csv");
        for (String table :
                List.of("parameters", "residuals", "profiles", "correlations", "draws", "skill", "held-out")) {
            assertThat(text("fitted/" + table + ".csv").lines().count())
                    .as(table)
                    .isGreaterThan(1);
        }
        for (String chart : List.of("observed-simulated", "residuals", "profiles", "prior-posterior", "trace-rank")) {
            assertThat(folder.resolve("fitted/charts/" + chart + ".svg")).isNotEmptyFile();
        }
        assertThat(text("fitted/report.html")).contains("With each year held out, yields are predicted to");
        assertThat(text("fitted/residuals.csv").lines()).hasSize(1 + 15);
        assertThat(text("fitted/draws.csv").lines()).hasSize(1 + 80);
        assertThat(out.toString())
                .contains("Fitted to 15 measured values of 1 stand at 1 site")
                .contains("write 'available_water_factor: ")
                .contains("Yields predicted with each year held out");
        Files.copy(folder.resolve("fitted/crop.yaml"), folder.resolve("mine.yaml"));
        Files.writeString(folder.resolve("again.yaml"), STUDY.replace("CROP", "mine.yaml"));
        int code = thirstline("run", folder.resolve("again.yaml").toString(), "--quiet", "--out", folder + "/run");
        assertThat(code).as(err.toString()).isZero();
    }

    /** The crop file and the fitted soil, given to 'run', bring the yields that the calibration wrote beside the measured ones. */
    @Test
    void runWithTheCropFileGivesTheYieldsOfTheCalibration() throws IOException {
        assertThat(calibrate("fitted", "--no-skill")).as(err.toString()).isZero();
        List<Map<String, String>> parameters = rows("fitted/parameters.csv");
        Files.copy(folder.resolve("fitted/crop.yaml"), folder.resolve("mine.yaml"));
        String factor =
                "depth: 1 m, available_water_factor: " + parameters.get(1).get("least_squares");
        Files.writeString(
                folder.resolve("again.yaml"), STUDY.replace("CROP", "mine.yaml").replace("depth: 1 m", factor));
        assertThat(thirstline("run", folder.resolve("again.yaml").toString(), "--quiet", "--out", folder + "/run"))
                .as(err.toString())
                .isZero();
        Map<String, String> harvested = new HashMap<>();
        rows("run/seasons.csv").forEach(row -> harvested.put(row.get("growth_year"), row.get("harvested_mg_ha")));
        List<Map<String, String>> residuals = rows("fitted/residuals.csv");
        assertThat(residuals).hasSize(15);
        for (Map<String, String> row : residuals) {
            // Three decimals are written, and parameters with seven digits.
            assertThat(Double.parseDouble(harvested.get(row.get("growth_year"))))
                    .as(row.toString())
                    .isCloseTo(Double.parseDouble(row.get("simulated")), within(0.0011));
        }
    }

    private List<Map<String, String>> rows(String file) throws IOException {
        List<String> lines = text(file).lines().toList();
        List<String> header = Arrays.asList(lines.get(0).split(",", -1));
        return lines.stream()
                .skip(1)
                .map(line -> {
                    String[] cells = line.split(",", -1);
                    Map<String, String> row = new HashMap<>();
                    IntStream.range(0, header.size()).forEach(i -> row.put(header.get(i), cells[i]));
                    return row;
                })
                .toList();
    }

    @Test
    void threadsAndAResumptionChangeNoByte() throws IOException {
        assertThat(calibrate("whole", "--posterior", "60", "--threads", "1", "--quiet"))
                .isZero();
        assertThat(calibrate("short", "--posterior", "32", "--threads", "2", "--quiet"))
                .isZero();
        assertThat(calibrate("short", "--posterior", "60", "--threads", "2", "--quiet", "--resume"))
                .isZero();
        for (Path file : files("whole")) {
            String name = folder.resolve("whole").relativize(file).toString();
            if (!name.equals("run.json")) {
                assertThat(folder.resolve("short").resolve(name)).as(name).hasSameBinaryContentAs(file);
            }
        }
        assertThat(files("short")).hasSameSizeAs(files("whole"));
    }

    private List<Path> files(String in) throws IOException {
        try (Stream<Path> paths = Files.walk(folder.resolve(in))) {
            return paths.filter(Files::isRegularFile).sorted().toList();
        }
    }

    @Test
    void aStateOfOtherDataIsRefused() throws IOException {
        assertThat(calibrate("fitted", "--posterior", "32", "--no-skill", "--quiet"))
                .isZero();
        Files.writeString(folder.resolve("plots.csv"), text("plots.csv").replaceFirst("yield,1[0-9.]+", "yield,12.34"));
        assertThat(calibrate("fitted", "--posterior", "32", "--no-skill", "--quiet", "--resume"))
                .isEqualTo(2);
        assertThat(err.toString()).contains("another problem");
    }

    @Test
    void resumingWhatWasInterruptedBeforeItWasSavedStartsAnew() throws IOException {
        assertThat(calibrate("whole", "--posterior", "32", "--no-skill", "--quiet"))
                .isZero();
        assertThat(calibrate("none", "--posterior", "32", "--no-skill", "--quiet", "--resume"))
                .isZero();
        assertThat(err.toString()).contains("No saved sampling", "none", "from the beginning");
        assertThat(folder.resolve("none/draws.csv")).hasSameBinaryContentAs(folder.resolve("whole/draws.csv"));
    }

    @Test
    void resumingWithoutASamplingIsRefused() {
        assertThat(calibrate("fitted", "--resume")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("--posterior");
    }

    @Test
    void aYieldOfNineHundredIsRefused() throws IOException {
        Files.writeString(folder.resolve("plots.csv"), text("plots.csv").replaceFirst("yield,1[0-9.]+", "yield,900"));
        assertThat(calibrate("fitted")).isEqualTo(2);
        assertThat(err.toString()).contains("plots.csv:2").contains("900 Mg/ha").contains("0 to 80");
    }

    /** Yields a thousandth of what they were, which no efficiency within the bounds gives. */
    @Test
    void aValueAtItsBoundIsNotSoldAsAnEstimate() throws IOException {
        Files.writeString(
                folder.resolve("plots.csv"), text("plots.csv").replaceAll(",yield,(\\d+)\\.", ",yield,0.0$1"));
        Files.writeString(
                folder.resolve("study.yaml"), text("study.yaml").replace(", {name: soil_available_water_factor}", ""));

        assertThat(calibrate("fitted", "--no-skill")).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("radiation_use_efficiency_g_mj ended at its lower bound of 1.000,")
                .contains("or sample the posterior (--posterior 4000)")
                .doesNotContain("Least squares lies outside");

        assertThat(calibrate("sampled", "--no-skill", "--posterior", "80")).isZero();
        assertThat(out.toString())
                .contains("Least squares lies outside the 90 % of the posterior for radiation_use_efficiency_g_mj:");
        assertThat(text("sampled/report.html"))
                .contains("ended at its lower bound of 1.000", "that is no estimate")
                .contains(
                        ">fitted <span class=\"unit\">least squares</span>",
                        ">value taken</th>",
                        "Values of the crop file: ");
    }

    @Test
    void otherSitesAreFittedTogether() throws IOException {
        Path other = Files.createDirectories(folder.resolve("other"));
        for (String file : List.of("weather.csv", "plots.csv")) {
            Files.copy(folder.resolve(file), other.resolve(file));
        }
        String there = STUDY.replace("CROP", "giant miscanthus").replace("nowhere", "elsewhere");
        Files.writeString(other.resolve("study.yaml"), there);
        Files.writeString(
                folder.resolve("study.yaml"),
                STUDY.replace("CROP", "giant miscanthus") + "  with_studies: [other/study.yaml]\n");
        assertThat(calibrate("both")).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("Fitted to 30 measured values of 2 stands at 2 sites")
                .contains("Yields predicted with each site held out");
        assertThat(text("both/crop.yaml")).contains("other/plots.csv");
        assertThat(text("both/skill.csv")).contains("site,elsewhere,calibrated engine,15");
    }

    @Test
    void tooFewDrawsAreRefusedBeforeAnythingIsSampled() {
        assertThat(calibrate("few", "--posterior", "20")).isEqualTo(2);
        assertThat(err.toString()).contains("number of draws").contains("32");
        assertThat(folder.resolve("few")).doesNotExist();
    }
}
