package org.thirstline.io.weather;

import org.jspecify.annotations.Nullable;

/**
 * How to read a weather file.
 *
 * @param format the format, or null to recognise it by content
 * @param station the station to read from a file that holds several, or null
 * @param units units of a download that does not state them, or null to tell them by the size of the values
 * @param windHeightM height of the wind speeds [m], or null for what the file or its format says
 * @param mapping what the columns of a table of the user's own mean, or null
 */
public record ReadOptions(
        @Nullable WeatherFormat format,
        @Nullable String station,
        @Nullable UnitSystem units,
        @Nullable Double windHeightM,
        @Nullable TableMapping mapping) {

    /** Recognise the format; the file holds one station. */
    public static final ReadOptions DEFAULT = new ReadOptions(null, null);

    /** Creates options of format and station alone. */
    public ReadOptions(@Nullable WeatherFormat format, @Nullable String station) {
        this(format, station, null, null, null);
    }

    /** Returns these options with a forced format. */
    public ReadOptions withFormat(@Nullable WeatherFormat newFormat) {
        return new ReadOptions(newFormat, station, units, windHeightM, mapping);
    }

    /** Returns these options with a station. */
    public ReadOptions withStation(@Nullable String newStation) {
        return new ReadOptions(format, newStation, units, windHeightM, mapping);
    }

    /** Returns these options with stated units. */
    public ReadOptions withUnits(@Nullable UnitSystem newUnits) {
        return new ReadOptions(format, station, newUnits, windHeightM, mapping);
    }

    /** Returns these options with a stated height of the wind speeds. */
    public ReadOptions withWindHeight(@Nullable Double newWindHeightM) {
        return new ReadOptions(format, station, units, newWindHeightM, mapping);
    }

    /** Returns these options for a table of the user's own. */
    public ReadOptions withMapping(@Nullable TableMapping newMapping) {
        return new ReadOptions(format, station, units, windHeightM, newMapping);
    }
}
