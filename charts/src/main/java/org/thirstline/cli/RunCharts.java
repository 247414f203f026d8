package org.thirstline.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.io.tables.ResultFolder;

/** Draws the charts of a run at slide size and puts them, at column size, into the report. Stateless and thread-safe. */
final class RunCharts {

    private RunCharts() {}

    static void write(StudyOutcome outcome, CommonOptions options, ResultFolder results) throws IOException {
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        for (ZoneOutcome zone : outcome.zones()) {
            recipes.addAll(new ZoneCharts(outcome, zone).recipes());
        }
        List<ZoneCharts.Recipe> field = FieldCharts.recipes(outcome);
        recipes.addAll(field);
        ChartFiles.write(recipes, outcome, options, results);
        HtmlReport.write(
                RunReport.of(
                        outcome,
                        options.units,
                        zone -> ChartFiles.pages(new ZoneCharts(outcome, zone).recipes(), outcome, options),
                        ChartFiles.pages(field, outcome, options)),
                results.file("report.html"));
    }
}
