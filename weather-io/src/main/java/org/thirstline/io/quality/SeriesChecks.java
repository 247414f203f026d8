package org.thirstline.io.quality;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Holds values against their neighbours in time, after the quality assurance of GHCN-Daily (Durre and others 2010, J. Appl. Meteor.
 * Climatol. 49:1615-1633; limits from memory unless said otherwise). Finds are suspects, not errors.
 */
final class SeriesChecks {

    private static final int STREAK_DAYS = 20;
    private static final double SPIKE_C = 25.0;
    private static final double LAGGED_RANGE_C = 40.0;

    /** With days from midnight to midnight the range of neighbours must overlap; a degree for rounding and other day ends (ours). */
    private static final double APART_C = 1.0;

    /** A month's worth of the same values is no chance if so many are there and so many differ (ours). */
    private static final int DUPLICATE_VALUES = 25;

    private static final int DUPLICATE_KINDS = 6;

    /** Days that every month has. */
    private static final int MONTH_DAYS = 28;

    private final WorkingWeather weather;

    SeriesChecks(WorkingWeather weather) {
        this.weather = weather;
    }

    void run() {
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            sameExtremes(day);
            spike(WeatherVariable.TMIN, day);
            spike(WeatherVariable.TMAX, day);
            neighbours(day);
        }
        for (WeatherVariable variable : WeatherVariable.values()) {
            streaks(variable);
            duplicates(variable);
        }
        new OutlierChecks(weather).run();
        new DistributionChecks(weather).run();
        new ShiftChecks(weather).run();
    }

    private double measured(WeatherVariable variable, int day) {
        boolean inside = day >= weather.firstDay() && day < weather.endDay();
        return inside && weather.isMeasured(variable, day) ? weather.value(RawVariable.of(variable), day) : Double.NaN;
    }

    private void sameExtremes(int day) {
        if (measured(WeatherVariable.TMIN, day) == measured(WeatherVariable.TMAX, day)) {
            weather.suspect(RawVariable.TMAX, day, "maximum equals minimum");
        }
    }

    private void spike(WeatherVariable variable, int day) {
        double value = measured(variable, day);
        double fromBefore = value - measured(variable, day - 1);
        double fromAfter = value - measured(variable, day + 1);
        boolean up = fromBefore > SPIKE_C && fromAfter > SPIKE_C;
        boolean down = fromBefore < -SPIKE_C && fromAfter < -SPIKE_C;
        if (up || down) {
            weather.suspect(RawVariable.of(variable), day, "more than 25 °C from the days before and after");
        }
    }

    private void neighbours(int day) {
        double tmax = measured(WeatherVariable.TMAX, day);
        double tmin = measured(WeatherVariable.TMIN, day);
        double minBefore = measured(WeatherVariable.TMIN, day - 1);
        double minAfter = measured(WeatherVariable.TMIN, day + 1);
        double maxBefore = measured(WeatherVariable.TMAX, day - 1);
        double maxAfter = measured(WeatherVariable.TMAX, day + 1);
        if (tmax < minBefore - APART_C || tmax < minAfter - APART_C) {
            weather.suspect(RawVariable.TMAX, day, "below the minimum of a day beside it");
        } else if (tmax >= Math.max(tmin, Math.max(minBefore, minAfter)) + LAGGED_RANGE_C) {
            weather.suspect(RawVariable.TMAX, day, "40 °C above all minima of the days around");
        }
        if (tmin <= Math.min(tmax, Math.min(maxBefore, maxAfter)) - LAGGED_RANGE_C) {
            weather.suspect(RawVariable.TMIN, day, "40 °C below all maxima of the days around");
        }
    }

    private void streaks(WeatherVariable variable) {
        int from = weather.firstDay();
        for (int day = weather.firstDay() + 1; day <= weather.endDay(); day++) {
            if (measured(variable, day) != measured(variable, from)) {
                boolean dry = variable == WeatherVariable.RAIN && measured(variable, from) == 0.0;
                if (day - from >= STREAK_DAYS && !dry) {
                    weather.suspect(
                            RawVariable.of(variable), from, day - 1, "the same value on 20 days running or more");
                }
                from = day;
            }
        }
    }

    /** Months that repeat another month of the record value by value. */
    private void duplicates(WeatherVariable variable) {
        Map<MonthValues, Integer> seen = new HashMap<>();
        int from = weather.firstDay();
        while (from < weather.endDay()) {
            int end = monthEnd(from);
            int firstOfMonth = from - weather.date(from).getDayOfMonth() + 1;
            double[] values = new double[MONTH_DAYS];
            for (int i = 0; i < values.length; i++) {
                values[i] = measured(variable, firstOfMonth + i);
            }
            Integer before = isTelling(values) ? seen.putIfAbsent(new MonthValues(values), from) : null;
            if (before != null) {
                weather.remark(
                        RawVariable.of(variable),
                        from,
                        end - 1,
                        "the same values day by day as in " + YearMonth.from(weather.date(before)));
            }
            from = end;
        }
    }

    /** The day after the last one of the month of a day, or of the record. */
    private int monthEnd(int day) {
        int month = weather.calendar().month(day);
        int end = day + 1;
        while (end < weather.endDay() && weather.calendar().month(end) == month) {
            end++;
        }
        return end;
    }

    /** The values of a month, the same as others if each is. */
    private record MonthValues(double[] values) {

        @Override
        public boolean equals(Object other) {
            return other instanceof MonthValues month && Arrays.equals(values, month.values);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(values);
        }
    }

    private static boolean isTelling(double[] values) {
        double[] sorted = values.clone();
        // NaN comes last.
        Arrays.sort(sorted);
        int there = 0;
        int kinds = 0;
        for (int i = 0; i < sorted.length && !Double.isNaN(sorted[i]); i++) {
            there++;
            kinds += i == 0 || Double.compare(sorted[i], sorted[i - 1]) != 0 ? 1 : 0;
        }
        return there >= DUPLICATE_VALUES && kinds >= DUPLICATE_KINDS;
    }
}
