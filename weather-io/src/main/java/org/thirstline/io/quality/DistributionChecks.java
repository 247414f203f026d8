package org.thirstline.io.quality;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
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

    private static final int MONTHS = 12;

    /** Rainy days that are looked at together. */
    private static final int CLUSTER = 10;

    private static final int HALF_WINDOW = 14;
    private static final int WET_VALUES = 20;

    private final WorkingWeather weather;
    private final DateWindows dates;
    private final int[] months;

    DistributionChecks(WorkingWeather weather) {
        this.weather = weather;
        this.dates = new DateWindows(weather);
        this.months = IntStream.range(0, weather.endDay())
                .map(day -> weather.date(day).getMonthValue())
                .toArray();
    }

    void run() {
        for (int month = 1; month <= MONTHS; month++) {
            gap(WeatherVariable.TMIN, month, TEMPERATURE_GAP_C);
            gap(WeatherVariable.TMAX, month, TEMPERATURE_GAP_C);
            gap(WeatherVariable.RAIN, month, RAIN_GAP_MM);
        }
        frequentRain();
    }

    /** From the median outwards, everything beyond the first gap is suspect. Rain has no gap below. */
    private void gap(WeatherVariable variable, int month, double limit) {
        double[] values = IntStream.range(weather.firstDay(), weather.endDay())
                .filter(day -> months[day] == month)
                .mapToDouble(day -> dates.measured(variable, day))
                .filter(value -> !Double.isNaN(value))
                .sorted()
                .toArray();
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
            if (months[day] == month && (value > values[top] || value < values[bottom])) {
                weather.suspect(RawVariable.of(variable), day, reason);
            }
        }
    }

    private static String unit(WeatherVariable variable) {
        return variable == WeatherVariable.RAIN ? "mm" : "°C";
    }

    private void frequentRain() {
        int[] wetDays = IntStream.range(weather.firstDay(), weather.endDay())
                .filter(day -> dates.measured(WeatherVariable.RAIN, day) > 0.0)
                .toArray();
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

    private void cluster(int[] wetDays, int first, double[][] usual, boolean[] found) {
        Map<Double, Integer> counts = new HashMap<>();
        for (int i = first; i < first + CLUSTER; i++) {
            counts.merge(weather.value(RawVariable.RAIN, wetDays[i]), 1, Integer::sum);
        }
        counts.values().removeIf(count -> Double.isNaN(shareFor(count)));
        for (int i = first; !counts.isEmpty() && i < first + CLUSTER; i++) {
            double value = weather.value(RawVariable.RAIN, wetDays[i]);
            Integer count = counts.get(value);
            double[] wet = usual[DateWindows.slot(weather.date(wetDays[i]))];
            if (count != null && wet.length >= WET_VALUES && value >= percentile(wet, shareFor(count))) {
                found[i] = true;
            }
        }
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
