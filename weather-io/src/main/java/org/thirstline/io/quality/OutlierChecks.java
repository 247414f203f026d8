package org.thirstline.io.quality;

import java.time.LocalDate;
import java.util.Arrays;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Holds values against the climate of the record at that time of year, after Durre and others (2010): temperatures by the biweight mean
 * and deviation (Lanzante 1996) of 15-day windows, rain by a multiple of the 95th percentile of wet days in 29-day windows. Limits are
 * from memory.
 */
final class OutlierChecks {

    private static final int SLOTS = 366;
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

    OutlierChecks(WorkingWeather weather) {
        this.weather = weather;
    }

    void run() {
        temperature(WeatherVariable.TMIN);
        temperature(WeatherVariable.TMAX);
        rain();
    }

    private void temperature(WeatherVariable variable) {
        double[][] windows = windows(variable, TEMPERATURE_HALF_WINDOW, Double.NEGATIVE_INFINITY);
        double[][] scales = new double[SLOTS][];
        for (int slot = 0; slot < SLOTS; slot++) {
            scales[slot] = windows[slot].length < TEMPERATURE_VALUES ? new double[0] : biweight(windows[slot]);
        }
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double[] scale = scales[slot(weather.date(day))];
            double value = measured(variable, day);
            if (scale.length > 0 && Math.abs(value - scale[0]) > DEVIATIONS * scale[1]) {
                weather.suspect(
                        RawVariable.of(variable), day, "more than 5 deviations from what is usual at the time of year");
            }
        }
    }

    private void rain() {
        double[][] windows = windows(WeatherVariable.RAIN, RAIN_HALF_WINDOW, 0.0);
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double[] wet = windows[slot(weather.date(day))];
            double value = measured(WeatherVariable.RAIN, day);
            double mean = 0.5 * (weather.value(RawVariable.TMIN, day) + weather.value(RawVariable.TMAX, day));
            double multiple = mean < 0.0 ? SNOW_MULTIPLE : RAIN_MULTIPLE;
            if (wet.length >= RAIN_VALUES && value > multiple * wet[(int) (0.95 * (wet.length - 1))]) {
                weather.suspect(
                        RawVariable.RAIN, day, "many times what falls on the wettest days of that time of year");
            }
        }
    }

    /** Sorted values above a limit around each date of the year. */
    private double[][] windows(WeatherVariable variable, int halfWindow, double above) {
        double[][] bySlot = new double[SLOTS][0];
        int[] counts = new int[SLOTS];
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double value = measured(variable, day);
            if (value > above) {
                int slot = slot(weather.date(day));
                if (counts[slot] == bySlot[slot].length) {
                    bySlot[slot] = Arrays.copyOf(bySlot[slot], 2 * counts[slot] + 8);
                }
                bySlot[slot][counts[slot]++] = value;
            }
        }
        double[][] windows = new double[SLOTS][];
        for (int slot = 0; slot < SLOTS; slot++) {
            windows[slot] = window(bySlot, counts, slot, halfWindow);
        }
        return windows;
    }

    private static double[] window(double[][] bySlot, int[] counts, int slot, int halfWindow) {
        int total = 0;
        for (int away = -halfWindow; away <= halfWindow; away++) {
            total += counts[Math.floorMod(slot + away, SLOTS)];
        }
        double[] window = new double[total];
        int at = 0;
        for (int away = -halfWindow; away <= halfWindow; away++) {
            int from = Math.floorMod(slot + away, SLOTS);
            System.arraycopy(bySlot[from], 0, window, at, counts[from]);
            at += counts[from];
        }
        Arrays.sort(window);
        return window;
    }

    /** Biweight mean and standard deviation of sorted values; empty where they do not vary. */
    private static double[] biweight(double[] sorted) {
        double median = sorted[sorted.length / 2];
        double[] distances =
                Arrays.stream(sorted).map(v -> Math.abs(v - median)).sorted().toArray();
        double spread = distances[distances.length / 2];
        if (spread == 0.0) {
            return new double[0];
        }
        double weights = 0.0;
        double weighted = 0.0;
        double upper = 0.0;
        double lower = 0.0;
        for (double value : sorted) {
            double u = (value - median) / (CENSORING * spread);
            if (Math.abs(u) < 1.0) {
                double open = 1.0 - u * u;
                weights += open * open;
                weighted += (value - median) * open * open;
                upper += (value - median) * (value - median) * Math.pow(open, 4);
                lower += open * (1.0 - 5.0 * u * u);
            }
        }
        double deviation = Math.sqrt(sorted.length * upper) / Math.abs(lower);
        return new double[] {median + weighted / weights, deviation};
    }

    private double measured(WeatherVariable variable, int day) {
        return weather.isMeasured(variable, day) ? weather.value(RawVariable.of(variable), day) : Double.NaN;
    }

    private static int slot(LocalDate date) {
        int dayOfYear = date.getDayOfYear() - 1;
        return date.getMonthValue() > 2 && !date.isLeapYear() ? dayOfYear + 1 : dayOfYear;
    }
}
