package org.thirstline.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.io.tables.ResultFolder;

/** Draws the charts of a run at slide size and puts them, at column size, into the report. Stateless and thread-safe. */
final class RunCharts {

    private RunCharts() {}

    /** The report, whose page is put together by one thread, first; the charts' own files are then enough for all threads to the end. */
    static void write(StudyOutcome outcome, CommonOptions options, ResultFolder results) throws IOException {
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            recipes.addAll(new ZoneCharts(outcome, zone).recipes());
        }
        List<ZoneCharts.Recipe> field = FieldCharts.recipes(outcome);
        recipes.addAll(field);
        ForkJoinTask<?> report = ForkJoinPool.commonPool()
                .submit(() -> writeReport(outcome, options, field, results.file("report.html")));
        try {
            ChartFiles.write(recipes, outcome, options, results);
        } finally {
            report.quietlyJoin();
        }
        report.join();
    }

    private static void writeReport(
            StudyOutcome outcome, CommonOptions options, List<ZoneCharts.Recipe> field, Path file) {
        try {
            HtmlReport.write(
                    RunReport.of(
                            outcome,
                            options.units,
                            zone -> ChartFiles.pages(new ZoneCharts(outcome, zone).recipes(), outcome, options),
                            ChartFiles.pages(field, outcome, options)),
                    file);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
