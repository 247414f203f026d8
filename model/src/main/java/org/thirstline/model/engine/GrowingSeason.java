package org.thirstline.model.engine;

import java.time.LocalDate;
import java.time.MonthDay;
import org.thirstline.model.weather.Site;

/**
 * The window of the year over which rain, deficit and water balance of a season are summed. It lies inside one growth year. Immutable
 * and thread-safe.
 *
 * @param from first day
 * @param until last day
 */
public record GrowingSeason(MonthDay from, MonthDay until) {

    /**
     * Returns the default window: April to September in the north, October to March in the south (common practice, no source).
     *
     * @param site where
     */
    public static GrowingSeason defaultFor(Site site) {
        return site.isSouthern()
                ? new GrowingSeason(MonthDay.of(10, 1), MonthDay.of(3, 31))
                : new GrowingSeason(MonthDay.of(4, 1), MonthDay.of(9, 30));
    }

    /**
     * Returns the first day of the window in a growth year.
     *
     * @param site where
     * @param growthYear which growth year
     */
    public LocalDate start(Site site, int growthYear) {
        return GrowthCalendar.dateIn(site, growthYear, from);
    }

    /**
     * Returns the last day of the window in a growth year.
     *
     * @param site where
     * @param growthYear which growth year
     */
    public LocalDate end(Site site, int growthYear) {
        return GrowthCalendar.dateIn(site, growthYear, until);
    }
}
