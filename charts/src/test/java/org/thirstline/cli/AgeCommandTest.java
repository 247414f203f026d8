package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Age or weather, as somebody with a table of plot yields asks it. */
class AgeCommandTest {

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

    private static final String HEADER = "zone,plot,growth_year,variable,value,unit\n";

    private static final int LAST_WEATHER_YEAR = 2012;

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
        SplittableRandom random = new SplittableRandom(5);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(LAST_WEATHER_YEAR + 1, 1, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0);
            double rain = random.nextDouble() < 0.3 ? 14.0 * random.nextDouble() : 0.0;
            text.append(String.format(Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - 5.0, mean + 5.0, rain));
        }
        return text.toString();
    }

    /** Four plots that yield 12 Mg/ha with scatter, and less by a share in each year past 2006. */
    private void plots(int first, int last, double decline) throws IOException {
        SplittableRandom random = new SplittableRandom(9);
        StringBuilder text = new StringBuilder(HEADER);
        for (int plot = 1; plot <= 4; plot++) {
            for (int year = first; year <= last; year++) {
                double left = Math.pow(1.0 - decline, Math.max(0, year - 2006));
                double value = 12.0 * left * (0.95 + 0.1 * random.nextDouble());
                text.append(String.format(Locale.ROOT, "field,%d,%d,yield,%.2f,Mg/ha%n", plot, year, value));
            }
        }
        Files.writeString(folder.resolve("plots.csv"), text.toString());
    }

    private int age(String... more) {
        String[] arguments = new String[4 + more.length];
        arguments[0] = "age";
        arguments[1] = folder.resolve("study.yaml").toString();
        arguments[2] = "--plots";
        arguments[3] = folder.resolve("plots.csv").toString();
        System.arraycopy(more, 0, arguments, 4, more.length);
        return Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }

    private String result(String name) throws IOException {
        return Files.readString(folder.resolve("study-age").resolve(name));
    }

    @Test
    void itWritesWhatItPromisesAndNamesWhatItLeftOut() throws IOException {
        plots(2003, 2012, 0.15);
        assertThat(age()).as(err.toString()).isZero();
        for (String name : new String[] {"report.html", "run.json", "datapackage.json"}) {
            assertThat(folder.resolve("study-age").resolve(name)).isNotEmptyFile();
        }
        for (String chart : new String[] {"yield-by-age", "lost-by-year", "power"}) {
            assertThat(folder.resolve("study-age/charts/" + chart + ".svg")).isNotEmptyFile();
            assertThat(folder.resolve("study-age/charts/" + chart + ".png")).isNotEmptyFile();
            assertThat(result("charts/" + chart + ".csv")).isNotEmpty();
        }
        assertThat(result("age.csv"))
                .startsWith("zone,plot,planting_year,growth_year,stand_age,observed_mg_ha,simulated_mg_ha,"
                        + "observed_over_simulated,fitted_age_factor\nfield,1,2001,2003,3,");
        assertThat(result("age.csv").lines()).hasSize(1 + 4 * 9);
        assertThat(out.toString())
                .contains("[invented data]")
                .contains("Plot yields of 2012 left out: weather ends before the harvest.")
                .contains("Decline beyond weather: over 9 growth years");
        assertThat(result("age.json")).contains("\"verdict\" : \"decline beyond weather\"");
        assertThat(result("report.html")).contains("Invented data.").contains("Decline beyond weather");
    }

    @Test
    void theSharesOfAYearAddUp() throws IOException {
        plots(2003, 2011, 0.15);
        assertThat(age("--quiet")).as(err.toString()).isZero();
        assertThat(out.toString()).isEmpty();
        result("charts/lost-by-year.csv").lines().skip(1).forEach(line -> {
            String[] cells = line.split(",");
            double parts = Double.parseDouble(cells[2])
                    + Double.parseDouble(cells[4])
                    + Double.parseDouble(cells[5])
                    + Double.parseDouble(cells[6]);
            // Four values with four decimals each.
            assertThat(Math.abs(parts - Double.parseDouble(cells[3]))).isLessThan(5 * 0.5e-4);
        });
    }

    @Test
    void oneYearCannotTell() throws IOException {
        plots(2004, 2004, 0.0);
        assertThat(age()).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("Can't tell yet")
                .contains("Scatter assumed")
                .contains("more years");
        assertThat(result("age.json")).contains("\"verdict\" : \"can't tell yet\"");
    }

    @Test
    void yieldsOutsideTheWeatherAreNotAttributed() throws IOException {
        plots(2020, 2032, 0.15);
        assertThat(age()).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("Can't tell yet")
                .contains("can't be attributed to age")
                .contains("holds no complete growth year of the plot yields");
        assertThat(result("age.json")).contains("\"simulated\" : false").doesNotContain("weather_taken_out");
        assertThat(folder.resolve("study-age/charts/lost-by-year.svg")).doesNotExist();
    }

    @Test
    void theSameSeedGivesTheSameBytes() throws IOException {
        plots(2003, 2009, 0.05);
        assertThat(age("--out", folder.resolve("a").toString(), "--seed", "7")).isZero();
        assertThat(age("--out", folder.resolve("b").toString(), "--seed", "7")).isZero();
        for (String name : new String[] {"age.json", "age.csv", "report.html", "charts/power.svg"}) {
            assertThat(Files.mismatch(
                            folder.resolve("a").resolve(name),
                            folder.resolve("b").resolve(name)))
                    .isEqualTo(-1);
        }
    }

    private static final String ZONES = """
            zones:
              - {name: loam, soil: {available_water: 170 mm/m, depth: 1.5 m}}
              - {name: sand, soil: {available_water: 80 mm/m, depth: 0.8 m}}
            """;

    /** Three plantings on the loam and one on the sand, two plots each, staggered. */
    private void staggered(double decline) throws IOException {
        String soil = "soil: {available_water: 150 mm/m, depth: 1 m}\n";
        Files.writeString(folder.resolve("study.yaml"), STUDY.replace(soil, ZONES));
        SplittableRandom random = new SplittableRandom(3);
        StringBuilder text = new StringBuilder("zone,plot,planting_year,growth_year,variable,value,unit\n");
        for (String planting : new String[] {"loam,2001", "loam,2003", "loam,2005", "sand,2003"}) {
            int planted = Integer.parseInt(planting.substring(5));
            for (int plot = 1; plot <= 2; plot++) {
                for (int year = planted + 2; year < LAST_WEATHER_YEAR; year++) {
                    double left = Math.pow(1.0 - decline, Math.max(0, year - planted - 3));
                    text.append(String.format(
                            Locale.ROOT,
                            "%s,%s-%d,%d,%d,yield,%.2f,Mg/ha%n",
                            planting.substring(0, 4),
                            planted,
                            plot,
                            planted,
                            year,
                            12.0 * left * (0.95 + 0.1 * random.nextDouble())));
                }
            }
        }
        Files.writeString(folder.resolve("plots.csv"), text.toString());
    }

    @Test
    void staggeredPlantingsGetAPanelEach() throws IOException {
        staggered(0.08);
        assertThat(age()).as(err.toString()).isZero();
        assertThat(folder.resolve("study-age/charts/plantings.svg")).isNotEmptyFile();
        List<String> rows = result("charts/plantings.csv").lines().skip(1).toList();
        assertThat(rows.stream().map(row -> row.substring(0, 9)).distinct())
                .containsExactly("loam,2001", "loam,2003", "loam,2005", "sand,2003");
        // One row for each planting and growth year of 2003, 2005 or 2007 to 2011.
        assertThat(rows).hasSize(9 + 7 + 5 + 7);
        assertThat(result("report.html")).contains("loam, planted 2005").contains("4 plantings of 2001 to 2005");
        assertThat(out.toString()).contains("The crop file holds no posterior");
    }

    @Test
    void onePlantingNeedsNoPanels() throws IOException {
        plots(2004, 2011, 0.03);
        assertThat(age()).as(err.toString()).isZero();
        assertThat(folder.resolve("study-age/charts/plantings.svg")).doesNotExist();
        assertThat(result("age.json")).contains("\"verdict\" : \"can't tell yet\"");
    }

    @Test
    void firstWintersAreToldByPlantingDateAndSoilTemperatureWithCaution() throws IOException {
        plots(2004, 2005, 0.0);
        assertThat(age()).as(err.toString()).isZero();
        assertThat(folder.resolve("study-age/charts/first-winter.svg")).isNotEmptyFile();
        List<String> rows = result("charts/first-winter.csv").lines().skip(1).toList();
        assertThat(rows).filteredOn(row -> row.startsWith("03-01,")).hasSize(1);
        assertThat(rows).filteredOn(row -> row.startsWith("07-15,")).hasSize(1);
        assertThat(result("age.json")).contains("\"planting_dates\"").contains("\"gap_share\"");
        assertThat(result("report.html"))
                .contains("Ask local growers, advisers and the supplier")
                .contains("the first winter by planting date")
                .contains("by what is done from now on");
    }

    /** The posterior of a calibrated crop file, made up: every draw gives a verdict. */
    @Test
    void theVerdictIsRepeatedOverTheDrawsOfACalibration() throws IOException {
        plots(2003, 2011, 0.15);
        Files.writeString(folder.resolve("crop.yaml"), """
                name: made up
                based_on: giant miscanthus
                calibration:
                  study: test
                  date: "2026-03-14"
                  observations: 36
                  draw_names: [radiation_use_efficiency_g_mj, available_water_factor/field]
                  draws: ["2.6 0.9", "3.0 1.0", "3.4 1.1"]
                """);
        Files.writeString(folder.resolve("study.yaml"), STUDY.replace("crop: giant miscanthus", "crop: crop.yaml"));
        assertThat(age()).as(err.toString()).isZero();
        assertThat(out.toString())
                .contains("Repeated over 3 draws of the calibration: decline beyond weather in 3")
                .doesNotContain("holds no posterior");
        assertThat(result("age.json")).contains("\"over_calibration_draws\"").contains("\"draws\" : 3");
        assertThat(result("report.html")).contains("left as the study has them: available_water_factor/field");
    }

    @Test
    void mistakesGetOneClearLine() throws IOException {
        String study = folder.resolve("study.yaml").toString();
        int none = Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), "age", study);
        assertThat(none).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("names no plot data").contains("--plots");
        Files.writeString(folder.resolve("plots.csv"), HEADER + "feild,1,2003,yield,9,Mg/ha\n");
        assertThat(age()).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("plots.csv:2: column zone").contains("did you mean 'field'");
        Files.writeString(folder.resolve("plots.csv"), HEADER + "field,1,2003,yield,900,Mg/ha\n");
        assertThat(age()).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("900 Mg/ha").doesNotContain("Exception");
        assertThat(folder.resolve("study-age")).doesNotExist();
    }

    @Test
    void helpHasAnExample() {
        int shown = Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), "age", "--help");
        assertThat(shown).isZero();
        assertThat(out.toString()).contains("thirstline age my-trial/study.yaml --plots");
    }
}
