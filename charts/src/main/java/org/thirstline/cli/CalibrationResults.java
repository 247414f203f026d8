package org.thirstline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.CalibrationSettings;
import org.thirstline.calibration.problem.StudySource;
import org.thirstline.charts.ChartDocument;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.study.Study;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.tables.TableInfo;

/** The files of a calibration. Confined to one run. */
final class CalibrationResults {

    private final CalibrationOutcome outcome;
    private final CalibrationSettings settings;
    private final LocalDate date;
    private final CommonOptions options;
    private final Timings timings;

    CalibrationResults(
            CalibrationOutcome outcome,
            CalibrationSettings settings,
            LocalDate date,
            CommonOptions options,
            Timings timings) {
        this.outcome = outcome;
        this.settings = settings;
        this.date = date;
        this.options = options;
        this.timings = timings;
    }

    /** Writes everything into a folder that becomes visible as a whole. */
    void writeTo(ResultFolder results) throws IOException {
        List<TableInfo> infos = new ArrayList<>();
        for (ResultTable table : new CalibrationTables(outcome).all()) {
            table.table().writeTo(results.file(table.info().path()));
            infos.add(table.info());
        }
        text(results, CalibratedCrop.FILE, new CalibratedCrop(outcome, date).text());
        text(results, CalibrationJson.FILE, CalibrationJson.text(outcome));
        timings.step("tables");
        writeCharts(results);
        timings.step("charts and report");
        text(results, RunManifest.FILE, manifest().text());
        Study study = outcome.data().sources().get(0).study();
        Path folder = results.file(DataPackage.FILE).getParent();
        if (folder == null) {
            throw new IOException("results have no folder");
        }
        String description = (outcome.invented() ? "Invented place, weather or plots. " : "")
                + "Plot data beside the simulation that was fitted to them by Thirstline.";
        text(results, DataPackage.FILE, DataPackage.descriptor(study.title(), description, infos, folder));
    }

    private void writeCharts(ResultFolder results) throws IOException {
        ChartStyle slide =
                new ChartStyle(ChartTheme.LIGHT, ChartSize.SLIDE, options.units, source(), outcome.invented());
        Set<ChartFormat> formats = EnumSet.of(ChartFormat.SVG, ChartFormat.PNG, ChartFormat.CSV);
        if (options.pdf) {
            formats.add(ChartFormat.PDF);
        }
        Map<String, Function<ChartStyle, ChartDocument>> charts = new CalibrationCharts(outcome).all();
        for (Map.Entry<String, Function<ChartStyle, ChartDocument>> chart : charts.entrySet()) {
            ChartWriter.write(chart.getValue().apply(slide), results.file("charts/" + chart.getKey()), formats);
        }
        ChartStyle page = slide.withSize(ChartSize.COLUMN).withSource("");
        List<ChartDocument> documents =
                charts.values().stream().map(chart -> chart.apply(page)).toList();
        HtmlReport.write(new CalibrationReport(outcome).model(documents), results.file("report.html"));
    }

    private String source() {
        StudySource first = outcome.data().sources().get(0);
        int others = outcome.data().sources().size() - 1;
        return "Plots: " + first.plotFile().getFileName()
                + (others == 0 ? "" : " and of " + others + (others == 1 ? " other site" : " other sites"))
                + "; Thirstline simulation; weather: "
                + first.weather().format().description() + ", "
                + first.weather().site().name() + (others == 0 ? "" : " and others");
    }

    private static void text(ResultFolder results, String name, String text) throws IOException {
        Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private RunManifest manifest() {
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("thirstline", Version.program());
        versions.put("java", Version.java());
        Map<String, String> chosen = new LinkedHashMap<>();
        chosen.put("years", RunNotes.years(options.years()));
        chosen.put("starts", Integer.toString(settings.starts()));
        chosen.put("global", Boolean.toString(settings.global()));
        chosen.put("unclear", CalibrateCommand.word(settings.unclear()));
        chosen.put("posterior", Integer.toString(settings.draws()));
        chosen.put("date", date.toString());
        chosen.put("seed", Long.toString(options.seed));
        return new RunManifest("calibrate", versions, CalibratedCrop.inputs(outcome), chosen, timings.seconds());
    }
}
