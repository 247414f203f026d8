package org.thirstline.model.engine;

import java.time.LocalDate;
import java.time.MonthDay;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;

/**
 * Where each growth year, its growing-season window and its harvest lie in a series, as day indices that may fall outside it. Computed
 * before the day loop. Immutable and thread-safe.
 */
final class YearTable {

    final int firstYear;
    final int years;
    final int[] firstDay;
    final int[] windowStart;
    final int[] windowEnd;
    final int[] harvestFrom;
    final int[] harvestUntil;
    final int days;

    YearTable(Site site, WeatherSeries weather, GrowingSeason season, HarvestRule harvest) {
        firstYear = GrowthCalendar.growthYear(site, weather.start());
        years = GrowthCalendar.growthYear(site, weather.end()) - firstYear + 1;
        days = weather.days();
        firstDay = new int[years + 1];
        windowStart = new int[years];
        windowEnd = new int[years];
        harvestFrom = new int[years];
        harvestUntil = new int[years];
        for (int i = 0; i < years; i++) {
            int year = firstYear + i;
            firstDay[i] = weather.indexOf(GrowthCalendar.firstDay(site, year));
            windowStart[i] = weather.indexOf(season.start(site, year));
            windowEnd[i] = weather.indexOf(season.end(site, year));
            harvestFrom[i] = weather.indexOf(harvestFrom(site, year, harvest));
            harvestUntil[i] = weather.indexOf(harvestUntil(site, year, harvest));
        }
        firstDay[years] = weather.indexOf(GrowthCalendar.firstDay(site, firstYear + years));
    }

    private static LocalDate harvestFrom(Site site, int year, HarvestRule harvest) {
        return firstAfter(midOf(site, year), harvest.from());
    }

    /** The day on which a growth year's stand is cut at the latest. */
    static LocalDate harvestUntil(Site site, int year, HarvestRule harvest) {
        return firstAfter(harvestFrom(site, year, harvest), harvest.until());
    }

    /** Six months into the growth year: no stand is cut for the year before it gets there. */
    private static LocalDate midOf(Site site, int year) {
        return GrowthCalendar.firstDay(site, year).plusMonths(6);
    }

    private static LocalDate firstAfter(LocalDate earliest, MonthDay day) {
        LocalDate candidate = day.atYear(earliest.getYear());
        return candidate.isBefore(earliest) ? day.atYear(earliest.getYear() + 1) : candidate;
    }

    /** Whether the series holds the growth year from its first day on. */
    boolean startsInside(int year) {
        return firstDay[year] >= 0;
    }

    /** Whether the series holds the whole growing-season window of a year. */
    boolean holdsWindow(int year) {
        return windowStart[year] >= 0 && windowEnd[year] < days;
    }
}
