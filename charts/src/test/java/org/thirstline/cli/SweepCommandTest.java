package org.thirstline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.calibration.sweep.SweepOptions;
import org.thirstline.io.study.StudyReader;

/** The sweep command: its table, bad cells, interruption. */
class SweepCommandTest {

    private static final String STUDY = """
            title: test
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: weather.csv}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            soil: {available_water: 150 mm/m, depth: 1.2 m}
            harvest: {date: 03-01}
            """;

    private static final String CELLS = """
            cell,county,available_water_mm_per_m,depth_m,planting_year
            deep,A,170,1.5,
            "thin, stony",A,90,0.4,
            none,B,90,0.01,
            young,B,150,1.2,2004
            last,B,150,1.2,2002
            """;

    @TempDir
    private Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY);
        Files.writeString(folder.resolve("cells.csv"), CELLS);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(2006, 4, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            long mean = Math.round(10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.0));
            int rain = date.getDayOfMonth() % 5 == 0 ? 5 + 2 * (date.getYear() * 7 % 5) : 0;
            text.append(date + "," + (mean - 5) + "," + (mean + 5) + "," + rain + "\n");
        }
        Files.writeString(folder.resolve("weather.csv"), text);
    }

    private int sweep(String to, String... options) {
        List<String> arguments = new ArrayList<>(List.of(
                "sweep",
                folder.resolve("study.yaml").toString(),
                "--cells",
                folder.resolve("cells.csv").toString(),
                "--out",
                folder.resolve(to).toString()));
        arguments.addAll(List.of(options));
        return Thirstline.execute(
                new PrintWriter(out, true), new PrintWriter(err, true), arguments.toArray(new String[0]));
    }

    private List<String> names(String of) throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve(of))) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void writesARowForEachCellInTheirOrder() throws IOException {
        assertThat(sweep("o", "--penalty")).as(err.toString()).isZero();

        List<String> lines = Files.readAllLines(folder.resolve("o/cell-yields.csv"));
        assertThat(lines).hasSize(6);
        assertThat(lines.get(0))
                .isEqualTo(
                        "cell,outcome,years,first_year,last_year,mean_harvested_mg_ha,lowest_harvested_mg_ha,lowest_year,"
                                + "highest_harvested_mg_ha,mean_season_rain_mm,mean_water_factor,mean_drought_penalty_mg_ha,"
                                + "mean_drought_penalty_pct,worst_drought_penalty_mg_ha,worst_year");
        assertThat(lines.get(1)).startsWith("deep,ok,3,2003,2005,");
        assertThat(lines.get(2)).startsWith("\"thin, stony\",ok,3,2003,2005,");
        assertThat(lines.get(3))
                .startsWith("none,cells.csv:4: depth_m: found 0.01; allowed is 0.15 to 10 m,0,,")
                .endsWith(",,,,");
        assertThat(lines.get(4)).startsWith("young,no complete growth year of a stand aged 3 or more,0,,");
        assertThat(lines.get(5)).startsWith("last,ok,2,2004,2005,");
        assertThat(names("o")).containsExactly("cell-yields.csv", "datapackage.json", "run.json");
        assertThat(Files.readString(folder.resolve("o/datapackage.json")))
                .contains("\"worst_drought_penalty_mg_ha\"")
                .contains("Invented");
        assertThat(out.toString())
                .contains("[invented data] 4 of 5 cells have a yield.", "1 have none", "Columns not read: county.");
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void writesARowForEachGrowthYear() throws IOException {
        assertThat(sweep("o", "--by-year", "--years", "2004-2005"))
                .as(err.toString())
                .isZero();

        List<String> lines = Files.readAllLines(folder.resolve("o/cell-seasons.csv"));
        assertThat(lines.get(0)).startsWith("cell,growth_year,stand_age,status,harvest_date,harvested_mg_ha,");
        assertThat(lines.subList(1, lines.size()))
                .hasSize(9)
                .anySatisfy(line -> assertThat(line).startsWith("deep,2004,4,complete,2005-03-01,"))
                .anySatisfy(line -> assertThat(line)
                        .startsWith("none,,,cells.csv:4: depth_m: ")
                        .endsWith(",,,,,,,,,"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cell-yields.csv", "cell-seasons.csv"})
    void anInterruptedSweepEndsAsIfItHadNotBeen(String table) throws IOException {
        String[] form = table.equals("cell-yields.csv") ? new String[0] : new String[] {"--by-year"};
        assertThat(sweep("whole", form)).as(err.toString()).isZero();
        byte[] whole = Files.readAllBytes(folder.resolve("whole").resolve(table));
        Path partial = folder.resolve("cut").resolve(table + ".part");

        for (int length = 1; length < whole.length; length += Math.max(1, whole.length / 9)) {
            Files.createDirectories(partial.getParent());
            Files.write(partial, Arrays.copyOf(whole, length));
            Files.writeString(folder.resolve("cut").resolve(table + ".key"), key());

            String[] options =
                    Stream.concat(Stream.of(form), Stream.of("--resume")).toArray(String[]::new);
            assertThat(sweep("cut", options)).as(err.toString()).isZero();

            assertThat(folder.resolve("cut").resolve(table))
                    .as("cut to %d bytes", length)
                    .hasContent(new String(whole, StandardCharsets.UTF_8));
            assertThat(names("cut")).containsExactly(table, "datapackage.json", "run.json");
        }
    }

    /** What an interrupted sweep leaves beside its partial table. */
    private String key() {
        SweepOptions options = SweepOptions.within(false, Optional.empty(), 1);
        return new SweepNotes(StudyReader.read(folder.resolve("study.yaml")), folder.resolve("cells.csv"), options)
                .key();
    }

    @Test
    void unfinishedWorkIsNeitherOverwrittenNorMixed() throws IOException {
        Files.createDirectories(folder.resolve("o"));
        Files.writeString(folder.resolve("o/cell-yields.csv.part"), "cell\na\nb\n");

        assertThat(sweep("o")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("unfinished", "--resume");
        assertThat(sweep("o", "--resume")).isEqualTo(Thirstline.WRONG_INPUT);
        assertThat(err.toString()).contains("begun with other input");
    }

    @Test
    void failsOnlyWhenEveryCellDoes() throws IOException {
        Files.writeString(folder.resolve("cells.csv"), "cell,depth_m\na,1\nb,1\n");

        assertThat(sweep("o")).isEqualTo(Thirstline.WRONG_INPUT);

        assertThat(err.toString()).contains("none of the 2 cells has a usable yield; the first: cells.csv:2: ");
        assertThat(Files.readAllLines(folder.resolve("o/cell-yields.csv"))).hasSize(3);
    }

    @Test
    void saysHowLongTheRestWillTake() {
        assertThat(SweepProgress.text(600, 1000, 100, 10.0)).isEqualTo("600 of 1000 cells, 40 s left");
        assertThat(SweepProgress.text(10, 10_000, 10, 6.0)).isEqualTo("10 of 10000 cells, 1 h 40 min left");
        assertThat(SweepProgress.text(10, 100, 10, 60.0)).isEqualTo("10 of 100 cells, 9 min left");
    }
}
