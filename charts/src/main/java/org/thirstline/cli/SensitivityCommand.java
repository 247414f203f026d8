package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.influence.StudyInfluence;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.io.study.Zone;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.model.error.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which parameters matter, for this site. */
@Command(
        name = "sensitivity",
        description = {
            "Say which parameters of crop and soil matter at this site, and for what: each is moved through its published range;"
                    + " tables, charts and a report.",
            ""
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline sensitivity docs/examples/larkmoor/study.yaml",
            "  thirstline sensitivity my-trial/study.yaml --zone slope --samples 1024 --others 10",
            "",
            "Ranges are low and high in the crop file; how to read the answer is in docs/sensitivity.md."
        })
final class SensitivityCommand implements Callable<Integer> {

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Mixin
    private final CommonOptions options = new CommonOptions();

    @Mixin
    private final SensitivityOptions asked = new SensitivityOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        Timings timings = new Timings();
        StudyOutcome outcome = StudyRuns.simulate(file, options.years(), options.threads, timings);
        List<Zone> zones = zones(outcome);
        ProgressLine progress = new ProgressLine(spec.commandLine().getErr(), options.quiet);
        StudyInfluence answer = StudyInfluence.of(
                outcome,
                zones,
                asked.options(options.seed, options.threads),
                (done, total) -> progress.bar("Varying parameters", done, total));
        progress.clear();
        timings.step("runs");
        Path folder = options.folderFor(file, "sensitivity");
        try (ResultFolder results = ResultFolder.open(folder)) {
            write(outcome, answer, results, timings);
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            print(outcome, answer, folder);
        }
        return 0;
    }

    private List<Zone> zones(StudyOutcome outcome) {
        List<Zone> all = outcome.study().zones();
        if (asked.zone == null) {
            return all;
        }
        List<Zone> named = all.stream()
                .filter(zone -> zone.name().equalsIgnoreCase(asked.zone))
                .toList();
        if (named.isEmpty()) {
            String known = all.stream().map(Zone::name).collect(Collectors.joining(", "));
            throw new InputException(CalibrationError.SOIL_UNKNOWN, asked.zone, "", known);
        }
        return named;
    }

    private void write(StudyOutcome outcome, StudyInfluence answer, ResultFolder results, Timings timings)
            throws IOException {
        SensitivityTable.of(answer).writeTo(results.file(SensitivityTable.FILE));
        text(results, SensitivityJson.FILE, SensitivityJson.text(outcome, answer));
        timings.step("tables");
        SensitivityCharts charts = new SensitivityCharts(answer);
        ChartFiles.write(charts.all(), outcome, options, results);
        HtmlReport.write(new SensitivityReport(outcome, answer, charts, options).model(), results.file("report.html"));
        timings.step("charts and report");
        text(results, RunManifest.FILE, manifest(outcome, answer, timings).text());
        text(results, DataPackage.FILE, RunNotes.descriptor(outcome, results, List.of(SensitivityTable.info())));
    }

    private RunManifest manifest(StudyOutcome outcome, StudyInfluence answer, Timings timings) {
        Map<String, String> chosen = Map.of(
                "years", RunNotes.years(options.years()),
                "zone", asked.zone == null ? "all" : asked.zone,
                "samples", Integer.toString(answer.options().samples()),
                "trajectories", Integer.toString(answer.options().trajectories()),
                "most", Integer.toString(answer.options().mostInputs()),
                "soil_water_pct", Double.toString(answer.options().soilWaterPct()),
                "others_pct", Double.toString(answer.options().unpublishedPct()));
        return RunNotes.manifest("sensitivity", outcome, options, chosen, timings);
    }

    private static void text(ResultFolder results, String name, String text) throws IOException {
        Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private void print(StudyOutcome outcome, StudyInfluence answer, Path folder) {
        PrintWriter out = spec.commandLine().getOut();
        out.println(outcome.study().title() + (outcome.invented() ? "  [invented data]" : ""));
        SensitivityWords words = new SensitivityWords(answer, options.units);
        answer.zones().forEach(zone -> {
            out.println();
            out.println(zone.zone().name() + ":");
            words.sentences(zone).forEach(sentence -> out.println("  " + sentence));
        });
        out.println();
        words.notices().forEach(notice -> out.println("note: " + notice));
        out.println("Results: " + folder.resolve("report.html") + " (and tables and charts beside it)");
    }
}
