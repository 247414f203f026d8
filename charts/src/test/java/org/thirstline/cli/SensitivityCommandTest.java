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
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which parameters matter, as somebody asks it before a calibration. */
class SensitivityCommandTest {

    private static final String STUDY = """
            title: test
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            zones:
              - {name: deep loam, soil: {available_water: 160 mm/m, depth: 1.5 m}}
              - {name: slope, soil: {available_water: 110 mm/m, depth: 0.6 m}}
            harvest: {date: 03-01}
            """;

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY);
        SplittableRandom random = new SplittableRandom(5);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(2007, 6, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0);
            double rain = random.nextDouble() < 0.3 ? 12.0 * random.nextDouble() : 0.0;
            text.append(String.format(Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, mean - 5.0, mean + 5.0, rain));
        }
        Files.writeString(folder.resolve("weather.csv"), text.toString());
    }

    private int sensitivity(String... more) {
        List<String> arguments = new ArrayList<>(
                List.of("sensitivity", folder.resolve("study.yaml").toString()));
        arguments.addAll(List.of("--samples", "16", "--trajectories", "3", "--most", "4"));
        arguments.addAll(List.of(more));
        return Thirstline.execute(
                new PrintWriter(out, true), new PrintWriter(err, true), arguments.toArray(String[]::new));
    }

    @Test
    void itWritesWhatItPromises() throws IOException {
        assertThat(sensitivity()).as(err.toString()).isZero();
        Path results = folder.resolve("study-sensitivity");
        for (String name : new String[] {
            "report.html",
            "run.json",
            "datapackage.json",
            "sensitivity.json",
            "charts/what-decides-what-slope.svg",
            "charts/screening-mean-harvest-deep-loam.png",
            "charts/shares-mean-harvest-slope.csv"
        }) {
            assertThat(results.resolve(name)).isNotEmptyFile();
        }
        List<String> rows = Files.readAllLines(results.resolve("sensitivity.csv"));
        assertThat(rows.get(0)).startsWith("zone,output,output_unit,parameter,parameter_unit,standard,low,high,range,");
        // Two zones, seven outputs, eighteen parameters of the crop and the soil's water.
        assertThat(rows).hasSize(1 + 2 * 7 * 19);
        assertThat(rows).noneMatch(row -> row.contains("NaN"));
        assertThat(Files.readString(results.resolve("sensitivity.json"))).doesNotContain("NaN");
        assertThat(out.toString())
                .contains("[invented data]")
                .contains("Of 19 parameters")
                .contains("radiation-use efficiency makes")
                .contains("1 of 19 ranges are shares of the value");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void anyNumberOfThreadsGivesTheSameBytes() throws IOException {
        assertThat(sensitivity("--zone", "slope", "--out", folder.resolve("a").toString(), "--threads", "1"))
                .isZero();
        assertThat(sensitivity("--zone", "Slope", "--out", folder.resolve("b").toString(), "--threads", "3"))
                .isZero();
        for (String name : new String[] {"sensitivity.csv", "sensitivity.json", "report.html", "datapackage.json"}) {
            assertThat(Files.mismatch(
                            folder.resolve("a").resolve(name),
                            folder.resolve("b").resolve(name)))
                    .as(name)
                    .isEqualTo(-1);
        }
        assertThat(Files.readString(folder.resolve("a/sensitivity.csv"))).doesNotContain("deep loam");
    }

    @Test
    void otherParametersAreVariedOnRequest() throws IOException {
        assertThat(sensitivity("--zone", "slope", "--others", "60", "--soil-water", "0", "--quiet"))
                .as(err.toString())
                .isZero();
        assertThat(out.toString()).isEmpty();
        String table = Files.readString(folder.resolve("study-sensitivity/sensitivity.csv"));
        assertThat(table).contains("root_depth_mature_m").doesNotContain("soil_available_water_factor", "NaN");
        assertThat(Files.readString(folder.resolve("study-sensitivity/sensitivity.json")))
                .contains("must stay below");
    }

    @Test
    void mistakesGetOneClearLine() {
        assertThat(sensitivity("--zone", "valley")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("zone 'valley'").contains("deep loam, slope");
        assertThat(sensitivity("--soil-water", "95")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("available water").doesNotContain("Exception");
        assertThat(folder.resolve("study-sensitivity")).doesNotExist();
    }

    @Test
    void helpHasAnExample() {
        int shown = Thirstline.execute(new PrintWriter(out, true), new PrintWriter(err, true), "sensitivity", "--help");
        assertThat(shown).isZero();
        assertThat(out.toString()).contains("thirstline sensitivity my-trial/study.yaml --zone slope");
    }
}
