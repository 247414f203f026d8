package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.years.IndexKind;
import org.thirstline.charts.report.HtmlReport;
import org.thirstline.io.tables.DataPackage;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import org.thirstline.io.tables.TableInfo;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says what the years of a study say about drought. */
@Command(
        name = "drought",
        description =
                "What missing rain cost: the drought line, the thirst table by soil, what was carried over, risk, zones, "
                        + "irrigation and harvest dates; tables, charts and a report. With a crop file that 'calibrate' wrote, risk and line have"
                        + " bands over the draws of the calibration.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline drought my-trial/study.yaml",
            "  thirstline drought my-trial/study.yaml --window 06-01..08-31 --index window --target 15"
        })
final class DroughtCommand implements Callable<Integer> {

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Mixin
    private final CommonOptions options = new CommonOptions();

    @Mixin
    private final DroughtOptions asked = new DroughtOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        check();
        Timings timings = new Timings();
        StudyOutcome outcome = StudyRuns.simulateWithBands(file, options.years(), options, timings);
        DroughtFindings findings = DroughtFindings.of(outcome, asked, options.units);
        timings.step("what the years say");
        Path folder = options.folderFor(file, "drought");
        try (ResultFolder results = ResultFolder.open(folder)) {
            write(findings, results, timings);
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            print(findings, folder);
        }
        return 0;
    }

    private void check() {
        if (asked.index == IndexKind.WINDOW && asked.window == null) {
            throw new ParameterException(
                    spec.commandLine(), "--index window needs the window, e.g. --window 06-01..08-31");
        }
        if (asked.target != null && !(asked.target > 0.0 && asked.target < 200.0)) {
            throw new ParameterException(
                    spec.commandLine(), "--target is " + asked.target + "; a yield lies between 0 and 200");
        }
    }

    private void write(DroughtFindings findings, ResultFolder results, Timings timings) throws IOException {
        StudyOutcome outcome = findings.outcome();
        List<TableInfo> tables = new ArrayList<>();
        tables.add(DroughtTable.info());
        DroughtTable.of(outcome, findings.indices()).writeTo(results.file(DroughtTable.FILE));
        for (ResultTable table : List.of(
                DroughtTables.indices(findings),
                DroughtTables.thirst(findings.thirst()),
                YearTables.ledgers(findings),
                YearTables.risk(findings),
                YearTables.zones(findings),
                YearTables.irrigation(findings),
                YearTables.harvestDates(findings))) {
            table.table().writeTo(results.file(table.info().path()));
            tables.add(table.info());
        }
        Optional<ResultTable> bands = BandTable.of(outcome);
        if (bands.isPresent()) {
            bands.get().table().writeTo(results.file(bands.get().info().path()));
            tables.add(bands.get().info());
        }
        text(results, DroughtJson.FILE, DroughtJson.text(outcome));
        timings.step("tables");
        DroughtCharts charts = new DroughtCharts(findings);
        ChartFiles.write(charts.all(), outcome, options, results);
        DroughtReport report = new DroughtReport(findings, options);
        HtmlReport.write(report.model(charts), results.file("report.html"));
        text(results, "thirst-table.html", report.thirstPage());
        timings.step("charts and report");
        text(results, RunManifest.FILE, manifest(outcome, timings).text());
        text(results, DataPackage.FILE, RunNotes.descriptor(outcome, results, tables));
    }

    private RunManifest manifest(StudyOutcome outcome, Timings timings) {
        Map<String, String> chosen = Map.of(
                "years", RunNotes.years(options.years()),
                "index", asked.index.id(),
                "window", asked.window == null ? "none" : asked.window.from() + " to " + asked.window.until(),
                "target", asked.target == null ? "none" : asked.target.toString(),
                "worth_kg_ha_mm", Double.toString(asked.worthKgHaMm));
        return RunNotes.manifest("drought", outcome, options, chosen, timings);
    }

    private static void text(ResultFolder results, String name, String text) throws IOException {
        Files.write(results.file(name), text.getBytes(StandardCharsets.UTF_8));
    }

    private void print(DroughtFindings findings, Path folder) {
        PrintWriter out = spec.commandLine().getOut();
        StudyOutcome outcome = findings.outcome();
        out.println(outcome.study().title() + (outcome.invented() ? "  [invented data]" : ""));
        out.println();
        new DroughtWords(findings, options.units).all().forEach(out::println);
        out.println();
        outcome.notices().forEach(notice -> out.println("note: " + notice));
        out.println("Results: " + folder.resolve("report.html")
                + ", thirst-table.html to print, tables and charts beside them");
    }
}
