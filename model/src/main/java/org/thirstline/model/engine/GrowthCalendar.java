package org.thirstline.model.engine;

import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import org.thirstline.model.weather.Site;

/** Growth years: 1 January in the north, 1 July in the south, named for the calendar year in which the canopy emerges. */
public final class GrowthCalendar {

    private GrowthCalendar() {}

    /**
     * Returns the growth year of a date.
     *
     * @param site where
     * @param date when
     */
    public static int growthYear(Site site, LocalDate date) {
        boolean secondHalf = date.getMonthValue() >= Month.JULY.getValue();
        return site.isSouthern() && !secondHalf ? date.getYear() - 1 : date.getYear();
    }

    /**
     * Returns the first day of a growth year.
     *
     * @param site where
     * @param growthYear which
     */
    public static LocalDate firstDay(Site site, int growthYear) {
        return LocalDate.of(growthYear, site.isSouthern() ? Month.JULY : Month.JANUARY, 1);
    }

    /**
     * Returns the date that a day of the year has within a growth year. 29 February becomes 28 February where there is none.
     *
     * @param site where
     * @param growthYear which
     * @param day the day of the year
     */
    public static LocalDate dateIn(Site site, int growthYear, MonthDay day) {
        boolean firstHalf = day.getMonthValue() < Month.JULY.getValue();
        return day.atYear(site.isSouthern() && firstHalf ? growthYear + 1 : growthYear);
    }
}
