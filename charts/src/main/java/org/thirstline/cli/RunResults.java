package org.thirstline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.stream.Collectors;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.years.YearIndices;
import org.thirstline.io.quality.WeatherReport;
import org.thirstline.io.tables.DailyTable;
import org.thirstline.io.tables.DailyTable.ZoneDays;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.tables.SeasonTable;
import org.thirstline.io.tables.SeasonTable.ZoneSeasons;
import org.thirstline.io.tables.TableInfo;

/** The files of a run. Confined to one run. */
final class RunResults {

    private final StudyOutcome outcome;
    private final CommonOptions options;
    private final Timings timings;

    RunResults(StudyOutcome outcome, CommonOptions options, Timings timings) {
        this.outcome = outcome;
        this.options = options;
        this.timings = timings;
    }

    /** Writes everything into a folder that becomes visible as a whole. */
    void writeTo(ResultFolder results) throws IOException {
        ForkJoinTask<?> tables = ForkJoinPool.commonPool().submit(() -> describe(results, writeTables(results)));
        try {
            RunCharts.write(outcome, options, results);
        } finally {
            tables.quietlyJoin();
        }
        tables.join();
        timings.step("tables, charts and report");
        text(results, RunManifest.FILE, manifest().text());
    }

    private List<TableInfo> writeTables(ResultFolder results) throws IOException {
        List<ZoneSeasons> seasons = outcome.zones().stream()
                .map(zone -> new ZoneSeasons(zone.zone().name(), zone.stand().seasons()))
                .toList();
        List<ZoneDays> days = outcome.zones().stream()
                .map(zone -> new ZoneDays(zone.zone().name(), zone.stand().daily()))
                .toList();
        Map<Integer, String> classes = outcome.classes().entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey, entry -> entry.getValue().word()));
        SeasonTable.of(seasons, classes).writeTo(results.file(SeasonTable.FILE));
        DailyTable.write(days, results.file(DailyTable.FILE));
        StringBuilder report = new StringBuilder();
        WeatherReport.write(outcome.weather(), report);
        text(results, "weather-report.csv", report.toString());
        DroughtTable.of(outcome, YearIndices.of(outcome, null)).writeTo(results.file(DroughtTable.FILE));
        text(results, DroughtJson.FILE, DroughtJson.text(outcome));
        List<TableInfo> tables =
                new ArrayList<>(List.of(SeasonTable.info(), DailyTable.info(days), DroughtTable.info()));
        Optional<ResultTable> bands = BandTable.of(outcome);
        if (bands.isPresent()) {
            bands.get().table().writeTo(results.file(bands.get().info().path()));
            tables.add(bands.get().info());
        }
        return tables;
    }

    private static Path text(ResultFolder results, String name, String text) throws IOException {
        return Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private Path describe(ResultFolder results, List<TableInfo> tables) throws IOException {
        return text(results, DataPackage.FILE, RunNotes.descriptor(outcome, results, tables));
    }

    private RunManifest manifest() {
        return RunNotes.manifest("run", outcome, options, Map.of("years", RunNotes.years(options.years())), timings);
    }
}
