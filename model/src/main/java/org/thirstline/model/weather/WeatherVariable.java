package org.thirstline.model.weather;

/** The six daily variables the engine is driven by. The order is that of the plain weather file. */
public enum WeatherVariable {
    /** Daily minimum air temperature. */
    TMIN("tmin_c", "°C", "Daily minimum air temperature"),
    /** Daily maximum air temperature. */
    TMAX("tmax_c", "°C", "Daily maximum air temperature"),
    /** Precipitation, rain and melted snow. */
    RAIN("rain_mm", "mm/d", "Daily precipitation, snow as water"),
    /** Global solar radiation on the horizontal. */
    SOLAR("solar_mj_m2", "MJ m⁻² d⁻¹", "Global solar radiation on the horizontal"),
    /** Wind speed at two metres. */
    WIND("wind_2m_m_s", "m/s", "Mean wind speed at 2 m"),
    /** Actual vapour pressure. */
    VAPOUR_PRESSURE("vapour_pressure_kpa", "kPa", "Mean actual vapour pressure");

    private final String column;
    private final String unit;
    private final String meaning;

    WeatherVariable(String column, String unit, String meaning) {
        this.column = column;
        this.unit = unit;
        this.meaning = meaning;
    }

    /** Returns the column name in files, unit included. */
    public String column() {
        return column;
    }

    /** Returns the unit as text. */
    public String unit() {
        return unit;
    }

    /** Returns what the variable means. */
    public String meaning() {
        return meaning;
    }
}
