package org.thirstline.io.weather;

/**
 * How much of a variable came from one of several sources. Immutable.
 *
 * @param variable which variable
 * @param source name of the source
 * @param year calendar year
 * @param days number of values
 * @param firstEpochDay day since 1970 of the first of them
 * @param lastEpochDay day since 1970 of the last of them
 */
public record SourceShare(
        RawVariable variable, String source, int year, int days, long firstEpochDay, long lastEpochDay) {

    SourceShare andDay(long epochDay) {
        return new SourceShare(variable, source, year, days + 1, firstEpochDay, epochDay);
    }
}
