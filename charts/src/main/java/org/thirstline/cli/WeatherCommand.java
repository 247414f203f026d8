package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.charts.UnitSystem;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.text.YearSpan;
import org.thirstline.io.weather.WeatherRecord;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads weather files, reports what is missing or doubtful, writes one clean table, and shows the climate at a glance. */
@Command(
        name = "weather",
        description = {
            "Read any supported weather file, report gaps and suspect values, write one clean daily table with reference "
                    + "evapotranspiration, and show the climate at a glance.",
            "Several files are joined to one series. A study file in their place reads the weather of the study.",
            ""
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline weather station.dly --latitude 44.9 --elevation 266",
            "  thirstline weather station.dly ghcnd-stations.txt --take rain=gauge.csv --take solar=power.csv",
            "  thirstline weather 2012.csv.gz --station USW00014922 --latitude 44.9 --elevation 266 --suspect blank",
            "  thirstline weather my-trial/study.yaml"
        })
final class WeatherCommand implements Callable<Integer> {

    /** A study in JSON names these; a weather document does not. */
    private static final List<String> STUDY_WORDS = List.of("\"weather\"", "\"stand\"", "\"crop\"");

    private static final int PEEKED_BYTES = 1 << 16;

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description = "Weather files, the format recognised by content; or one study file.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private List<Path> files;

    @Mixin
    private final WeatherInput input = new WeatherInput();

    @Option(
            names = "--normal",
            paramLabel = "FIRST-LAST",
            converter = CommonOptions.Years.class,
            description = "Years of the climate normals, e.g. 1991-2020 (default: all).")
    private @Nullable YearSpan normal;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for the results (default: a folder beside the first file).")
    private @Nullable Path out;

    @Option(
            names = "--units",
            paramLabel = "si|us",
            defaultValue = "si",
            description = "Units of charts and report; tables are always SI (default: ${DEFAULT-VALUE}).")
    private UnitSystem units = UnitSystem.SI;

    @Option(names = "--pdf", description = "Write every chart as PDF too.")
    private boolean pdf;

    @Option(names = "--quiet", description = "Say nothing but errors.")
    private boolean quiet;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        Timings timings = new Timings();
        WeatherRecord record;
        List<Path> read = new ArrayList<>(files);
        if (isStudy()) {
            Study study = StudyReader.read(files.get(0));
            record = StudyWeather.read(study);
            read.addAll(study.weather().files());
        } else {
            record = input.read(files);
            read.addAll(input.otherFiles());
        }
        timings.step("weather");
        Path first = files.get(0).toAbsolutePath();
        Path folder = out == null ? first.resolveSibling(WeatherInput.stem(first) + "-weather") : out;
        WeatherClimate climate = WeatherClimate.of(record, normal, units);
        try (ResultFolder results = ResultFolder.open(folder)) {
            new WeatherResults(record, climate, read, pdf, timings).writeTo(results, given());
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        if (!quiet) {
            PrintWriter terminal = spec.commandLine().getOut();
            WeatherSummary.print(record, climate.findings(), terminal);
            terminal.println();
            terminal.println(
                    "Results: " + folder.resolve("report.html") + " (weather.csv, other tables and charts beside it)");
        }
        return 0;
    }

    private boolean isStudy() {
        boolean study = files.stream().anyMatch(WeatherCommand::isStudy);
        if (study && files.size() > 1) {
            throw new ParameterException(
                    spec.commandLine(), "A study stands alone; it names its weather files itself.");
        }
        if (study && input.isGiven()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "How to read the weather of a study stands in its weather section; leave the options out.");
        }
        return study;
    }

    private static boolean isStudy(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".yaml") || name.endsWith(".yml")) {
            return true;
        }
        if (!name.endsWith(".json") || !Files.isRegularFile(file)) {
            return false;
        }
        try (var in = Files.newInputStream(file)) {
            String start = new String(in.readNBytes(PEEKED_BYTES), StandardCharsets.UTF_8);
            return STUDY_WORDS.stream().allMatch(start::contains);
        } catch (IOException unreadable) {
            return false;
        }
    }

    /** The options as they were given, for whoever repeats the run. */
    private List<String> given() {
        return spec.commandLine().getParseResult().matchedOptions().stream()
                .filter(option -> !option.names()[0].equals("--out") && !option.names()[0].equals("--quiet"))
                .map(option -> option.names()[0] + "=" + String.join(" ", option.originalStringValues()))
                .sorted()
                .toList();
    }
}
