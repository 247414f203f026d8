package org.thirstline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.quality.WeatherReport;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.io.weather.WeatherTable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads weather files, reports what is missing or doubtful, writes one clean table. */
@Command(
        name = "weather",
        description = {
            "Read any supported weather file, report gaps and suspect values, and write one clean daily table with reference "
                    + "evapotranspiration.",
            "Several files are joined: the first has precedence."
        },
        mixinStandardHelpOptions = true,
        footer = {
            "",
            "Examples:",
            "  thirstline weather station.dly --latitude 44.9 --elevation 266",
            "  thirstline weather daymet.csv --out clean"
        })
final class WeatherCommand implements Callable<Integer> {

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description = "Weather files; the format is recognised by content.")
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private List<Path> files;

    @Option(
            names = "--latitude",
            paramLabel = "DEG",
            description = "Latitude, north positive; needed where the file does not say.")
    @Nullable
    private Double latitudeDeg;

    @Option(
            names = "--elevation",
            paramLabel = "M",
            description = "Elevation in metres; needed where the file does not say.")
    @Nullable
    private Double elevationM;

    @Option(
            names = "--format",
            paramLabel = "NAME",
            description = "Format of the files, if it is not to be recognised.")
    @Nullable
    private String format;

    @Option(names = "--station", paramLabel = "ID", description = "Station to take from a file that holds several.")
    @Nullable
    private String station;

    @Option(
            names = "--radiation-coefficient",
            paramLabel = "K",
            description =
                    "Coefficient of radiation from the temperature range, 0.16 inland, 0.19 at coasts (FAO-56 eq. 50; "
                            + "default: fitted where a year of radiation was measured, else 0.16).")
    @Nullable
    private Double radiationCoefficient;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for weather.csv and weather-report.csv (default: beside the first file).")
    @Nullable
    private Path out;

    @Option(names = "--quiet", description = "Say nothing but errors.")
    private boolean quiet;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line parser before anything runs
    private CommandLine.Model.CommandSpec spec;

    @Override
    public Integer call() {
        ReadOptions options = new ReadOptions(format == null ? null : StudyWeather.format(format), station);
        List<RawWeather> read = WeatherReaders.readAll(files, options);
        AssemblySettings settings = AssemblySettings.DEFAULT.withRainRequired(false);
        if (radiationCoefficient != null) {
            settings = settings.withSolarTemperatureCoefficient(radiationCoefficient);
        }
        WeatherRecord record =
                WeatherAssembly.assemble(read, new SiteInfo(null, latitudeDeg, null, elevationM), settings);
        Path folder = out == null ? files.get(0).resolveSibling(stem(files.get(0)) + "-weather") : out;
        write(record, folder);
        if (!quiet) {
            PrintWriter terminal = spec.commandLine().getOut();
            WeatherSummary.print(record, terminal);
            terminal.println();
            terminal.println("wrote " + folder.resolve("weather.csv"));
            terminal.println("wrote " + folder.resolve("weather-report.csv"));
        }
        return 0;
    }

    private static void write(WeatherRecord record, Path folder) {
        StringBuilder table = new StringBuilder();
        StringBuilder report = new StringBuilder();
        try (ResultFolder results = ResultFolder.open(folder)) {
            WeatherTable.write(record, table);
            WeatherReport.write(record, report);
            Files.write(results.file("weather.csv"), table.toString().getBytes(StandardCharsets.UTF_8));
            Files.write(results.file("weather-report.csv"), report.toString().getBytes(StandardCharsets.UTF_8));
            results.publish();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static String stem(Path file) {
        Path name = file.getFileName();
        return name == null ? "weather" : name.toString().replaceFirst("\\.[^.]*$", "");
    }
}
