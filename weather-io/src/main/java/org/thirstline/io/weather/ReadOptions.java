package org.thirstline.io.weather;

import org.jspecify.annotations.Nullable;

/**
 * How to read a weather file.
 *
 * @param format the format, or null to recognise it by content
 * @param station the station to read from a file that holds several, or null
 */
public record ReadOptions(
        @Nullable WeatherFormat format, @Nullable String station) {

    /** Recognise the format; the file holds one station. */
    public static final ReadOptions DEFAULT = new ReadOptions(null, null);

    /** Returns these options with a forced format. */
    public ReadOptions withFormat(@Nullable WeatherFormat newFormat) {
        return new ReadOptions(newFormat, station);
    }

    /** Returns these options with a station. */
    public ReadOptions withStation(@Nullable String newStation) {
        return new ReadOptions(format, newStation);
    }
}
