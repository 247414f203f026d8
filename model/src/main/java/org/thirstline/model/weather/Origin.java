package org.thirstline.model.weather;

/** Where a daily value came from. Anything but {@link #MEASURED} is counted and reported. */
public enum Origin {
    /** As the source gives it, converted to our unit. */
    MEASURED,
    /** Estimated from other variables of the same day after FAO-56 chapter 3. */
    ESTIMATED,
    /** Interpolated across a short gap (never rain). */
    INTERPOLATED,
    /** Mean of the same dates in other years of the record. */
    CLIMATOLOGY,
    /** From a second station, brought to the level of this one. */
    SECOND_STATION
}
