package org.thirstline.io.study;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * One line of a table of cells, as written. Immutable and thread-safe.
 *
 * @param file file name of the table, for messages
 * @param line its line
 * @param name name of the cell
 * @param fields filled fields by column
 */
public record CellRow(String file, int line, String name, Map<String, String> fields) {

    private static final List<String> OF_WEATHER =
            List.of("weather", "format", "station", "latitude", "latitude_deg", "elevation", "elevation_m");

    /** Keeps the order of the fields. */
    public CellRow {
        fields = Collections.unmodifiableMap(new LinkedHashMap<>(fields));
    }

    /** Returns a text that cells with the same weather in the same place share. */
    public String weatherKey() {
        return OF_WEATHER.stream()
                .map(column -> fields.getOrDefault(column, ""))
                .collect(Collectors.joining("\n"));
    }
}
