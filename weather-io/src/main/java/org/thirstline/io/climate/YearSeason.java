package org.thirstline.io.climate;

import java.time.LocalDate;

/**
 * Frost and growth in one year, a calendar year in the north, July to June in the south. Days count from its first day, which is 1.
 * Immutable.
 *
 * @param year calendar year of its first day
 * @param lastFrostDay last frost before the middle of summer, NaN if there was none
 * @param firstFrostDay first frost after it, NaN if there was none
 * @param growingDays days from the first six running above 5 °C to the first six below it after midsummer
 */
public record YearSeason(int year, double lastFrostDay, double firstFrostDay, int growingDays) {

    /** Returns the days between the frosts, NaN if there was none on one side. */
    public double frostFreeDays() {
        return firstFrostDay - lastFrostDay - 1.0;
    }

    /**
     * Returns a date of a year without a leap day.
     *
     * @param day day of the year as above
     * @param southern whether years start in July
     */
    public static LocalDate date(double day, boolean southern) {
        LocalDate start = southern ? LocalDate.of(2001, 7, 1) : LocalDate.of(2001, 1, 1);
        return start.plusDays(Math.round(day) - 1L);
    }
}
