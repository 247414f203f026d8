package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.age.AgeOptions;
import org.thirstline.calibration.bands.ParameterDraws;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.io.plots.PlotError;
import org.thirstline.io.plots.PlotTable;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.error.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Stand age or weather: verdict, curves, power. */
@Command(
        name = "age",
        description = {
            "Say whether plot yields fell with stand age or with the weather: verdict, fitted decline, what the trial could have found and"
                    + " what would settle it; tables, charts and a report.",
            ""
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline age docs/examples/larkmoor/study.yaml",
            "  thirstline age my-trial/study.yaml --plots my-trial/plots.csv --out age-or-weather",
            "",
            "Plot data: zone, plot, planting_year, growth_year, variable, value, unit; or one column for each year."
        })
final class AgeCommand implements Callable<Integer> {

    /** Replicates behind tests, intervals and powers: a compromise of half a minute and two digits. */
    private static final int TESTS = 199;

    private static final int INTERVALS = 199;

    private static final int POWERS = 99;

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Option(names = "--plots", paramLabel = "FILE", description = "Plot yields (default: the file the study names).")
    private @Nullable Path plotFile;

    @Mixin
    private final CommonOptions options = new CommonOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Timings timings = new Timings();
        Study study = StudyReader.read(file);
        if (options.years != null) {
            study = study.withYears(options.years);
        }
        Path plots = Optional.ofNullable(plotFile)
                .or(study::plots)
                .orElseThrow(() -> new InputException(PlotError.NO_PLOTS, file));
        PlotTable table = PlotTable.read(plots, study);
        timings.step("study and plots");
        WeatherRecord weather = StudyWeather.read(study);
        StudyOutcome outcome = StudySimulation.run(study, weather, options.threads);
        timings.step("simulation");
        Progress progress = new Progress(spec.commandLine().getErr(), options.quiet);
        List<CropParameters> crops = ParameterDraws.ofPosterior(study.crop())
                .map(ParameterDraws::crops)
                .orElse(List.of());
        AgeStudy answer = AgeStudy.of(study, weather, table, crops, tests(options.seed), progress::show);
        progress.clear();
        timings.step("tests");
        Path folder = options.folderFor(file, "age");
        try (ResultFolder results = ResultFolder.open(folder)) {
            new AgeResults(outcome, table, plots, answer, options, timings).writeTo(results);
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            new AgeWording(answer, options.units).print(study.title(), outcome.invented() || table.invented(), out);
            out.println();
            out.println("Results: " + folder.resolve("report.html") + " (and tables and charts beside it)");
        }
        return 0;
    }

    /** Returns how much is drawn at random for tests, intervals and powers. */
    static AgeOptions tests(long seed) {
        return AgeOptions.usual().withSeed(seed).withReplicates(TESTS, INTERVALS, POWERS);
    }

    /** One line on a terminal that says what is being done; nothing in a pipe. */
    static final class Progress {

        private final PrintWriter err;
        private final boolean shown;

        Progress(PrintWriter err, boolean quiet) {
            this.err = err;
            shown = !quiet && System.console() != null;
        }

        void show(String text) {
            if (shown) {
                err.printf("\r%-70s", text + " ...");
                err.flush();
            }
        }

        void clear() {
            if (shown) {
                err.printf("\r%-70s\r", "");
                err.flush();
            }
        }
    }
}
