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
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.trial.AgeStudy;
import org.thirstline.charts.slides.SlideWriter;
import org.thirstline.io.plots.PlotTable;
import org.thirstline.io.study.Study;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.tables.RunManifest;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Turns a study into slides for a talk. */
@Command(
        name = "slides",
        description = {
            "Write slides ready to show (.pptx): the question, the drought line, dry against wet, stand age, the yield ledger, method and"
                    + " caveats; vector charts with text alternatives, the numbers in the speaker notes.",
            ""
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline slides my-trial/study.yaml",
            "  thirstline slides my-trial/study.yaml --template our-talks.pptx --zone 'deep loam' --units us",
            "",
            "If the study names plot yields, the slide on stand age is about them, as 'thirstline age' has it, which takes half a"
                    + " minute (longer with a calibrated crop); else it shows the simulated stand. With a crop file that 'calibrate'"
                    + " wrote, the points of the drought line have bands, and the notes say what the doubt in the fitted parameters"
                    + " does to the findings. The slides are in slides.pptx of the results folder."
        })
final class SlidesCommand implements Callable<Integer> {

    private static final String FILE = "slides.pptx";

    @Parameters(paramLabel = "STUDY", description = "Study file, YAML or JSON.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private Path file;

    @Option(
            names = "--template",
            paramLabel = "FILE.pptx",
            description =
                    "Deck whose look and layouts to use; its own slides are left out (default: a plain deck of ours).")
    private @Nullable Path template;

    @Option(
            names = "--zone",
            paramLabel = "NAME",
            description = "Zone to show; may be given again for more of them (default: the first of the study).")
    private final List<String> zones = new ArrayList<>();

    @Mixin
    private final CommonOptions options = new CommonOptions();

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        Timings timings = new Timings();
        StudyOutcome outcome = StudyRuns.simulateWithBands(file, options.years(), options, timings);
        List<ZoneOutcome> shown = shown(outcome);
        Optional<PlotAnswer> plots = plots(outcome);
        timings.step("stand age");
        Path folder = options.folderFor(file, "slides");
        SlideContent content = new SlideContent(outcome, shown, plots, options);
        byte[] deck = SlideWriter.bytes(outcome.study().title(), content.slides(), template);
        timings.step("slides");
        try (ResultFolder results = ResultFolder.open(folder)) {
            Files.write(results.file(FILE), deck);
            if (options.pdf || options.png2x || !options.chartSizes.isEmpty()) {
                ChartFiles.write(content.charts(), outcome, options, results);
            }
            Files.write(
                    results.file(RunManifest.FILE),
                    manifest(outcome, timings).text().getBytes(StandardCharsets.UTF_8));
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!options.quiet) {
            PrintWriter out = spec.commandLine().getOut();
            out.println(outcome.study().title() + (outcome.invented() ? "  [invented data]" : ""));
            outcome.notices().forEach(notice -> out.println("note: " + notice));
            out.println(
                    "Slides: " + folder.resolve(FILE) + " (" + content.slides().size() + ")");
        }
        return 0;
    }

    private List<ZoneOutcome> shown(StudyOutcome outcome) {
        if (zones.isEmpty()) {
            return List.of(outcome.zones().get(0));
        }
        List<ZoneOutcome> shown = new ArrayList<>();
        for (String name : zones) {
            shown.add(outcome.zones().stream()
                    .filter(zone -> zone.zone().name().equalsIgnoreCase(name))
                    .findFirst()
                    .orElseThrow(() -> new ParameterException(
                            spec.commandLine(),
                            "--zone '" + name + "' is not in the study; its zones are: "
                                    + outcome.zones().stream()
                                            .map(zone -> zone.zone().name())
                                            .collect(Collectors.joining(", ")))));
        }
        return shown.stream().distinct().toList();
    }

    /** Answers age or weather from the plots that the study names. */
    private Optional<PlotAnswer> plots(StudyOutcome outcome) {
        Study study = outcome.study();
        if (study.plots().isEmpty()) {
            return Optional.empty();
        }
        PlotTable table = PlotTable.read(study.plots().get(), study);
        AgeCommand.Progress progress =
                new AgeCommand.Progress(spec.commandLine().getErr(), options.quiet);
        AgeStudy answer = AgeStudy.of(study, outcome.weather(), table, AgeCommand.tests(options.seed), progress::show);
        progress.clear();
        return Optional.of(new PlotAnswer(answer, table.invented()));
    }

    private RunManifest manifest(StudyOutcome outcome, Timings timings) {
        Map<String, String> chosen = Map.of(
                "years", RunNotes.years(options.years()),
                "zones", zones.isEmpty() ? "first" : String.join(", ", zones),
                "template", template == null ? "none" : String.valueOf(template.getFileName()));
        return RunNotes.manifest("slides", outcome, options, chosen, timings);
    }

    /**
     * What the plots say.
     *
     * @param study stand age or weather
     * @param invented whether the plots are made up
     */
    record PlotAnswer(AgeStudy study, boolean invented) {}
}
