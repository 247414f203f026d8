package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Where the weather comes from. Immutable and thread-safe.
 *
 * @param files one or more existing files
 * @param format name of the format, if the study says; else it is recognised
 * @param station station to take from a file with several
 * @param radiationCoefficient coefficient of radiation from the temperature range [°C^-0.5] (FAO-56 k_Rs), if the study says
 * @param missingRainLimitDays days with filled rain above which a growth year is not used
 */
public record WeatherSource(
        List<Path> files,
        Optional<String> format,
        Optional<String> station,
        OptionalDouble radiationCoefficient,
        int missingRainLimitDays) {

    /** Copies the list. */
    public WeatherSource {
        files = List.copyOf(files);
    }
}
