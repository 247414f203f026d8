package org.thirstline.calibration.study;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.SuspectRule;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.study.SourceReading;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.WeatherSource;
import org.thirstline.io.weather.LayeredWeather;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.WeatherFiles;
import org.thirstline.io.weather.WeatherFormat;
import org.thirstline.io.weather.WeatherLayer;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.error.InputException;

/** Reads the weather a study names. Stateless and thread-safe. */
public final class StudyWeather {

    private StudyWeather() {}

    /**
     * Reads, checks and completes the weather of a study.
     *
     * @param study the study; its site stands above what the files say
     * @throws InputException if a file cannot be used
     */
    public static WeatherRecord read(Study study) {
        return read(study.weather(), SiteInfo.of(study.site()));
    }

    /**
     * Reads, checks and completes weather.
     *
     * @param source where it comes from
     * @param place what is known about the place; it stands above what the files say
     * @throws InputException if a file cannot be used or the place is not known
     */
    public static WeatherRecord read(WeatherSource source, SiteInfo place) {
        List<WeatherLayer> layers =
                source.sources().stream().map(StudyWeather::layer).toList();
        RawWeather second =
                source.secondStation().map(station -> layer(station).weather()).orElse(null);
        AssemblySettings settings = AssemblySettings.DEFAULT
                .withSuspectRule(SuspectRule.valueOf(source.suspect().toUpperCase(Locale.ROOT)))
                .withRainSumsSpread(source.spreadRainSums());
        if (source.radiationCoefficient().isPresent()) {
            settings = settings.withSolarTemperatureCoefficient(
                    source.radiationCoefficient().getAsDouble());
        }
        return WeatherAssembly.assemble(LayeredWeather.of(layers), second, place, settings);
    }

    private static WeatherLayer layer(SourceReading source) {
        ReadOptions options = source.options()
                .withFormat(source.format().map(StudyWeather::format).orElse(null));
        RawWeather weather = WeatherFiles.join(WeatherReaders.readAll(source.files(), options));
        Path name = source.files().get(0).getFileName();
        return new WeatherLayer(String.valueOf(name), weather, source.variables());
    }

    /**
     * Returns the format a user names.
     *
     * @param id name of the format
     * @throws InputException if there is none of that name
     */
    public static WeatherFormat format(String id) {
        Optional<WeatherFormat> format = Arrays.stream(WeatherFormat.values())
                .filter(candidate -> candidate.id().equals(id))
                .findFirst();
        return format.orElseThrow(() -> new InputException(
                CalibrationError.FORMAT_UNKNOWN,
                id,
                String.join(
                        ", ",
                        Arrays.stream(WeatherFormat.values())
                                .map(WeatherFormat::id)
                                .toList())));
    }
}
