package org.thirstline.model.climate;

import org.thirstline.model.error.Check;

/**
 * The growth years that define what is normal, and how many filled days a year may have and still count. Immutable and thread-safe.
 *
 * @param firstYear first growth year
 * @param lastYear last growth year
 * @param maximumFilledDays a year with more unmeasured rain days than this in the window is left out [d]
 */
public record NormalPeriod(int firstYear, int lastYear, int maximumFilledDays) {

    /** Filled days a season may have by default (common practice, no source). */
    public static final int DEFAULT_MAXIMUM_FILLED_DAYS = 5;

    /** Refuses a period that runs backwards. */
    public NormalPeriod {
        Check.range("last year of the normal period", lastYear, "", firstYear, 9999.0);
        Check.range("filled days allowed in a normal year", maximumFilledDays, "d", 0.0, 366.0);
    }

    /** Returns the current standard period of the World Meteorological Organization, 1991 to 2020 (WMO-No. 1203, 2017). */
    public static NormalPeriod standard() {
        return of(1991, 2020);
    }

    /**
     * Returns a period with the default allowance for filled days.
     *
     * @param firstYear first growth year
     * @param lastYear last growth year
     */
    public static NormalPeriod of(int firstYear, int lastYear) {
        return new NormalPeriod(firstYear, lastYear, DEFAULT_MAXIMUM_FILLED_DAYS);
    }

    /**
     * Returns whether a year counts towards the normal.
     *
     * @param year rain of the year
     */
    boolean accepts(WindowRain year) {
        return contains(year.growthYear()) && year.filledDays() <= maximumFilledDays;
    }

    /**
     * Returns whether a growth year lies in the period.
     *
     * @param growthYear any growth year
     */
    public boolean contains(int growthYear) {
        return growthYear >= firstYear && growthYear <= lastYear;
    }
}
