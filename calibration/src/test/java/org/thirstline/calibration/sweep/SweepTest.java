package org.thirstline.calibration.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.text.YearSpan;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Sweeps give what single studies give, in the order of the table, however they are done. */
class SweepTest {

    private static final String STUDY = """
            title: test
            invented: true
            site: {name: nowhere, latitude_deg: 45, elevation_m: 100}
            weather: {file: w0.csv}
            crop: giant miscanthus
            stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
            soil: {available_water: 150 mm/m, depth: 1.2 m}
            harvest: {date: 03-01}
            """;

    @TempDir
    private Path folder;

    private Path table;
    private Study study;

    @BeforeEach
    void write() throws IOException {
        Files.writeString(folder.resolve("study.yaml"), STUDY);
        for (int i = 0; i < 3; i++) {
            Files.writeString(folder.resolve("w" + i + ".csv"), weather(i));
        }
        table = folder.resolve("cells.csv");
        study = StudyReader.read(folder.resolve("study.yaml"));
    }

    private static String weather(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        StringBuilder text = new StringBuilder(
                "# latitude_deg: " + (44 + seed) + "\n# elevation_m: 200\n" + "date,tmin_c,tmax_c,rain_mm\n");
        LocalDate end = LocalDate.of(2006, 4, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            double mean = 10.0 - 13.0 * Math.cos(2.0 * Math.PI * date.getDayOfYear() / 365.25);
            double half = 3.0 + 4.0 * random.nextDouble();
            double rain = random.nextDouble() < 0.3 ? 6.0 * random.nextExponential() : 0.0;
            text.append(String.format(
                    Locale.ROOT, "%s,%.1f,%.1f,%.1f\n", date, mean - half, mean + half, Math.min(100.0, rain)));
        }
        return text.toString();
    }

    private void cells(int count) throws IOException {
        StringBuilder text = new StringBuilder("cell,weather,available_water_mm_per_m,depth_m,planted\n");
        for (int i = 0; i < count; i++) {
            String weather = i % 4 == 3 ? "" : "w" + i % 4 + ".csv";
            text.append("c%d,%s,%d,%.1f,200%d-04-20\n".formatted(i, weather, 100 + i, 0.5 + i % 7 * 0.2, 1 + i % 2));
        }
        Files.writeString(table, text);
    }

    private static String text(CellOutcome outcome) {
        StringBuilder text = new StringBuilder(outcome.cell()).append(outcome.refusal());
        for (SeasonRecord season : outcome.seasons()) {
            text.append('\n')
                    .append(season.growthYear())
                    .append(season.status())
                    .append(season.dates());
            for (SeasonVariable variable : SeasonVariable.values()) {
                text.append(' ').append(season.value(variable));
            }
        }
        return text.toString();
    }

    private List<CellOutcome> sweep(SweepOptions options, int done) {
        List<CellOutcome> outcomes = new ArrayList<>();
        new Sweep(study, table, options).run(done, Function.identity(), outcomes::addAll, () -> {});
        return outcomes;
    }

    private static SweepOptions options(int threads, long weatherDays) {
        return new SweepOptions(true, Optional.empty(), threads, weatherDays);
    }

    private List<String> texts(SweepOptions options, int done) {
        return sweep(options, done).stream().map(SweepTest::text).toList();
    }

    @Test
    void resultsDependNeitherOnThreadsNorOnMemoryNorOnWhereTheSweepStarted() throws IOException {
        cells(60);
        List<String> alone = texts(options(1, 1_000_000), 0);

        assertThat(alone).hasSize(60).doesNotHaveDuplicates();
        assertThat(texts(options(4, 1_000_000), 0)).isEqualTo(alone);
        assertThat(texts(options(3, 0), 0)).isEqualTo(alone);
        assertThat(texts(options(2, 1_000_000), 23)).isEqualTo(alone.subList(23, 60));
    }

    @Test
    void aCellIsTheStudyItDescribes() throws IOException {
        Files.writeString(table, "cell\nonly\n");
        List<SeasonRecord> swept = sweep(options(1, 1_000_000), 0).get(0).seasons();
        List<SeasonRecord> run = StudySimulation.run(study, StudyWeather.read(study), 1)
                .zones()
                .get(0)
                .stand()
                .seasons();

        assertThat(swept).hasSameSizeAs(run).hasSizeGreaterThan(3);
        for (int i = 0; i < run.size(); i++) {
            assertThat(swept.get(i).dates()).isEqualTo(run.get(i).dates());
            for (SeasonVariable variable :
                    List.of(SeasonVariable.HARVESTED, SeasonVariable.DROUGHT_PENALTY, SeasonVariable.SOIL_WATER_END)) {
                assertThat(Double.valueOf(swept.get(i).value(variable)))
                        .isEqualTo(Double.valueOf(run.get(i).value(variable)));
            }
        }
    }

    @Test
    void aBadCellSaysWhyAndStopsNoOther() throws IOException {
        Files.writeString(
                folder.resolve("short.csv"), weather(1).lines().limit(200).collect(Collectors.joining("\n")));
        Files.writeString(folder.resolve("broken.csv"), "date,tmin_c\n2001-01-01,3\n");
        Files.writeString(
                table,
                String.join(
                        "\n",
                        "cell,weather,latitude_deg,depth_m,available_water_mm_per_m,planted",
                        "good,,,1,150,",
                        "gone,none.csv,,1,150,",
                        "short,short.csv,,1,150,",
                        "broken,broken.csv,45,1,150,",
                        "shallow,,,0.01,150,",
                        "south,,-45,1,150,",
                        "late,,,1,150,2020-04-20",
                        "last,w2.csv,,1,150,",
                        ""));

        List<CellOutcome> outcomes = sweep(options(2, 1_000_000), 0);

        assertThat(outcomes.stream().map(CellOutcome::cell))
                .containsExactly("good", "gone", "short", "broken", "shallow", "south", "late", "last");
        assertThat(outcomes.stream()
                        .filter(outcome -> outcome.refusal().isEmpty())
                        .map(CellOutcome::cell))
                .containsExactly("good", "last");
        assertThat(reason(outcomes, 1)).startsWith("cells.csv:3: weather: ").contains("'none.csv'");
        assertThat(reason(outcomes, 2)).contains("no complete growth year: weather ends before the harvest (1)");
        assertThat(reason(outcomes, 3)).startsWith("cells.csv:5: broken.csv");
        assertThat(reason(outcomes, 4)).startsWith("cells.csv:6: depth_m: found 0.01; allowed is 0.15 to 10 m");
        assertThat(reason(outcomes, 5)).startsWith("cells.csv:7: latitude_deg: ");
        assertThat(reason(outcomes, 6)).contains("planted on 2020-04-20");
        assertThat(outcomes).allSatisfy(outcome -> assertThat(outcome.refusal().orElse(""))
                .doesNotContain(folder.toString(), "\n"));
    }

    @Test
    void theSlipOfOneCellIsNotItsNeighbours() throws IOException {
        Files.writeString(
                table,
                "cell,weather,depth_m,available_water_mm_per_m\na,none.csv,1,150\nb,none.csv,1,150\nc,,0.01,150\nd,,1,150\n");

        List<CellOutcome> outcomes = sweep(options(1, 1_000_000), 0);

        assertThat(reason(outcomes, 0)).startsWith("cells.csv:2: weather");
        assertThat(reason(outcomes, 1)).startsWith("cells.csv:3: weather");
        assertThat(reason(outcomes, 2)).startsWith("cells.csv:4: depth_m");
        assertThat(outcomes.get(3).refusal()).isEmpty();
    }

    private static String reason(List<CellOutcome> outcomes, int index) {
        return outcomes.get(index).refusal().orElseThrow();
    }

    @Test
    void yearsNotAskedForAreLeftOutAndProgressCountsEveryCell() throws IOException {
        cells(5);
        AtomicInteger count = new AtomicInteger();
        List<CellOutcome> outcomes = new ArrayList<>();
        SweepOptions options = new SweepOptions(false, Optional.of(new YearSpan(2003, 2004)), 2, 0);

        new Sweep(study, table, options).run(0, Function.identity(), outcomes::addAll, count::incrementAndGet);

        assertThat(count).hasValue(5);
        assertThat(outcomes)
                .allSatisfy(outcome -> assertThat(outcome.seasons().stream().map(SeasonRecord::growthYear))
                        .containsExactly(2003, 2004));
    }
}
