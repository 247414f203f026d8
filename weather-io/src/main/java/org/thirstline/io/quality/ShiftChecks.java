package org.thirstline.io.quality;

import java.util.Arrays;
import java.util.TreeMap;
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
        TreeMap<Integer, double[]> sums = new TreeMap<>();
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double value = weather.value(RawVariable.of(variable), day);
            if (!Double.isNaN(value) && weather.isMeasured(variable, day)) {
                double[] sum = sums.computeIfAbsent(weather.date(day).getYear(), y -> new double[2]);
                sum[0] += value;
                sum[1]++;
            }
        }
        sums.values().removeIf(sum -> sum[1] < WHOLE_YEAR_VALUES);
        if (sums.size() < YEARS_NEEDED) {
            return;
        }
        double[] means =
                sums.values().stream().mapToDouble(s -> s[0] / s[1]).sorted().toArray();
        double usual = means[means.length / 2];
        sums.forEach((year, sum) -> {
            double mean = sum[0] / sum[1];
            boolean off = variable == WeatherVariable.RAIN
                    ? mean > RAIN_TIMES * usual || mean < usual / RAIN_TIMES
                    : Math.abs(mean - usual) > TEMPERATURE_SHIFT_C;
            if (off) {
                remarkYear(variable, year);
            }
        });
    }

    private void remarkYear(WeatherVariable variable, int year) {
        int from = weather.firstDay();
        while (weather.date(from).getYear() < year) {
            from++;
        }
        int to = from;
        while (to + 1 < weather.endDay() && weather.date(to + 1).getYear() == year) {
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
        return n < PAIRS_NEEDED ? Double.NaN : correlation(Arrays.copyOf(x, n), Arrays.copyOf(y, n));
    }

    private static double correlation(double[] x, double[] y) {
        double meanX = Arrays.stream(x).average().orElse(0.0);
        double meanY = Arrays.stream(y).average().orElse(0.0);
        double xx = 0.0;
        double yy = 0.0;
        double xy = 0.0;
        for (int i = 0; i < x.length; i++) {
            xx += (x[i] - meanX) * (x[i] - meanX);
            yy += (y[i] - meanY) * (y[i] - meanY);
            xy += (x[i] - meanX) * (y[i] - meanY);
        }
        return xx > 0.0 && yy > 0.0 ? xy / Math.sqrt(xx * yy) : 0.0;
    }
}
