package org.thirstline.io.quality;

import java.util.Arrays;
import java.util.Locale;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Fills gaps from a second station, brought to the level of this one on days that both have, for each calendar month on its own:
 * temperatures by a regression line, all else by the ratio of sums, so that a dry day stays dry.
 */
final class SecondStation {

    private static final int MONTHS = 12;

    /** Common days in a month's record that carry a correction; with fewer all months together do. Common practice, no source. */
    private static final int DAYS_NEEDED = 30;

    /** Keeps a few odd days from making a steep line or a large ratio; common practice, no source. */
    private static final double STEEPEST = 2.0;

    private static final double LARGEST_RATIO = 4.0;

    private final WorkingWeather weather;
    private final RawWeather second;
    private final int offset;

    SecondStation(WorkingWeather weather, RawWeather second) {
        this.weather = weather;
        this.second = second;
        this.offset =
                Math.toIntExact(weather.date(0).toEpochDay() - second.start().toEpochDay());
    }

    void fill() {
        for (WeatherVariable variable : WeatherVariable.values()) {
            if (second.has(RawVariable.of(variable))) {
                fill(variable);
            }
        }
    }

    private void fill(WeatherVariable variable) {
        RawVariable raw = RawVariable.of(variable);
        double[] theirs = theirs(raw);
        double[][] lines = lines(variable, theirs);
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double[] line = lines[weather.date(day).getMonthValue() - 1];
            if (weather.isMissing(raw, day) && !Double.isNaN(theirs[day]) && line.length > 0) {
                double value = line[0] + line[1] * theirs[day];
                boolean signed = isTemperature(variable);
                String action = "second station, " + formula(line, signed);
                weather.fill(variable, day, signed ? value : Math.max(0.0, value), Origin.SECOND_STATION, action);
            }
        }
    }

    private static String formula(double[] line, boolean signed) {
        return signed
                ? String.format(
                        Locale.ROOT, "%.2f + %.3f times its value by month (%d common days)", line[0], line[1], (int)
                                line[2])
                : String.format(Locale.ROOT, "%.3f times its value by month (%d common days)", line[1], (int) line[2]);
    }

    private double[] theirs(RawVariable raw) {
        double[] values = new double[weather.endDay()];
        Arrays.fill(values, Double.NaN);
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            int at = day + offset;
            if (at >= 0 && at < second.days()) {
                values[day] = second.value(raw, at);
            }
        }
        return values;
    }

    /** Intercept, slope and days for each month; empty where there is too little in common. */
    private double[][] lines(WeatherVariable variable, double[] theirs) {
        double[] all = line(variable, theirs, 0);
        double[][] lines = new double[MONTHS][];
        for (int month = 1; month <= MONTHS; month++) {
            double[] own = line(variable, theirs, month);
            lines[month - 1] = own.length > 0 ? own : all;
        }
        return lines;
    }

    private double[] line(WeatherVariable variable, double[] theirs, int month) {
        RawVariable raw = RawVariable.of(variable);
        double n = 0.0;
        double x = 0.0;
        double y = 0.0;
        double xx = 0.0;
        double xy = 0.0;
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            boolean counts = month == 0 || weather.date(day).getMonthValue() == month;
            double ours = weather.value(raw, day);
            if (counts && !Double.isNaN(ours + theirs[day]) && weather.isMeasured(variable, day)) {
                n++;
                x += theirs[day];
                y += ours;
                xx += theirs[day] * theirs[day];
                xy += theirs[day] * ours;
            }
        }
        if (n < DAYS_NEEDED) {
            return new double[0];
        }
        if (!isTemperature(variable)) {
            return x > 0.0 ? new double[] {0.0, Math.min(LARGEST_RATIO, y / x), n} : new double[0];
        }
        double spread = xx - x * x / n;
        double slope = spread > 0.0 ? (xy - x * y / n) / spread : 1.0;
        double kept = Math.max(0.0, Math.min(STEEPEST, slope));
        return new double[] {(y - kept * x) / n, kept, n};
    }

    private static boolean isTemperature(WeatherVariable variable) {
        return variable == WeatherVariable.TMIN || variable == WeatherVariable.TMAX;
    }
}
