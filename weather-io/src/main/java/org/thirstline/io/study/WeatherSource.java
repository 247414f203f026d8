package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Where the weather comes from. Immutable and thread-safe.
 *
 * @param sources one or more, the one with precedence first
 * @param secondStation another station to fill gaps from, if the study names one
 * @param radiationCoefficient coefficient of radiation from the temperature range [°C^-0.5] (FAO-56 k_Rs), if the study says
 * @param missingRainLimitDays days with filled rain above which a growth year is not used
 * @param suspect what happens to suspect values: keep, blank or stop
 * @param spreadRainSums whether rain of several days is spread over them instead of filled as a gap
 */
public record WeatherSource(
        List<SourceReading> sources,
        Optional<SourceReading> secondStation,
        OptionalDouble radiationCoefficient,
        int missingRainLimitDays,
        String suspect,
        boolean spreadRainSums) {

    /** Copies the list. */
    public WeatherSource {
        sources = List.copyOf(sources);
    }

    /** Returns every file of every source, and of the second station. */
    public List<Path> files() {
        return Stream.concat(sources.stream(), secondStation.stream())
                .flatMap(source -> source.files().stream())
                .toList();
    }
}
