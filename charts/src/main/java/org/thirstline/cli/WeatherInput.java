package org.thirstline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.SuspectRule;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.weather.LayeredWeather;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.UnitSystem;
import org.thirstline.io.weather.WeatherFiles;
import org.thirstline.io.weather.WeatherLayer;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;
import picocli.CommandLine.Option;

/** Options that say how weather files are to be read, checked and completed. */
final class WeatherInput {

    /** What happens to sums of rain over several days. */
    enum RainSums {
        FILL,
        SPREAD
    }

    @Option(names = "--name", paramLabel = "TEXT", description = "Name of the place (default: what the file says).")
    private @Nullable String name;

    @Option(
            names = "--latitude",
            paramLabel = "DEG",
            description = "Latitude, north positive; needed where the file does not say.")
    private @Nullable Double latitudeDeg;

    @Option(
            names = "--elevation",
            paramLabel = "M",
            description = "Elevation in metres; needed where the file does not say.")
    private @Nullable Double elevationM;

    @Option(
            names = "--format",
            paramLabel = "NAME",
            description = "Format of the files (default: recognised by content).")
    private @Nullable String format;

    @Option(names = "--station", paramLabel = "ID", description = "Station to take from a file that holds several.")
    private @Nullable String station;

    @Option(
            names = "--file-units",
            paramLabel = "metric|us",
            description = "Units of a download that does not state them (default: told by the size of its values).")
    private @Nullable UnitSystem fileUnits;

    @Option(
            names = "--wind-height",
            paramLabel = "M",
            description = "Height of the wind speeds in metres (default: what the file or its format says).")
    private @Nullable Double windHeightM;

    @Option(
            names = "--take",
            paramLabel = "VARIABLES=FILE",
            converter = TakenVariables.Reader.class,
            description =
                    "Take these variables from another file first, e.g. rain=gauge.csv or solar,wind=power.csv; may be given "
                            + "several times, the first has precedence.")
    private List<TakenVariables> taken = new ArrayList<>();

    @Option(
            names = "--second-station",
            paramLabel = "FILE",
            description =
                    "Another station that fills gaps, brought to the level of this one; several files make up one.")
    private List<Path> second = new ArrayList<>();

    @Option(
            names = "--suspect",
            paramLabel = "keep|blank|stop",
            description = "What happens to values that are hard to believe (default: keep).")
    private @Nullable SuspectRule suspect;

    @Option(
            names = "--rain-sums",
            paramLabel = "fill|spread",
            description =
                    "What happens to rain of several days in one sum: filled like a gap, or spread evenly (default: fill).")
    private @Nullable RainSums rainSums;

    @Option(
            names = "--radiation-coefficient",
            paramLabel = "K",
            description =
                    "Coefficient of radiation from the temperature range, 0.16 inland, 0.19 at coasts (FAO-56 eq. 50; "
                            + "default: fitted where a year of radiation was measured, else 0.16).")
    private @Nullable Double radiationCoefficient;

    /** Returns whether any of these options was given. */
    boolean isGiven() {
        return name != null
                || latitudeDeg != null
                || elevationM != null
                || format != null
                || station != null
                || fileUnits != null
                || windHeightM != null
                || !taken.isEmpty()
                || !second.isEmpty()
                || suspect != null
                || rainSums != null
                || radiationCoefficient != null;
    }

    WeatherRecord read(List<Path> files) {
        ReadOptions options = new ReadOptions(
                format == null ? null : StudyWeather.format(format.toLowerCase(Locale.ROOT)),
                station,
                fileUnits,
                windHeightM,
                null);
        List<WeatherLayer> layers = new ArrayList<>();
        for (TakenVariables from : taken) {
            RawWeather weather = WeatherReaders.read(from.file(), ReadOptions.DEFAULT);
            layers.add(new WeatherLayer(fileName(from.file()), weather, from.variables()));
        }
        RawWeather own = WeatherFiles.join(WeatherReaders.readAll(files, options));
        layers.add(new WeatherLayer(fileName(files.get(0)), own, List.of()));
        RawWeather filler =
                second.isEmpty() ? null : WeatherFiles.join(WeatherReaders.readAll(second, ReadOptions.DEFAULT));
        return WeatherAssembly.assemble(LayeredWeather.of(layers), filler, place(own, files), settings());
    }

    /** The place of the files themselves stands above that of files from which only some variables are taken. */
    private SiteInfo place(RawWeather own, List<Path> files) {
        SiteInfo given = new SiteInfo(name, latitudeDeg, null, elevationM).or(own.site());
        return given.or(new SiteInfo(stem(files.get(0)), null, null, null));
    }

    private AssemblySettings settings() {
        AssemblySettings settings = AssemblySettings.DEFAULT.withRainRequired(false);
        if (suspect != null) {
            settings = settings.withSuspectRule(suspect);
        }
        if (radiationCoefficient != null) {
            settings = settings.withSolarTemperatureCoefficient(radiationCoefficient);
        }
        return settings.withRainSumsSpread(rainSums == RainSums.SPREAD);
    }

    /** Returns every file that is read beside those of the place. */
    List<Path> otherFiles() {
        List<Path> others = new ArrayList<>();
        taken.forEach(from -> others.add(from.file()));
        others.addAll(second);
        return others;
    }

    static String stem(Path file) {
        String plain = fileName(file).replaceFirst("(\\.(csv|txt|json|dly))?\\.(gz|zip)$", "");
        return plain.replaceFirst("\\.[^.]*$", "");
    }

    private static String fileName(Path file) {
        Path last = file.getFileName();
        return last == null ? "weather" : last.toString();
    }
}
