package org.thirstline.io.study;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.ReadOptions;

/**
 * One source of weather and how to read it. Immutable and thread-safe.
 *
 * @param files one or more existing files
 * @param format name of the format, if the study says; else it is recognised
 * @param options how to read them, save for the format
 * @param variables variables to take; all that are there if empty
 */
public record SourceReading(
        List<Path> files, Optional<String> format, ReadOptions options, List<RawVariable> variables) {

    /** Copies the lists. */
    public SourceReading {
        files = List.copyOf(files);
        variables = List.copyOf(variables);
    }
}
