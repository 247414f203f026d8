package org.thirstline.io.quality;

import java.util.Arrays;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Looks for years in another unit, and for rain or radiation that is a day off from the temperatures: wet days have a small temperature
 * range and sunny ones a large one, on the same day. Our own checks and limits.
 */
final class ShiftChecks {

    private static final int WHOLE_YEAR_VALUES = 330;
    private static final int YEARS_NEEDED = 5;
    private static final double TEMPERATURE_SHIFT_C = 10.0;
    private static final double RAIN_TIMES = 6.0;

    private static final int PAIRS_NEEDED = 730;
    private static final double CLEARER = 0.05;

    private final WorkingWeather weather;

    ShiftChecks(WorkingWeather weather) {
        this.weather = weather;
    }

    void run() {
        years(WeatherVariable.TMIN);
        years(WeatherVariable.TMAX);
        years(WeatherVariable.RAIN);
        day(WeatherVariable.RAIN, -1.0);
        day(WeatherVariable.SOLAR, 1.0);
    }

    private void years(WeatherVariable variable) {
        double[] means = yearMeans(variable);
        double[] sorted = Arrays.stream(means)
                .filter(mean -> !Double.isNaN(mean))
                .sorted()
                .toArray();
        if (sorted.length < YEARS_NEEDED) {
            return;
        }
        double usual = sorted[sorted.length / 2];
        int firstYear = weather.calendar().year(weather.firstDay());
        for (int i = 0; i < means.length; i++) {
            boolean off = variable == WeatherVariable.RAIN
                    ? means[i] > RAIN_TIMES * usual || means[i] < usual / RAIN_TIMES
                    : Math.abs(means[i] - usual) > TEMPERATURE_SHIFT_C;
            if (off) {
                remarkYear(variable, firstYear + i);
            }
        }
    }

    /** Mean of each year from the first on, NaN where too little of it was measured. */
    private double[] yearMeans(WeatherVariable variable) {
        RecordCalendar calendar = weather.calendar();
        int firstYear = calendar.year(weather.firstDay());
        double[] sums = new double[calendar.year(weather.endDay() - 1) - firstYear + 1];
        int[] counts = new int[sums.length];
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double value = weather.value(RawVariable.of(variable), day);
            if (!Double.isNaN(value) && weather.isMeasured(variable, day)) {
                sums[calendar.year(day) - firstYear] += value;
                counts[calendar.year(day) - firstYear]++;
            }
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] = counts[i] < WHOLE_YEAR_VALUES ? Double.NaN : sums[i] / counts[i];
        }
        return sums;
    }

    private void remarkYear(WeatherVariable variable, int year) {
        RecordCalendar calendar = weather.calendar();
        int from = weather.firstDay();
        while (calendar.year(from) < year) {
            from++;
        }
        int to = from;
        while (to + 1 < weather.endDay() && calendar.year(to + 1) == year) {
            to++;
        }
        weather.remark(
                RawVariable.of(variable), from, to, "the year is as if in another unit than the rest of the record");
    }

    /** Compares the correlation with the temperature range on the same day with that a day earlier and later. */
    private void day(WeatherVariable variable, double sign) {
        double same = sign * correlation(variable, 0);
        double earlier = sign * correlation(variable, -1);
        double later = sign * correlation(variable, 1);
        String words = null;
        if (earlier > same + CLEARER && earlier > later) {
            words = "a day late";
        } else if (later > same + CLEARER && later > earlier) {
            words = "a day early";
        }
        if (words != null) {
            weather.remark(
                    RawVariable.of(variable),
                    weather.firstDay(),
                    weather.endDay() - 1,
                    "seems to be dated " + words + " against the temperatures, by its correlation with their range");
        }
    }

    /** Correlation of the amount (its square root) with the temperature range so many days away; NaN with too few pairs. */
    private double correlation(WeatherVariable variable, int away) {
        int days = weather.endDay() - weather.firstDay();
        double[] x = new double[days];
        double[] y = new double[days];
        int n = 0;
        int first = weather.firstDay() + 1;
        for (int day = first; day < weather.endDay() - 1; day++) {
            double amount = weather.value(RawVariable.of(variable), day);
            double range = weather.value(RawVariable.TMAX, day + away) - weather.value(RawVariable.TMIN, day + away);
            if (!Double.isNaN(amount + range) && amount >= 0.0 && weather.isMeasured(variable, day)) {
                x[n] = variable == WeatherVariable.RAIN
                        ? Math.sqrt(amount)
                        : amount / Math.max(1.0, weather.extraterrestrial(day));
                y[n++] = range;
            }
        }
        return n < PAIRS_NEEDED ? Double.NaN : correlation(x, y, n);
    }

    /** Correlation of the first n values. */
    private static double correlation(double[] x, double[] y, int n) {
        double meanX = mean(x, n);
        double meanY = mean(y, n);
        double xx = 0.0;
        double yy = 0.0;
        double xy = 0.0;
        for (int i = 0; i < n; i++) {
            xx += (x[i] - meanX) * (x[i] - meanX);
            yy += (y[i] - meanY) * (y[i] - meanY);
            xy += (x[i] - meanX) * (y[i] - meanY);
        }
        return xx > 0.0 && yy > 0.0 ? xy / Math.sqrt(xx * yy) : 0.0;
    }

    private static double mean(double[] values, int n) {
        double sum = 0.0;
        for (int i = 0; i < n; i++) {
            sum += values[i];
        }
        return sum / n;
    }
}
