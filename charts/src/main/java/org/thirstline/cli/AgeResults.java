package org.thirstline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.thirstline.calibration.age.AgeVerdict;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.charts.AgeCurveChart;
import org.thirstline.charts.AgeCurveView;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.FirstWinterChart;
import org.thirstline.charts.PlantingsChart;
import org.thirstline.charts.PlantingsView;
import org.thirstline.charts.PowerChart;
import org.thirstline.charts.PowerView;
import org.thirstline.charts.YearSharesChart;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.plots.PlotTable;
import org.thirstline.io.study.Study;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;

/** The files of an answer to age or weather. Confined to one run. */
final class AgeResults {

    private final StudyOutcome outcome;
    private final PlotTable plots;
    private final Path plotFile;
    private final AgeStudy answer;
    private final CommonOptions options;
    private final Timings timings;
    private final boolean invented;

    AgeResults(
            StudyOutcome outcome,
            PlotTable plots,
            Path plotFile,
            AgeStudy answer,
            CommonOptions options,
            Timings timings) {
        this.outcome = outcome;
        this.plots = plots;
        this.plotFile = plotFile;
        this.answer = answer;
        this.options = options;
        this.timings = timings;
        this.invented = outcome.invented() || plots.invented();
    }

    /** Writes everything into a folder that becomes visible as a whole. */
    void writeTo(ResultFolder results) throws IOException {
        Study study = outcome.study();
        Path table = results.file(AgeTable.FILE);
        AgeTable.of(answer).writeTo(table);
        text(results, AgeJson.FILE, AgeJson.text(study.title(), invented, answer));
        timings.step("tables");
        ChartStyle slide = new ChartStyle(ChartTheme.LIGHT, ChartSize.SLIDE, options.units, source(), invented);
        for (Map.Entry<String, Function<ChartStyle, ChartDocument>> chart : charts().entrySet()) {
            for (ChartSize size : options.sizes()) {
                Path base = results.file("charts/" + OutputOptions.fileName(chart.getKey(), size));
                ChartWriter.write(chart.getValue().apply(slide.withSize(size)), base, options.formats());
            }
        }
        ChartStyle page = slide.withSize(ChartSize.COLUMN).withSource("");
        List<ChartDocument> documents =
                charts().values().stream().map(chart -> chart.apply(page)).toList();
        HtmlReport.write(
                new AgeReport(outcome, answer, options.units, invented).model(documents), results.file("report.html"));
        timings.step("charts and report");
        text(results, RunManifest.FILE, manifest().text());
        Path folder = table.getParent();
        if (folder == null) {
            throw new IOException("results have no folder");
        }
        String description = (invented ? "Invented place, weather, stand or plots. " : "")
                + "Plot yields beside a simulation by Thirstline of a stand that never ages.";
        text(
                results,
                DataPackage.FILE,
                DataPackage.descriptor(study.title(), description, List.of(AgeTable.info()), folder));
    }

    private Map<String, Function<ChartStyle, ChartDocument>> charts() {
        Map<String, Function<ChartStyle, ChartDocument>> charts = new LinkedHashMap<>();
        AgeCurveView curves = AgeCurveView.of(answer, outcome.classes());
        charts.put("yield-by-age", style -> AgeCurveChart.of(curves, style));
        if (answer.plantings().size() > 1) {
            PlantingsView plantings = PlantingsView.of(answer, outcome.classes());
            charts.put("plantings", style -> PlantingsChart.of(plantings, style));
        }
        if (!answer.shares().isEmpty()) {
            boolean called = answer.findings().verdict() == AgeVerdict.DECLINE_BEYOND_WEATHER;
            charts.put("lost-by-year", style -> YearSharesChart.of(answer.shares(), called, style));
        }
        answer.plan().ifPresent(plan -> {
            PowerView power = new PowerView(
                    plan.onsetAge(), plan.smallestFoundPerYear(), answer.scatterAssumed(), answer.powers());
            charts.put("power", style -> PowerChart.of(power, style));
        });
        if (!answer.firstWinter().dates().isEmpty()) {
            charts.put(AgeReport.FIRST_WINTER, style -> FirstWinterChart.of(answer.firstWinter(), style));
        }
        return charts;
    }

    private String source() {
        return "Plots: " + plotFile.getFileName() + "; Thirstline simulation; weather: "
                + outcome.weather().format().description() + ", "
                + outcome.weather().site().name();
    }

    private static void text(ResultFolder results, String name, String text) throws IOException {
        Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private RunManifest manifest() throws IOException {
        Path base = outcome.study().file().toAbsolutePath().getParent();
        if (base == null) {
            throw new IOException(outcome.study().file() + " has no folder");
        }
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("thirstline", Version.program());
        versions.put("java", Version.java());
        Map<String, String> chosen = new LinkedHashMap<>();
        chosen.put("units", options.units.name());
        chosen.put("years", options.years().map(Object::toString).orElse("all"));
        chosen.put("seed", Long.toString(options.seed));
        List<Path> files = new ArrayList<>(outcome.study().inputFiles());
        outcome.study().plots().ifPresent(files::remove);
        files.add(plotFile);
        List<RunManifest.Input> inputs =
                files.stream().map(file -> RunManifest.Input.of(file, base)).toList();
        return new RunManifest("age", versions, inputs, chosen, timings.seconds());
    }
}
