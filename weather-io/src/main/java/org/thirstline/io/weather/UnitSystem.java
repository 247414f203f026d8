package org.thirstline.io.weather;

/** Units of a download that does not state them. */
public enum UnitSystem {
    /** °C, mm, m/s. */
    METRIC,
    /** °F, inches, miles an hour. */
    US
}
