package org.thirstline.model.climate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Rain of one growth year in a window of month-days. Immutable and thread-safe.
 *
 * @param growthYear the growth year
 * @param rainMm precipitation from the window's first to its last day [mm]
 * @param days number of days in the window
 * @param filledDays days of the window whose rain is not measured
 */
public record WindowRain(int growthYear, double rainMm, int days, int filledDays) {

    /**
     * Sums rain over a window for every growth year whose whole window lies in the series.
     *
     * @param weather daily weather
     * @param site where; decides when growth years start
     * @param window the window, inside one growth year
     * @return one entry per growth year, in order
     * @throws InputException if the window runs backwards within a growth year
     */
    public static List<WindowRain> of(WeatherSeries weather, Site site, GrowingSeason window) {
        List<WindowRain> years = new ArrayList<>();
        for (int year : completeYears(weather, site, window)) {
            int first = weather.indexOf(window.start(site, year));
            int last = weather.indexOf(window.end(site, year));
            double rain = 0.0;
            for (int day = first; day <= last; day++) {
                rain += weather.value(WeatherVariable.RAIN, day);
            }
            int days = last - first + 1;
            int measured = weather.count(WeatherVariable.RAIN, Origin.MEASURED, first, last);
            years.add(new WindowRain(year, rain, days, days - measured));
        }
        return List.copyOf(years);
    }

    /**
     * Sums reference evapotranspiration minus rain, the climatic water deficit, over the window of one growth year.
     *
     * @param drivers daily weather with its evapotranspiration
     * @param window the window, inside one growth year
     * @param growthYear a growth year whose window lies in the series
     * @return ET_0 - P [mm], positive when the air could take more than rain gave
     * @throws InputException if the series does not hold the window
     */
    public static double climaticWaterDeficitMm(DailyDrivers drivers, GrowingSeason window, int growthYear) {
        requireForwards(drivers.site(), window);
        int first = drivers.weather().indexOf(window.start(drivers.site(), growthYear));
        int last = drivers.weather().indexOf(window.end(drivers.site(), growthYear));
        if (first < 0 || last >= drivers.days()) {
            throw new InputException(
                    ModelError.INCONSISTENT, "the weather does not hold the whole window of growth year " + growthYear);
        }
        double deficit = 0.0;
        for (int day = first; day <= last; day++) {
            deficit += drivers.et0(day) - drivers.rain(day);
        }
        return deficit;
    }

    private static List<Integer> completeYears(WeatherSeries weather, Site site, GrowingSeason window) {
        requireForwards(site, window);
        List<Integer> years = new ArrayList<>();
        int last = GrowthCalendar.growthYear(site, weather.end());
        for (int year = GrowthCalendar.growthYear(site, weather.start()); year <= last; year++) {
            LocalDate start = window.start(site, year);
            LocalDate end = window.end(site, year);
            if (!start.isBefore(weather.start()) && !end.isAfter(weather.end())) {
                years.add(year);
            }
        }
        return years;
    }

    /** A leap year, so that a window bounded by 29 February is judged as written. */
    private static void requireForwards(Site site, GrowingSeason window) {
        int leapYear = site.isSouthern() ? 1999 : 2000;
        if (window.end(site, leapYear).isBefore(window.start(site, leapYear))) {
            throw new InputException(
                    ModelError.INCONSISTENT,
                    "the window from " + window.from() + " until " + window.until()
                            + " does not lie inside one growth year, which starts on "
                            + (site.isSouthern() ? "1 July" : "1 January"));
        }
    }
}
