package org.thirstline.io.quality;

import java.util.Arrays;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.weather.WeatherVariable;

/** Measured values of all years around each date of the year. Confined to one assembly. */
final class DateWindows {

    private static final int DATES = RecordCalendar.DATES;

    private final WorkingWeather weather;

    DateWindows(WorkingWeather weather) {
        this.weather = weather;
    }

    /** Sorted values above a limit around each date of the year. */
    double[][] windows(WeatherVariable variable, int halfWindow, double above) {
        double[][] byDate = byDate(variable, above);
        double[][] windows = new double[DATES][];
        windows[0] = first(byDate, halfWindow);
        for (int date = 1; date < DATES; date++) {
            double[] leaving = byDate[Math.floorMod(date - 1 - halfWindow, DATES)];
            double[] entering = byDate[(date + halfWindow) % DATES];
            windows[date] = moved(windows[date - 1], leaving, entering);
        }
        return windows;
    }

    /** Sorted values of each date. */
    private double[][] byDate(WeatherVariable variable, double above) {
        RecordCalendar calendar = weather.calendar();
        double[][] values = new double[DATES][0];
        int[] counts = new int[DATES];
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double value = measured(variable, day);
            if (value > above) {
                int date = calendar.date(day);
                if (counts[date] == values[date].length) {
                    values[date] = Arrays.copyOf(values[date], 2 * counts[date] + 8);
                }
                values[date][counts[date]++] = value;
            }
        }
        for (int date = 0; date < DATES; date++) {
            values[date] = Arrays.copyOf(values[date], counts[date]);
            Arrays.sort(values[date]);
        }
        return values;
    }

    private static double[] first(double[][] byDate, int halfWindow) {
        double[] window = new double[0];
        for (int away = -halfWindow; away <= halfWindow; away++) {
            window = moved(window, new double[0], byDate[Math.floorMod(away, DATES)]);
        }
        return window;
    }

    /** A sorted window without some of its values and with others; all three are sorted. */
    private static double[] moved(double[] window, double[] leaving, double[] entering) {
        double[] moved = new double[window.length - leaving.length + entering.length];
        int from = 0;
        int left = 0;
        int entered = 0;
        int at = 0;
        while (at < moved.length) {
            if (left < leaving.length && window[from] == leaving[left]) {
                from++;
                left++;
            } else if (entered < entering.length && (from == window.length || entering[entered] <= window[from])) {
                moved[at++] = entering[entered++];
            } else {
                moved[at++] = window[from++];
            }
        }
        return moved;
    }

    /** A value that was measured, else NaN. */
    double measured(WeatherVariable variable, int day) {
        return weather.isMeasured(variable, day) ? weather.value(RawVariable.of(variable), day) : Double.NaN;
    }
}
