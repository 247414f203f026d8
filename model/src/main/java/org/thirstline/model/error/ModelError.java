package org.thirstline.model.error;

/** Errors that the model itself raises when it is given values no stand, soil or place can have. */
public enum ModelError implements ErrorCode {
    /** Name, value, unit, lower and upper limit. */
    VALUE_OUT_OF_RANGE("%s is %s %s; allowed is %s to %s %s"),
    /** Name. */
    VALUE_MISSING("%s is missing or not a number"),
    /** Name of the smaller, its value, name of the larger, its value, unit. */
    VALUES_OUT_OF_ORDER("%s (%s) must be below %s (%s) %s"),
    /** Column, found days, expected days. */
    COLUMN_LENGTH("weather column %s has %s days, expected %s"),
    /** Column, date, value. */
    WEATHER_NOT_FINITE("weather column %s on %s is %s; the engine takes no missing values"),
    /** Column, date, value. */
    WEATHER_NEGATIVE("weather column %s on %s is %s; it cannot be negative"),
    /** Free text. */
    INCONSISTENT("%s");

    private final String template;

    ModelError(String template) {
        this.template = template;
    }

    @Override
    public String template() {
        return template;
    }
}
