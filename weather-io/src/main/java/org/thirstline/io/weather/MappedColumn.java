package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * What a column of a user's own table means. Immutable.
 *
 * @param name name in the header, or its number, 1 for the first, where the table has no header
 * @param gives part of the date, the station, or the short name of a variable
 * @param unit unit of a variable, null where there is none to say
 * @param pattern pattern of a date, e.g. {@code dd.MM.yyyy}, or null for year-month-day
 * @param heightM height of a wind speed [m], or null for 2
 */
public record MappedColumn(
        String name,
        String gives,
        @Nullable String unit,
        @Nullable String pattern,
        @Nullable Double heightM) {

    static final String DATE = "date";
    static final String YEAR = "year";
    static final String MONTH = "month";
    static final String DAY = "day";
    static final String DAY_OF_YEAR = "day_of_year";

    static final String STATION = "station";

    private static final List<String> NO_VARIABLES = List.of(DATE, YEAR, MONTH, DAY, DAY_OF_YEAR, STATION);

    /** Refuses meanings and units that are not known. */
    public MappedColumn {
        RawVariable variable = variable(gives);
        if (variable == null && !NO_VARIABLES.contains(gives)) {
            throw new InputException(InputError.LINE_MALFORMED, gives, String.join(", ", meanings()));
        }
        if (variable != null && (unit == null || WeatherUnits.find(variable, unit) == null)) {
            List<String> allowed = WeatherUnits.names(variable);
            throw new InputException(
                    InputError.UNIT_NOT_UNDERSTOOD, name, variable.words(), String.join(", ", allowed), allowed.get(0));
        }
    }

    /** Returns everything that a column can give. */
    public static List<String> meanings() {
        List<String> all = new ArrayList<>(NO_VARIABLES);
        Arrays.stream(RawVariable.values()).map(RawVariable::shortName).forEach(all::add);
        return all;
    }

    private static @Nullable RawVariable variable(String gives) {
        for (RawVariable variable : RawVariable.values()) {
            if (variable.shortName().equals(gives)) {
                return variable;
            }
        }
        return null;
    }

    /** Returns the variable, or null for a part of the date or the station. */
    @Nullable
    RawVariable variable() {
        return variable(gives);
    }

    /** Returns the unit of a variable; the date has none that matters. */
    DailyUnit dailyUnit() {
        RawVariable variable = variable();
        DailyUnit found = variable == null || unit == null ? null : WeatherUnits.find(variable, unit);
        return found == null ? DailyUnit.SAME : found;
    }

    String lowerName() {
        return name.strip().toLowerCase(Locale.ROOT);
    }
}
