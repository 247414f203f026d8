package org.thirstline.calibration.years;

import java.time.LocalDate;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** Rain, reference evapotranspiration and unmeasured rain days between any two dates. Immutable and thread-safe. */
final class RainSums {

    private final DailyDrivers drivers;
    private final double[] rainMm;
    private final double[] et0Mm;

    RainSums(DailyDrivers drivers) {
        this.drivers = drivers;
        rainMm = new double[drivers.days() + 1];
        et0Mm = new double[drivers.days() + 1];
        for (int day = 0; day < drivers.days(); day++) {
            rainMm[day + 1] = rainMm[day] + drivers.rain(day);
            et0Mm[day + 1] = et0Mm[day] + drivers.et0(day);
        }
    }

    boolean holds(LocalDate from, LocalDate until) {
        int first = drivers.weather().indexOf(from);
        int last = drivers.weather().indexOf(until);
        return first >= 0 && last < drivers.days() && first <= last;
    }

    double rainMm(LocalDate from, LocalDate until) {
        return rainMm[drivers.weather().indexOf(until) + 1]
                - rainMm[drivers.weather().indexOf(from)];
    }

    double et0Mm(LocalDate from, LocalDate until) {
        return et0Mm[drivers.weather().indexOf(until) + 1]
                - et0Mm[drivers.weather().indexOf(from)];
    }

    int filledDays(LocalDate from, LocalDate until) {
        int first = drivers.weather().indexOf(from);
        int last = drivers.weather().indexOf(until);
        return last - first + 1 - drivers.weather().count(WeatherVariable.RAIN, Origin.MEASURED, first, last);
    }
}
