package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.CalibrationSettings;
import org.thirstline.calibration.calibrate.CalibrationSettings.Unclear;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.calibrate.HeldOutCalibration;
import org.thirstline.calibration.calibrate.LeastSquaresCalibration;
import org.thirstline.calibration.calibrate.PosteriorCalibration;
import org.thirstline.calibration.calibrate.PosteriorCalibration.Sampled;
import org.thirstline.calibration.problem.PlotData;
import org.thirstline.calibration.problem.ProblemSetup;
import org.thirstline.calibration.problem.StudySource;
import org.thirstline.io.plots.PlotError;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.model.error.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Fits crop and soil parameters to plot data. */
@Command(
        name = "calibrate",
        description = {
            "Fit crop and soil parameters to plot data: best values with their errors, what the data can tell and what not, skill on sites"
                    + " and years held out, and on request the posterior. Writes a crop file that 'run' takes.",
            ""
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline calibrate docs/examples/larkmoor/study.yaml",
            "  thirstline calibrate my-trial/study.yaml --posterior 4000 --out fitted",
            "  thirstline calibrate my-trial/study.yaml --posterior 4000 --out fitted --resume",
            "",
            "What is fitted, errors and further sites stand under 'calibration' in the study file; see docs/calibration.md."
        })
final class CalibrateCommand implements Callable<Integer> {

    private static final String FIT = "fit and profiles";
    private static final String POSTERIOR = "posterior";
    private static final String HELD_OUT = "held out";
    private static final Set<String> CALCULATIONS = Set.of(FIT, POSTERIOR, HELD_OUT);

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Option(names = "--plots", paramLabel = "FILE", description = "Plot data (default: the file the study names).")
    private @Nullable Path plotFile;

    @Option(
            names = "--starts",
            paramLabel = "N",
            description = "Searches, spread over the bounds (default: ${DEFAULT-VALUE}).")
    private int starts = 32;

    @Option(names = "--global", description = "Let a global search (differential evolution) find the starts.")
    private boolean global;

    @Option(
            names = "--posterior",
            paramLabel = "DRAWS",
            arity = "0..1",
            fallbackValue = "2000",
            description = "Sample the posterior and keep so many draws (2000 if no number is given).")
    private int draws;

    @Option(names = "--resume", description = "Go on with a sampling that was interrupted; the answer is the same.")
    private boolean resume;

    @Option(
            names = "--unclear",
            paramLabel = "refuse|fix|keep",
            description =
                    "What to do with parameters that the data cannot tell (default: ${DEFAULT-VALUE}; those of the usual set are"
                            + " fixed).")
    private Unclear unclear = Unclear.REFUSE;

    @Option(names = "--no-skill", description = "Do not hold out sites and years.")
    private boolean noSkill;

    @Option(
            names = "--date",
            paramLabel = "DATE",
            description = "Date to write into the crop file (default: today, UTC).")
    private LocalDate date = LocalDate.now(ZoneOffset.UTC);

    @Mixin
    private final CommonOptions options = new CommonOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        if (resume && draws == 0) {
            throw new ParameterException(
                    spec.commandLine(), "--resume goes on with a sampling: give --posterior too, as before");
        }
        PrintWriter out = spec.commandLine().getOut();
        Timings timings = new Timings();
        CalibrationSettings settings = settings();
        List<StudySource> sources = sources();
        ProblemSetup setup = ProblemSetup.of(PlotData.of(sources));
        timings.step("studies, weather and plots");
        Path folder = options.folderFor(file, "calibration");
        SamplerFile saved = new SamplerFile(folder, resume);
        if (saved.misses()) {
            spec.commandLine()
                    .getErr()
                    .println("No saved sampling in " + folder + ": this one starts from the beginning.");
        }
        CalibrationOutcome outcome = calibrate(setup, settings, saved, timings);
        try (ResultFolder results = ResultFolder.open(folder)) {
            new CalibrationResults(outcome, settings, date, options, timings).writeTo(results);
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            new CalibrationWording(outcome).print(out);
            out.println();
            out.println(pace(setup, timings));
            out.println("Crop file for 'run': " + folder.resolve(CalibratedCrop.FILE));
            out.println("Results: " + folder.resolve("report.html") + " (and tables and charts beside it)");
        }
        return 0;
    }

    /** Says how much was simulated; how fast depends on the machine. */
    private static String pace(ProblemSetup setup, Timings timings) {
        long evaluations = setup.problem().evaluations();
        double seconds = timings.seconds().entrySet().stream()
                .filter(step -> CALCULATIONS.contains(step.getKey()))
                .mapToDouble(Map.Entry::getValue)
                .sum();
        return String.format(
                Locale.ROOT,
                "%,d points simulated in %.1f s (%,.0f a second).",
                evaluations,
                seconds,
                evaluations / Math.max(1e-3, seconds));
    }

    private CalibrationSettings settings() {
        return new CalibrationSettings(
                starts, options.seed, Math.max(1, options.threads), global, unclear, draws, !noSkill);
    }

    private List<StudySource> sources() {
        List<StudySource> sources = new ArrayList<>();
        Study first = StudyReader.read(file);
        sources.add(source(first, Optional.ofNullable(plotFile)));
        for (Path other : first.calibration().withStudies()) {
            sources.add(source(StudyReader.read(other), Optional.empty()));
        }
        return sources;
    }

    private StudySource source(Study read, Optional<Path> plots) {
        Study study = options.years().map(read::withYears).orElse(read);
        Path path = plots.or(study::plots).orElseThrow(() -> new InputException(PlotError.NO_PLOTS, study.file()));
        return StudySource.read(study, path);
    }

    private CalibrationOutcome calibrate(
            ProblemSetup setup, CalibrationSettings settings, SamplerFile saved, Timings timings) {
        ProgressLine line = new ProgressLine(spec.commandLine().getErr(), options.quiet);
        CalibrationFit fit = new LeastSquaresCalibration(settings, line::show).fit(setup.problem(), setup.chosen());
        timings.step(FIT);
        Optional<Sampled> posterior = Optional.empty();
        if (draws > 0) {
            posterior = Optional.of(PosteriorCalibration.sample(fit, settings, saved, (done, total, state) -> {
                line.bar("Sampling the posterior", done, total);
                return saved.isDue();
            }));
            timings.step(POSTERIOR);
        }
        List<HeldOut> skill = List.of();
        if (!noSkill) {
            line.show("Holding out sites, plots and years");
            skill = new HeldOutCalibration(fit, settings.threads()).all();
            timings.step(HELD_OUT);
        }
        line.clear();
        return CalibrationOutcome.of(setup.data(), fit, posterior, skill);
    }

    static String word(Unclear unclear) {
        return unclear.name().toLowerCase(Locale.ROOT);
    }
}
