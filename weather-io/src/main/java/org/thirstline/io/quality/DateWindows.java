package org.thirstline.io.quality;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/** Measured values of all years around each date of the year. Confined to one assembly. */
final class DateWindows {

    /** Dates of a leap year. */
    static final int SLOTS = 366;

    private final WorkingWeather weather;

    DateWindows(WorkingWeather weather) {
        this.weather = weather;
    }

    /** Sorted values above a limit around each date of the year. */
    double[][] windows(WeatherVariable variable, int halfWindow, double above) {
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
        for (int slot = 0; slot < SLOTS; slot++) {
            // Sorting a window is then merging.
            Arrays.sort(bySlot[slot], 0, counts[slot]);
        }
        return IntStream.range(0, SLOTS)
                .parallel()
                .mapToObj(slot -> window(bySlot, counts, slot, halfWindow))
                .toArray(double[][]::new);
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

    /** A value that was measured, else NaN. */
    double measured(WeatherVariable variable, int day) {
        return weather.isMeasured(variable, day) ? weather.value(RawVariable.of(variable), day) : Double.NaN;
    }

    /** Same date, same slot in every year: the day of a leap year, 0 on 1 January. */
    static int slot(LocalDate date) {
        int dayOfYear = date.getDayOfYear() - 1;
        return date.getMonthValue() > 2 && !date.isLeapYear() ? dayOfYear + 1 : dayOfYear;
    }
}
