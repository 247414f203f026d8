package org.thirstline.model.weather;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * Daily weather without gaps: one value for every variable and day, each with its {@link Origin}. Columns, not rows, so that the
 * day loop reads plain arrays. Immutable and thread-safe.
 */
public final class WeatherSeries {

    private static final WeatherVariable[] NEVER_NEGATIVE = {
        WeatherVariable.RAIN, WeatherVariable.SOLAR, WeatherVariable.WIND, WeatherVariable.VAPOUR_PRESSURE
    };

    private final LocalDate start;
    private final int days;
    private final double[][] columns;
    private final byte[][] origins;

    private WeatherSeries(LocalDate start, int days, double[][] columns, byte[][] origins) {
        this.start = start;
        this.days = days;
        this.columns = columns;
        this.origins = origins;
    }

    /**
     * Creates a series in which every value counts as measured.
     *
     * @param start date of the first day
     * @param columns a column for every variable, all of the same length; copied
     * @return the series
     * @throws InputException if a column is absent, has another length, or holds a value that is not finite
     */
    public static WeatherSeries measured(LocalDate start, Map<WeatherVariable, double[]> columns) {
        return of(start, columns, new EnumMap<>(WeatherVariable.class));
    }

    /**
     * Creates a series.
     *
     * @param start date of the first day
     * @param columns a column for every variable, all of the same length; copied
     * @param origins the origin of each value; a variable that is not in the map counts as measured throughout
     * @return the series
     * @throws InputException if a column is absent, has another length, or holds a value that is not finite or cannot be
     */
    public static WeatherSeries of(
            LocalDate start, Map<WeatherVariable, double[]> columns, Map<WeatherVariable, Origin[]> origins) {
        WeatherVariable[] variables = WeatherVariable.values();
        double[][] copied = new double[variables.length][];
        byte[][] codes = new byte[variables.length][];
        int days = -1;
        for (WeatherVariable variable : variables) {
            double[] column = columns.get(variable);
            if (column == null) {
                throw new InputException(ModelError.VALUE_MISSING, "weather column " + variable.column());
            }
            days = days < 0 ? column.length : days;
            if (column.length != days) {
                throw new InputException(ModelError.COLUMN_LENGTH, variable.column(), column.length, days);
            }
            copied[variable.ordinal()] = column.clone();
            codes[variable.ordinal()] = originCodes(variable, origins.get(variable), days);
        }
        requireFinite(start, copied, variables);
        requireNotNegative(start, copied);
        return new WeatherSeries(start, days, copied, codes);
    }

    private static byte[] originCodes(WeatherVariable variable, Origin @Nullable [] origins, int days) {
        byte[] codes = new byte[days];
        if (origins == null) {
            return codes;
        }
        if (origins.length != days) {
            throw new InputException(ModelError.COLUMN_LENGTH, "origin of " + variable.column(), origins.length, days);
        }
        for (int day = 0; day < days; day++) {
            codes[day] = (byte) origins[day].ordinal();
        }
        return codes;
    }

    private static void requireFinite(LocalDate start, double[][] columns, WeatherVariable[] variables) {
        for (WeatherVariable variable : variables) {
            double[] column = columns[variable.ordinal()];
            for (int day = 0; day < column.length; day++) {
                if (!Double.isFinite(column[day])) {
                    throw new InputException(
                            ModelError.WEATHER_NOT_FINITE, variable.column(), start.plusDays(day), column[day]);
                }
            }
        }
    }

    private static void requireNotNegative(LocalDate start, double[][] columns) {
        for (WeatherVariable variable : NEVER_NEGATIVE) {
            double[] column = columns[variable.ordinal()];
            for (int day = 0; day < column.length; day++) {
                if (column[day] < 0.0) {
                    throw new InputException(
                            ModelError.WEATHER_NEGATIVE, variable.column(), start.plusDays(day), column[day]);
                }
            }
        }
    }

    /** Returns the date of the first day. */
    public LocalDate start() {
        return start;
    }

    /** Returns the date of the last day. */
    public LocalDate end() {
        return start.plusDays(days - 1L);
    }

    /** Returns the number of days. */
    public int days() {
        return days;
    }

    /**
     * Returns the date of a day.
     *
     * @param day index, 0 is {@link #start()}
     */
    public LocalDate date(int day) {
        return start.plusDays(day);
    }

    /**
     * Returns the index of a date, which may lie outside the series.
     *
     * @param date any date
     */
    public int indexOf(LocalDate date) {
        return Math.toIntExact(date.toEpochDay() - start.toEpochDay());
    }

    /**
     * Returns one value.
     *
     * @param variable which variable
     * @param day index, 0 to days - 1
     */
    public double value(WeatherVariable variable, int day) {
        return columns[variable.ordinal()][day];
    }

    /**
     * Returns a copy of one column.
     *
     * @param variable which variable
     */
    public double[] column(WeatherVariable variable) {
        return columns[variable.ordinal()].clone();
    }

    /**
     * Returns where a value came from.
     *
     * @param variable which variable
     * @param day index, 0 to days - 1
     */
    public Origin origin(WeatherVariable variable, int day) {
        return Origin.values()[origins[variable.ordinal()][day]];
    }

    /**
     * Counts the values of a variable with an origin, over a span of days.
     *
     * @param variable which variable
     * @param origin which origin
     * @param firstDay index of the first day of the span; days before the series are ignored
     * @param lastDay index of the last day of the span; days after the series are ignored
     */
    public int count(WeatherVariable variable, Origin origin, int firstDay, int lastDay) {
        byte[] codes = origins[variable.ordinal()];
        int count = 0;
        for (int day = Math.max(0, firstDay); day <= Math.min(days - 1, lastDay); day++) {
            count += codes[day] == origin.ordinal() ? 1 : 0;
        }
        return count;
    }

    /**
     * Returns the part of this series between two dates.
     *
     * @param first first date to keep, not before the start
     * @param last last date to keep, not after the end
     */
    public WeatherSeries between(LocalDate first, LocalDate last) {
        int from = indexOf(first);
        int to = indexOf(last) + 1;
        double[][] kept = new double[columns.length][];
        byte[][] keptOrigins = new byte[columns.length][];
        for (int i = 0; i < columns.length; i++) {
            kept[i] = Arrays.copyOfRange(columns[i], from, to);
            keptOrigins[i] = Arrays.copyOfRange(origins[i], from, to);
        }
        return new WeatherSeries(first, to - from, kept, keptOrigins);
    }
}
