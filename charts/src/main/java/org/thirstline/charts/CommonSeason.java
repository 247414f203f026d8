package org.thirstline.charts;

import java.time.LocalDate;
import java.time.Month;
import java.util.Comparator;
import java.util.List;

/**
 * One axis of dates for several growth years, laid over each other by month and day within the growth year, whether that starts in January
 * or in July. Immutable and thread-safe.
 */
final class CommonSeason {

    /** The growth year that all are laid over holds 29 February, so that every date has a place. */
    private static final int NORTHERN_YEAR = 2000;

    private static final int SOUTHERN_YEAR = 1999;

    static final int NO_DAY = -1;

    private final int commonYear;
    private final MonthScale scale;

    CommonSeason(List<SeasonView> seasons) {
        commonYear = seasons.stream().anyMatch(CommonSeason::isSouthern) ? SOUTHERN_YEAR : NORTHERN_YEAR;
        LocalDate from = seasons.stream()
                .map(season -> season.scale().from().plusYears(shift(season)))
                .min(Comparator.naturalOrder())
                .orElseThrow();
        LocalDate to = seasons.stream()
                .map(season -> season.scale().to().plusYears(shift(season)))
                .max(Comparator.naturalOrder())
                .orElseThrow();
        scale = new MonthScale(from, from, to);
    }

    /** A canopy that emerges in the second half of the calendar year belongs to a growth year that starts in July. */
    private static boolean isSouthern(SeasonView season) {
        LocalDate emergence = season.season().dates().emergence();
        return emergence != null && emergence.getMonthValue() >= Month.JULY.getValue();
    }

    private int shift(SeasonView season) {
        return commonYear - season.season().growthYear();
    }

    MonthScale scale() {
        return scale;
    }

    /**
     * Returns the day of a season's own run that has a place on the axis.
     *
     * @return index of the day, {@link #NO_DAY} where the run does not hold it or the year has no 29 February
     */
    int dayOf(SeasonView season, int place) {
        LocalDate common = scale.from().plusDays(place);
        LocalDate date = common.plusYears(-(long) shift(season));
        int day = (int) (date.toEpochDay() - season.daily().start().toEpochDay());
        boolean known = date.getDayOfMonth() == common.getDayOfMonth()
                && day >= 0
                && day < season.daily().days();
        return known ? day : NO_DAY;
    }
}
