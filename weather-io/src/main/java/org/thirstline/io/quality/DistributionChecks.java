package org.thirstline.io.quality;

import java.util.Arrays;
import java.util.Locale;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Looks for values that stand apart from all others of their calendar month, and for amounts of rain that come too often, after Durre and
 * others (2010), the gap check and the frequent-value check; limits are from memory.
 */
final class DistributionChecks {

    private static final double TEMPERATURE_GAP_C = 10.0;
    private static final double RAIN_GAP_MM = 300.0;

    /** Values of a calendar month that make a gap telling (ours). */
    private static final int MONTH_VALUES = 100;

    /** Rainy days that are looked at together. */
    private static final int CLUSTER = 10;

    private static final int HALF_WINDOW = 14;
    private static final int WET_VALUES = 20;

    private final WorkingWeather weather;
    private final DateWindows dates;
    private final RecordCalendar calendar;

    DistributionChecks(WorkingWeather weather) {
        this.weather = weather;
        this.dates = new DateWindows(weather);
        this.calendar = weather.calendar();
    }

    void run() {
        double[][] tmin = byMonth(WeatherVariable.TMIN);
        double[][] tmax = byMonth(WeatherVariable.TMAX);
        double[][] rain = byMonth(WeatherVariable.RAIN);
        for (int month = 1; month <= RecordCalendar.MONTHS; month++) {
            gap(WeatherVariable.TMIN, month, tmin[month], TEMPERATURE_GAP_C);
            gap(WeatherVariable.TMAX, month, tmax[month], TEMPERATURE_GAP_C);
            gap(WeatherVariable.RAIN, month, rain[month], RAIN_GAP_MM);
        }
        frequentRain();
    }

    /** Sorted values of each calendar month, from 1 on. */
    private double[][] byMonth(WeatherVariable variable) {
        double[][] values = new double[RecordCalendar.MONTHS + 1][weather.endDay() - weather.firstDay()];
        int[] counts = new int[values.length];
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double value = dates.measured(variable, day);
            if (!Double.isNaN(value)) {
                int month = calendar.month(day);
                values[month][counts[month]++] = value;
            }
        }
        for (int month = 1; month < values.length; month++) {
            values[month] = Arrays.copyOf(values[month], counts[month]);
            Arrays.sort(values[month]);
        }
        return values;
    }

    /** From the median outwards, everything beyond the first gap is suspect. Rain has no gap below. */
    private void gap(WeatherVariable variable, int month, double[] values, double limit) {
        if (values.length < MONTH_VALUES) {
            return;
        }
        int top = values.length / 2;
        while (top + 1 < values.length && values[top + 1] - values[top] < limit) {
            top++;
        }
        int bottom = values.length / 2;
        while (bottom > 0 && values[bottom] - values[bottom - 1] < limit) {
            bottom--;
        }
        if (top == values.length - 1 && bottom == 0) {
            return;
        }
        String reason = String.format(Locale.ROOT, "%.0f %s away from all others of that month", limit, unit(variable));
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double value = dates.measured(variable, day);
            if (calendar.month(day) == month && (value > values[top] || value < values[bottom])) {
                weather.suspect(RawVariable.of(variable), day, reason);
            }
        }
    }

    private static String unit(WeatherVariable variable) {
        return variable == WeatherVariable.RAIN ? "mm" : "°C";
    }

    private void frequentRain() {
        int[] wetDays = wetDays();
        double[][] usual = dates.windows(WeatherVariable.RAIN, HALF_WINDOW, 0.0);
        boolean[] found = new boolean[wetDays.length];
        for (int first = 0; first + CLUSTER <= wetDays.length; first++) {
            cluster(wetDays, first, usual, found);
        }
        for (int i = 0; i < wetDays.length; i++) {
            if (found[i]) {
                weather.suspect(
                        RawVariable.RAIN,
                        wetDays[i],
                        "the same large amount on five or more of ten rainy days running");
            }
        }
    }

    private int[] wetDays() {
        int[] wetDays = new int[weather.endDay() - weather.firstDay()];
        int count = 0;
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            if (dates.measured(WeatherVariable.RAIN, day) > 0.0) {
                wetDays[count++] = day;
            }
        }
        return Arrays.copyOf(wetDays, count);
    }

    private void cluster(int[] wetDays, int first, double[][] usual, boolean[] found) {
        for (int i = first; i < first + CLUSTER; i++) {
            double value = weather.value(RawVariable.RAIN, wetDays[i]);
            double share = shareFor(timesInCluster(value, wetDays, first));
            double[] wet = usual[calendar.date(wetDays[i])];
            if (!Double.isNaN(share) && wet.length >= WET_VALUES && value >= percentile(wet, share)) {
                found[i] = true;
            }
        }
    }

    private int timesInCluster(double value, int[] wetDays, int first) {
        int times = 0;
        for (int i = first; i < first + CLUSTER; i++) {
            times += weather.value(RawVariable.RAIN, wetDays[i]) == value ? 1 : 0;
        }
        return times;
    }

    /** The more often a value comes, the smaller it may be to be odd; NaN where it is not. */
    private static double shareFor(int count) {
        if (count >= 9) {
            return 0.3;
        }
        return switch (count) {
            case 8 -> 0.5;
            case 7 -> 0.7;
            case 5, 6 -> 0.9;
            default -> Double.NaN;
        };
    }

    private static double percentile(double[] sorted, double share) {
        return sorted[(int) Math.ceil(share * (sorted.length - 1))];
    }
}
