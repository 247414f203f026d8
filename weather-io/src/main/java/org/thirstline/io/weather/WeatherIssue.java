package org.thirstline.io.weather;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * Something a reader of results should know about weather values. Immutable.
 *
 * @param variable which variable, or null if it is about whole days
 * @param first first day
 * @param last last day, the first itself for a single value
 * @param kind what is the matter
 * @param found the value as found, in our unit; empty where there was none
 * @param action what was done about it
 */
public record WeatherIssue(
        @Nullable RawVariable variable, LocalDate first, LocalDate last, IssueKind kind, String found, String action) {

    /** Creates an issue of a single day. */
    static WeatherIssue on(LocalDate date, RawVariable variable, IssueKind kind, String found, String action) {
        return new WeatherIssue(variable, date, date, kind, found, action);
    }

    /** Returns the number of days. */
    public int days() {
        return (int) ChronoUnit.DAYS.between(first, last) + 1;
    }

    /** Returns the name of the variable's column, or {@code all} for whole days. */
    public String variableName() {
        return variable == null ? "all" : variable.column();
    }
}
