package org.thirstline.io.quality;

import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Holds values against the climate of the record at that time of year, after Durre and others (2010): temperatures by the biweight mean
 * and deviation (Lanzante 1996) of 15-day windows, rain by a multiple of the 95th percentile of wet days in 29-day windows. Limits are
 * from memory.
 */
final class OutlierChecks {

    private static final int TEMPERATURE_HALF_WINDOW = 7;
    private static final int TEMPERATURE_VALUES = 100;
    private static final double DEVIATIONS = 5.0;
    private static final int RAIN_HALF_WINDOW = 14;
    private static final int RAIN_VALUES = 20;
    private static final double RAIN_MULTIPLE = 9.0;

    /** Multiple for days of frost, whose snow is measured worse. */
    private static final double SNOW_MULTIPLE = 5.0;

    /** Weights vanish at this many median absolute deviations. */
    private static final double CENSORING = 7.5;

    private final WorkingWeather weather;
    private final DateWindows dates;

    OutlierChecks(WorkingWeather weather) {
        this.weather = weather;
        this.dates = new DateWindows(weather);
    }

    void run() {
        temperature(WeatherVariable.TMIN);
        temperature(WeatherVariable.TMAX);
        rain();
    }

    private void temperature(WeatherVariable variable) {
        double[][] windows = dates.windows(variable, TEMPERATURE_HALF_WINDOW, Double.NEGATIVE_INFINITY);
        double[][] scales = new double[windows.length][];
        for (int date = 0; date < windows.length; date++) {
            scales[date] = windows[date].length < TEMPERATURE_VALUES ? new double[0] : biweight(windows[date]);
        }
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double[] scale = scales[weather.calendar().date(day)];
            double value = dates.measured(variable, day);
            if (scale.length > 0 && Math.abs(value - scale[0]) > DEVIATIONS * scale[1]) {
                weather.suspect(
                        RawVariable.of(variable), day, "more than 5 deviations from what is usual at the time of year");
            }
        }
    }

    private void rain() {
        double[][] windows = dates.windows(WeatherVariable.RAIN, RAIN_HALF_WINDOW, 0.0);
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double[] wet = windows[weather.calendar().date(day)];
            double value = dates.measured(WeatherVariable.RAIN, day);
            double mean = 0.5 * (weather.value(RawVariable.TMIN, day) + weather.value(RawVariable.TMAX, day));
            double multiple = mean < 0.0 ? SNOW_MULTIPLE : RAIN_MULTIPLE;
            if (wet.length >= RAIN_VALUES && value > multiple * wet[(int) (0.95 * (wet.length - 1))]) {
                weather.suspect(
                        RawVariable.RAIN, day, "many times what falls on the wettest days of that time of year");
            }
        }
    }

    /** Biweight mean and standard deviation of sorted values; empty where they do not vary. */
    private static double[] biweight(double[] sorted) {
        double median = sorted[sorted.length / 2];
        double spread = medianDistance(sorted, median);
        if (spread == 0.0) {
            return new double[0];
        }
        double weights = 0.0;
        double weighted = 0.0;
        double upper = 0.0;
        double lower = 0.0;
        for (double value : sorted) {
            double away = value - median;
            double u = away / (CENSORING * spread);
            if (Math.abs(u) < 1.0) {
                double open = 1.0 - u * u;
                double weight = open * open;
                weights += weight;
                weighted += away * weight;
                upper += away * away * weight * weight;
                lower += open * (1.0 - 5.0 * u * u);
            }
        }
        double deviation = Math.sqrt(sorted.length * upper) / Math.abs(lower);
        return new double[] {median + weighted / weights, deviation};
    }

    /** The distance from the median that half of the sorted values keep, found from the middle outwards. */
    static double medianDistance(double[] sorted, double median) {
        int below = sorted.length / 2;
        int above = below + 1;
        double distance = 0.0;
        for (int found = 0; found <= sorted.length / 2; found++) {
            double toBelow = below < 0 ? Double.POSITIVE_INFINITY : median - sorted[below];
            double toAbove = above == sorted.length ? Double.POSITIVE_INFINITY : sorted[above] - median;
            distance = Math.min(toBelow, toAbove);
            if (toBelow <= toAbove) {
                below--;
            } else {
                above++;
            }
        }
        return distance;
    }
}
