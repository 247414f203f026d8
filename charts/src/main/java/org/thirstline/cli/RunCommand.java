package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.io.tables.ResultFolder;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Simulates a study: tables, charts, report. */
@Command(
        name = "run",
        description =
                "Simulate every year of a study and write its tables, charts and a self-contained HTML report. With a crop file that"
                        + " 'calibrate' wrote, also bands: what the doubt in the fitted parameters does to each year's yield.",
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline run my-trial/study.yaml",
            "  thirstline run my-trial/study.yaml --years 2005-2020 --units us --out results-2020"
        })
final class RunCommand implements Callable<Integer> {

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Mixin
    private final CommonOptions options = new CommonOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Timings timings = new Timings();
        StudyOutcome outcome = StudyRuns.simulateWithBands(file, options.years(), options, timings);
        if (!options.quiet) {
            RunSummary.print(outcome, options.units, out);
            out.println();
            out.flush();
        }
        Path folder = options.folderFor(file, "results");
        try (ResultFolder results = ResultFolder.open(folder)) {
            new RunResults(outcome, options, timings).writeTo(results);
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            out.println("Results: " + folder.resolve("report.html") + " (and tables and charts beside it)");
        }
        return 0;
    }
}
