package org.thirstline.model.climate;

import org.thirstline.model.error.Check;

/**
 * Classes of the Standardized Precipitation Index, WMO-No. 1090 (2012) Table 1. The table is printed to two decimals and leaves gaps
 * of 0.01; here each limit belongs to the more extreme class and values in a gap to the less extreme one.
 */
public enum PrecipitationClass {
    /** Index 2 and above. */
    EXTREMELY_WET("extremely wet"),
    /** From 1.5 to below 2. */
    VERY_WET("very wet"),
    /** From 1 to below 1.5. */
    MODERATELY_WET("moderately wet"),
    /** Between -1 and 1. */
    NEAR_NORMAL("near normal"),
    /** From -1 to above -1.5. */
    MODERATELY_DRY("moderately dry"),
    /** From -1.5 to above -2. */
    SEVERELY_DRY("severely dry"),
    /** Index -2 and below. */
    EXTREMELY_DRY("extremely dry");

    private static final double MODERATE = 1.0;
    private static final double SEVERE = 1.5;
    private static final double EXTREME = 2.0;

    private final String words;

    PrecipitationClass(String words) {
        this.words = words;
    }

    /** Returns the words of the source. */
    public String words() {
        return words;
    }

    /**
     * Returns the class of an index.
     *
     * @param index the index, -100 to 100; NaN is refused
     */
    public static PrecipitationClass of(double index) {
        Check.range("standardized precipitation index", index, "", -100.0, 100.0);
        if (Math.abs(index) < MODERATE) {
            return NEAR_NORMAL;
        }
        boolean wet = index > 0.0;
        if (Math.abs(index) < SEVERE) {
            return wet ? MODERATELY_WET : MODERATELY_DRY;
        }
        if (Math.abs(index) < EXTREME) {
            return wet ? VERY_WET : SEVERELY_DRY;
        }
        return wet ? EXTREMELY_WET : EXTREMELY_DRY;
    }
}
