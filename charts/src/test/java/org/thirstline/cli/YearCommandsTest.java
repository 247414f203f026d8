package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The commands about many years, as a tired agronomist uses them. */
class YearCommandsTest {

    private static final String STUDY = """
            title: test
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            zones:
              - {name: deep, area: 4 ha, soil: {available_water: 150 mm/m, depth: 1.2 m}}
              - {name: thin, area: 1 ha, soil: {available_water: 120 mm/m, depth: 0.5 m}}
            harvest: {date: 03-01}
            """;

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY);
        Files.writeString(folder.resolve("weather.csv"), weather(2009));
    }

    /** Wetter and drier years in turn. */
    private static String weather(int lastYear) {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(lastYear + 1, 4, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0);
            double rain = 5.0 + 2.0 * (date.getYear() * 7 % 5);
            text.append(date)
                    .append(',')
                    .append(Math.round(10.0 * (mean - 5.0)) / 10.0)
                    .append(',')
                    .append(Math.round(10.0 * (mean + 5.0)) / 10.0)
                    .append(',')
                    .append(date.getDayOfMonth() % 5 == 0 ? rain : 0.0)
                    .append('\n');
        }
        return text.toString();
    }

    private int run(String command, String... options) {
        List<String> arguments =
                new ArrayList<>(List.of(command, folder.resolve("study.yaml").toString()));
        arguments.addAll(List.of(options));
        return Thirstline.execute(
                new PrintWriter(out, true), new PrintWriter(err, true), arguments.toArray(new String[0]));
    }

    private List<String> files() throws IOException {
        try (Stream<Path> found = Files.list(folder)) {
            return found.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void droughtWritesWhatItPromises() throws IOException {
        assertThat(run("drought", "--window", "06-01..08-31", "--index", "window", "--target", "12"))
                .as(err.toString())
                .isZero();
        Path results = folder.resolve("study-drought");
        for (String name : List.of(
                "drought.csv",
                "drought.json",
                "drought-indices.csv",
                "thirst-table.csv",
                "thirst-table.html",
                "ledgers.csv",
                "risk.csv",
                "zones.csv",
                "irrigation.csv",
                "harvest-dates.csv",
                "report.html",
                "run.json",
                "datapackage.json",
                "charts/drought-response-thin.svg",
                "charts/thirst-table.png",
                "charts/penalty-split-deep.svg",
                "charts/irrigation-thin.csv",
                "charts/harvest-dates-thin.svg",
                "charts/zones.svg",
                "charts/exceedance.svg")) {
            assertThat(results.resolve(name)).isNotEmptyFile();
        }
        assertThat(Files.readString(results.resolve("drought.csv")))
                .startsWith("zone,growth_year,stand_age,season_class,season_rain_mm,normal_rain_mm,rain_deficit_mm,"
                        + "et0_minus_rain_mm,drought_penalty_mg_ha,drought_penalty_pct,in_line,line_mg_ha,"
                        + "confidence_low_mg_ha,confidence_high_mg_ha,prediction_low_mg_ha,prediction_high_mg_ha,"
                        + "year_to_date_deficit_mm,growth_year_deficit_mm,canopy_deficit_mm,window_deficit_mm,"
                        + "canopy_et0_minus_rain_mm,spi_1,spi_3,spi_6,spi_12,spi_24");
        assertThat(Files.readString(results.resolve("drought-indices.csv"))).contains("thin,window,100 mm,7,");
        assertThat(Files.readString(results.resolve("thirst-table.html")))
                .contains("short ton/acre")
                .contains("Mg/ha");
        assertThat(out.toString()).contains("[invented data]").contains("12.0 Mg/ha was reached in");
    }

    @Test
    void twoFullGrownYearsGiveNoLineAndNoRisk() throws IOException {
        Files.writeString(folder.resolve("weather.csv"), weather(2004));
        assertThat(run("drought")).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("Too few years: 2 of the 5 needed")
                .contains("too few years for a thirst table")
                .contains("only 2 full-grown years");
        assertThat(Files.readString(folder.resolve("study-drought/thirst-table.csv"))
                        .lines()
                        .skip(1))
                .allMatch(line -> line.endsWith(",,,"));
    }

    @Test
    void aYoungStandHasNothingToSayAndSaysSo() throws IOException {
        Files.writeString(folder.resolve("weather.csv"), weather(2002));
        assertThat(run("drought")).as(err.toString()).isZero();
        assertThat(out.toString()).contains("Too few years: 0 of the 5 needed");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--index|moon|there is no index 'moon'",
                "--index|spi-3|drought-indices.csv",
                "--index|window|needs the window",
                "--window|June|is not a window of days",
                "--window|11-01..02-28|does not lie inside one growth year",
                "--target|-3|between 0 and 200",
            })
    void mistakesAreNamedAndNothingIsWritten(String option, String value, String expected) throws IOException {
        List<String> before = files();
        assertThat(run("drought", option, value)).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains(expected).doesNotContain("Exception");
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void compareWritesDaysAndMonthsOfTheYears() throws IOException {
        assertThat(run("compare", "--years", "2005,2007")).as(err.toString()).isZero();
        Path results = folder.resolve("study-compare");
        List<String> days = Files.readAllLines(results.resolve("compare.csv"));
        assertThat(days.get(0)).startsWith("zone,growth_year,day_of_growth_year,date,rain_so_far_mm,rain_mm");
        assertThat(days).hasSize(1 + 2 * 2 * 365);
        assertThat(Files.readAllLines(results.resolve("compare-months.csv"))).hasSize(1 + 2 * 2 * 12);
        assertThat(results.resolve("charts/compare-thin.svg")).isNotEmptyFile();
        assertThat(results.resolve("charts/soil-water-thin.png")).isNotEmptyFile();
        assertThat(results.resolve("report.html")).isNotEmptyFile();
        assertThat(out.toString()).contains("yielded").contains("2005").contains("2007");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2005,1999|growth year 1999 is not in the study; it has 2001, 2002",
                "2005|name two to six",
                "2005,2005|name two to six",
                "2005-2007|2005-2007",
            })
    void yearsThatCannotBeComparedAreRefused(String years, String expected) throws IOException {
        List<String> before = files();
        assertThat(run("compare", "--years", years)).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains(expected).doesNotContain("Exception");
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void compareNeedsYears() {
        assertThat(run("compare")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("--years");
    }

    @Test
    void helpHasAnExampleForEachCommand() {
        for (String command : List.of("drought", "compare")) {
            assertThat(Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), command, "--help"))
                    .isZero();
            assertThat(out.toString()).contains("thirstline " + command + " my-trial");
        }
    }
}
