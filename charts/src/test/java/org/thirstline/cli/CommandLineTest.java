package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command line as a tired agronomist uses it. */
class CommandLineTest {

    private static final String STUDY = """
            title: test
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            soil: {available_water: 150 mm/m, depth: 1 m}
            harvest: {date: 03-01}
            """;

    private static final List<String> COMMANDS = List.of(
            "run", "drought", "compare", "age", "calibrate", "sensitivity", "sweep", "slides", "weather", "new");

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY);
        Files.writeString(folder.resolve("weather.csv"), weather());
    }

    private static String weather() {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(2004, 4, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0);
            text.append(date)
                    .append(',')
                    .append(Math.round(10.0 * (mean - 5.0)) / 10.0)
                    .append(',')
                    .append(Math.round(10.0 * (mean + 5.0)) / 10.0)
                    .append(',')
                    .append(date.getDayOfMonth() % 4 == 0 ? 9.0 : 0.0)
                    .append('\n');
        }
        return text.toString();
    }

    private int run(String... arguments) {
        return Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    private int runStudy() {
        return run("run", folder.resolve("study.yaml").toString());
    }

    private void change(String file, String from, String to) throws IOException {
        Path path = folder.resolve(file);
        String text = Files.readString(path);
        assertThat(text).contains(from);
        Files.writeString(path, text.replaceFirst(Pattern.quote(from), to));
    }

    private List<String> files() throws IOException {
        try (Stream<Path> found = Files.list(folder)) {
            return found.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aStudyRunsAndWritesWhatItPromises() throws IOException {
        assertThat(runStudy()).as(err.toString()).isZero();
        Path results = folder.resolve("study-results");
        for (String name : List.of(
                "seasons.csv",
                "daily.csv",
                "weather-report.csv",
                "drought.csv",
                "drought.json",
                "report.html",
                "run.json",
                "datapackage.json")) {
            assertThat(results.resolve(name)).isNotEmptyFile();
        }
        assertThat(results.resolve("charts/yield-by-year-field.svg")).isNotEmptyFile();
        assertThat(results.resolve("charts/yield-by-year-field.png")).isNotEmptyFile();
        assertThat(Files.readString(results.resolve("seasons.csv")))
                .startsWith("zone,growth_year,stand_age,emergence_date,full_canopy_date,canopy_end_date,"
                        + "canopy_end_cause,harvest_date,max_leaf_area_index,intercepted_par_mj_m2,season_rain_mm,"
                        + "rain_deficit_mm,season_et0_mm,transpiration_mm,soil_evaporation_mm,runoff_mm,drainage_mm,"
                        + "soil_water_start_mm,soil_water_end_mm,mean_water_factor,stressed_days,shoots_m2,height_m,"
                        + "peak_biomass_mg_ha,harvested_mg_ha,harvest_moisture_pct,harvested_fresh_mg_ha,"
                        + "potential_harvested_mg_ha,drought_penalty_mg_ha,drought_penalty_pct,"
                        + "penalty_this_season_mg_ha,penalty_carried_over_mg_ha,season_class,");
        assertThat(out.toString()).contains("[invented data]").contains("2002");
    }

    @Test
    void theSameInputGivesTheSameBytesTimingsAside() throws IOException {
        run(
                "run",
                folder.resolve("study.yaml").toString(),
                "--out",
                folder.resolve("a").toString(),
                "--threads",
                "1");
        run(
                "run",
                folder.resolve("study.yaml").toString(),
                "--out",
                folder.resolve("b").toString(),
                "--threads",
                "4");
        List<Path> written;
        try (Stream<Path> found = Files.walk(folder.resolve("a"))) {
            written = found.filter(Files::isRegularFile).toList();
        }
        assertThat(written).hasSizeGreaterThan(10);
        for (Path file : written) {
            Path other = folder.resolve("b").resolve(folder.resolve("a").relativize(file));
            if (!file.endsWith("run.json")) {
                assertThat(Files.mismatch(file, other)).as(file.toString()).isEqualTo(-1);
            }
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "study.yaml  | file: weather.csv       | file: wether.csv          | wether.csv",
                "study.yaml  | latitude_deg: 45        | latitude_deg: 95          | 95",
                "study.yaml  | elevation_m: 100        | elevaton_m: 100           | elevation_m",
                "study.yaml  | depth: 1 m              | depth: 1 kg               | kg",
                "study.yaml  | depth: 1 m              | depth: 1                  | depth",
                "study.yaml  | available_water: 150 mm/m, depth: 1 m | layers: [{thickness: 1 m, wilting_point: 35 %, field_capacity: 30 %}] | wilting",
                "study.yaml  | planted: 2001-04-20     | planted: 2001-13-20       | planted",
                "study.yaml  | crop: giant miscanthus  | crop: giant miscantus     | giant miscanthus",
                "study.yaml  | title: test             | tilte: test               | title",
                "weather.csv | 2001-01-05,             | 2001-01-04,               | 2001-01-04",
                "weather.csv | 2001-01-05,             | 2000-12-05,               | 2000-12-05",
                "weather.csv | date,tmin_c             | date,tmin_x               | tmin",
                "weather.csv | 2001-01-05,             | 2001-01-05,cold,1#        | cold",
            })
    void aMistakeGetsOneClearErrorAndNoHalfWrittenOutput(String file, String from, String to, String expected)
            throws IOException {
        String replacement = to.endsWith("#") ? to.substring(0, to.length() - 1) + ",0\n2001-01-06," : to;
        change(file, from, Matcher.quoteReplacement(replacement));
        List<String> before = files();
        assertThat(runStudy()).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString().lines().filter(line -> line.startsWith("error: ")))
                .hasSize(1);
        assertThat(err.toString()).contains(expected).contains(file.strip()).doesNotContain("Exception");
        assertThat(files()).isEqualTo(before);
    }

    @ParameterizedTest
    @CsvSource({"tmin above tmax,-30.0", "negative rain,-4.0", "impossible radiation,99"})
    void suspectWeatherIsAReportLineNotAnError(String what, String value) throws IOException {
        String header = "date,tmin_c,tmax_c,rain_mm\n";
        Path weather = folder.resolve("weather.csv");
        String table = Files.readString(weather).substring(header.length());
        String changed = table.lines()
                .map(line -> {
                    String[] fields = line.split(",", -1);
                    boolean here = fields[0].equals("2002-06-10");
                    String tmax = here && what.startsWith("tmin") ? value : fields[2];
                    String rain = here && what.startsWith("negative") ? value : fields[3];
                    String solar = here && what.startsWith("impossible") ? value : "";
                    return String.join(",", fields[0], fields[1], tmax, rain, solar);
                })
                .collect(Collectors.joining("\n"));
        Files.writeString(weather, "date,tmin_c,tmax_c,rain_mm,solar_mj_m2\n" + changed + "\n");
        assertThat(runStudy()).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("study-results/weather-report.csv")))
                .contains("2002-06-10");
    }

    @Test
    void anEmptyWeatherFileIsAnError() throws IOException {
        Files.writeString(folder.resolve("weather.csv"), "");
        assertThat(runStudy()).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("weather.csv").contains("holds no lines");
    }

    @Test
    void aMissingStudyIsAnError() {
        assertThat(run("run", folder.resolve("nothing.yaml").toString())).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("nothing.yaml");
    }

    @Test
    void weatherThatHoldsNoSeasonIsAnError() throws IOException {
        String short30 = Files.readString(folder.resolve("weather.csv"))
                .lines()
                .limit(60)
                .collect(Collectors.joining("\n"));
        Files.writeString(folder.resolve("weather.csv"), short30);
        assertThat(runStudy()).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("growing season");
    }

    @Test
    void whatWasThereSurvivesAFailedRun() throws IOException {
        assertThat(runStudy()).isZero();
        byte[] before = Files.readAllBytes(folder.resolve("study-results/seasons.csv"));
        change("weather.csv", "2001-01-05,", "2001-01-04,");
        assertThat(runStudy()).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(Files.readAllBytes(folder.resolve("study-results/seasons.csv")))
                .isEqualTo(before);
    }

    @Test
    void wrongCommandLinesSaySoAndSuggest() {
        assertThat(run("rum", "study.yaml")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("run");
        assertThat(run("run")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(run("run", "study.yaml", "--years", "2010:2012")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("2005-2020");
        assertThat(run()).isEqualTo(Thirstline.WRONG_INPUT);
    }

    @Test
    void helpAndCompletionKnowEveryCommand() {
        assertThat(run("--help")).isZero();
        int end = out.toString().length();
        assertThat(run("generate-completion")).isZero();
        assertThat(out.toString().substring(0, end)).contains(COMMANDS);
        assertThat(out.toString().substring(end)).contains(COMMANDS);
    }

    @Test
    void helpHasAnExampleForEachCommand() {
        for (String command : List.of("run", "weather", "new")) {
            assertThat(run(command, "--help")).isZero();
            assertThat(out.toString()).contains("thirstline " + command + " ");
        }
    }

    @Test
    void newWritesAStudyAndNeverOverwrites() throws IOException {
        Path fresh = folder.resolve("trial");
        assertThat(run("new", fresh.toString())).as(err.toString()).isZero();
        assertThat(fresh.resolve("study.yaml")).isNotEmptyFile();
        assertThat(run("new", fresh.toString())).isEqualTo(Thirstline.WRONG_INPUT);
    }

    @Test
    void weatherWritesATableThatReadsBackToTheSameBytes() throws IOException {
        Path first = folder.resolve("first");
        Path second = folder.resolve("second");
        String site = "--latitude=45";
        assertThat(run(
                        "weather",
                        folder.resolve("weather.csv").toString(),
                        site,
                        "--elevation=100",
                        "--out",
                        first.toString()))
                .as(err.toString())
                .isZero();
        assertThat(Files.readString(first.resolve("weather.csv")))
                .contains("date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa,day_length_h,"
                        + "extraterrestrial_mj_m2,et0_mm,flags");
        assertThat(run(
                        "weather",
                        first.resolve("weather.csv").toString(),
                        site,
                        "--elevation=100",
                        "--out",
                        second.toString()))
                .as(err.toString())
                .isZero();
        assertThat(Files.mismatch(first.resolve("weather.csv"), second.resolve("weather.csv")))
                .isEqualTo(-1);
    }

    @Test
    void weatherAsksForTheLatitudeWhereTheFileDoesNotSay() {
        assertThat(run("weather", folder.resolve("weather.csv").toString())).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("latitude");
    }

    @Test
    void yearsLimitWhatIsReported() throws IOException {
        assertThat(run("run", folder.resolve("study.yaml").toString(), "--years", "2002-2002", "--quiet"))
                .isZero();
        assertThat(out.toString()).isEmpty();
        assertThat(Files.readString(folder.resolve("study-results/seasons.csv")).lines())
                .hasSize(2);
    }
}
