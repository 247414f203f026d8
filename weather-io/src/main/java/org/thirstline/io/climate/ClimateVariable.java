package org.thirstline.io.climate;

/** What a normal is the mean of. */
public enum ClimateVariable {
    /** Mean minimum temperature [°C]. */
    TMIN("tmin", "degC"),
    /** Mean maximum temperature [°C]. */
    TMAX("tmax", "degC"),
    /** Mean total of rain [mm]. */
    RAIN("rain", "mm"),
    /** Mean daily radiation [MJ m⁻² d⁻¹]. */
    SOLAR("solar", "MJ/m2/d"),
    /** Mean total of reference evapotranspiration [mm]. */
    ET0("et0", "mm");

    private final String word;
    private final String unit;

    ClimateVariable(String word, String unit) {
        this.word = word;
        this.unit = unit;
    }

    /** Returns the name in tables. */
    public String word() {
        return word;
    }

    /** Returns the unit in tables. */
    public String unit() {
        return unit;
    }

    /** Returns whether a month's value is a total, not a mean of days. */
    boolean isTotal() {
        return this == RAIN || this == ET0;
    }
}
