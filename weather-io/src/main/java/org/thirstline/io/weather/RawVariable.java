package org.thirstline.io.weather;

import org.jspecify.annotations.Nullable;
import org.thirstline.model.weather.WeatherVariable;

/** What a weather file may give for a day, in our units: the six variables of the engine, and what some of them are derived from. */
public enum RawVariable {
    /** Daily minimum air temperature [°C]. */
    TMIN("tmin", "minimum temperature", "tmin_c", WeatherVariable.TMIN),
    /** Daily maximum air temperature [°C]. */
    TMAX("tmax", "maximum temperature", "tmax_c", WeatherVariable.TMAX),
    /** Precipitation [mm]. */
    RAIN("rain", "rain", "rain_mm", WeatherVariable.RAIN),
    /** Global solar radiation [MJ m⁻² d⁻¹]. */
    SOLAR("solar", "solar radiation", "solar_mj_m2", WeatherVariable.SOLAR),
    /** Mean wind speed at the height the file states [m/s]. */
    WIND("wind", "wind speed", "wind_2m_m_s", WeatherVariable.WIND),
    /** Mean actual vapour pressure [kPa]. */
    VAPOUR_PRESSURE("vapour_pressure", "vapour pressure", "vapour_pressure_kpa", WeatherVariable.VAPOUR_PRESSURE),
    /** Daily mean air temperature [°C]. */
    TMEAN("tmean", "mean temperature", "tmean_c", null),
    /** Duration of bright sunshine [h]. */
    SUNSHINE("sunshine", "sunshine", "sunshine_h", null),
    /** Minimum relative humidity [%]. */
    HUMIDITY_MIN("rh_min", "minimum relative humidity", "rh_min_pct", null),
    /** Maximum relative humidity [%]. */
    HUMIDITY_MAX("rh_max", "maximum relative humidity", "rh_max_pct", null),
    /** Mean relative humidity [%]. */
    HUMIDITY_MEAN("rh_mean", "mean relative humidity", "rh_mean_pct", null),
    /** Mean dew point [°C]. */
    DEW_POINT("dew_point", "dew point", "dew_point_c", null),
    /** Mean specific humidity [kg/kg]. */
    SPECIFIC_HUMIDITY("specific_humidity", "specific humidity", "specific_humidity_kg_kg", null);

    private final String shortName;
    private final String words;
    private final String column;
    private final @Nullable WeatherVariable engineVariable;

    RawVariable(String shortName, String words, String column, @Nullable WeatherVariable engineVariable) {
        this.shortName = shortName;
        this.words = words;
        this.column = column;
        this.engineVariable = engineVariable;
    }

    /** Returns the name without a unit, as flags use it. */
    public String shortName() {
        return shortName;
    }

    /** Returns the name in words. */
    public String words() {
        return words;
    }

    /** Returns the column of the plain format in our own unit. */
    public String column() {
        return column;
    }

    /** Returns the variable of the engine that this is, or null if that one is derived from it. */
    public @Nullable WeatherVariable engineVariable() {
        return engineVariable;
    }

    /** Returns the raw variable of a variable of the engine. */
    public static RawVariable of(WeatherVariable variable) {
        for (RawVariable raw : values()) {
            if (raw.engineVariable == variable) {
                return raw;
            }
        }
        throw new IllegalArgumentException(variable.name());
    }
}
