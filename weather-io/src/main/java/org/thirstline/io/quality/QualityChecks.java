package org.thirstline.io.quality;

import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Holds measured values against what can be. The impossible is taken as missing, the hard to believe is kept; both are reported. Values
 * that a file flags as filled are not checked again.
 */
final class QualityChecks {

    /** Air temperature: the extremes of the WMO archive are -89.2 and 56.7 °C. */
    private static final double LOWEST_TEMPERATURE_C = -90.0;

    private static final double HIGHEST_TEMPERATURE_C = 60.0;

    /** The most in 24 h on record is 1825 mm (WMO archive). */
    private static final double HIGHEST_RAIN_MM = 1830.0;

    private static final double SUSPECT_RAIN_MM = 600.0;
    private static final double HIGHEST_WIND_M_S = 60.0;

    /** Clear sky passes at most about this share of extraterrestrial radiation; common practice, no source. */
    private static final double CLEAREST_SHARE = 0.82;

    /** Below this much extraterrestrial radiation [MJ m⁻² d⁻¹] twilight spoils the comparison. */
    private static final double TWILIGHT_MJ_M2 = 1.0;

    private static final double OVERSATURATION = 1.1;
    private static final double HIGHEST_HUMIDITY_PCT = 110.0;

    /** Saturated air of 40 °C at sea level holds 0.049 kg/kg. */
    private static final double HIGHEST_SPECIFIC_HUMIDITY = 0.05;

    private static final RawVariable[] HUMIDITIES = {
        RawVariable.HUMIDITY_MIN, RawVariable.HUMIDITY_MAX, RawVariable.HUMIDITY_MEAN
    };

    private final WorkingWeather weather;

    QualityChecks(WorkingWeather weather) {
        this.weather = weather;
    }

    void run() {
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            temperatures(day);
            rain(day);
            solar(day);
            outside(RawVariable.SUNSHINE, day, 0.0, 24.0, "sunshine outside 0 to 24 h");
            outside(RawVariable.WIND, day, 0.0, HIGHEST_WIND_M_S, "wind outside 0 to 60 m/s");
            humidity(day);
        }
    }

    private void temperatures(int day) {
        String reason = "temperature outside -90 to 60 °C";
        outside(RawVariable.TMIN, day, LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C, reason);
        outside(RawVariable.TMAX, day, LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C, reason);
        outside(RawVariable.TMEAN, day, LOWEST_TEMPERATURE_C, HIGHEST_TEMPERATURE_C, reason);
        boolean measured =
                weather.isMeasured(WeatherVariable.TMIN, day) || weather.isMeasured(WeatherVariable.TMAX, day);
        double tmin = weather.value(RawVariable.TMIN, day);
        double tmax = weather.value(RawVariable.TMAX, day);
        if (measured && tmin > tmax) {
            weather.blank(RawVariable.TMIN, day, "minimum above maximum");
            weather.blank(RawVariable.TMAX, day, "maximum below minimum");
        }
    }

    private void rain(int day) {
        outside(RawVariable.RAIN, day, 0.0, HIGHEST_RAIN_MM, "rain outside 0 to 1830 mm");
        if (isChecked(RawVariable.RAIN, day) && weather.value(RawVariable.RAIN, day) > SUSPECT_RAIN_MM) {
            weather.suspect(RawVariable.RAIN, day, "more than 600 mm in a day");
        }
    }

    private void solar(int day) {
        if (!isChecked(RawVariable.SOLAR, day)) {
            return;
        }
        double solar = weather.value(RawVariable.SOLAR, day);
        double top = weather.extraterrestrial(day);
        if (solar < 0.0) {
            weather.blank(RawVariable.SOLAR, day, "negative radiation");
        } else if (top <= TWILIGHT_MJ_M2) {
            return;
        } else if (solar == 0.0) {
            weather.blank(RawVariable.SOLAR, day, "no radiation on a day with sun");
        } else if (solar > top) {
            weather.blank(RawVariable.SOLAR, day, "more than reaches the top of the atmosphere");
        } else if (solar > CLEAREST_SHARE * top) {
            weather.suspect(RawVariable.SOLAR, day, "more than 0.82 of extraterrestrial radiation");
        }
    }

    private void humidity(int day) {
        double tmax = weather.value(RawVariable.TMAX, day);
        double most = OVERSATURATION * Atmosphere.saturationVapourPressure(tmax);
        double vapourPressure = weather.value(RawVariable.VAPOUR_PRESSURE, day);
        if (isChecked(RawVariable.VAPOUR_PRESSURE, day) && (vapourPressure <= 0.0 || vapourPressure > most)) {
            weather.blank(RawVariable.VAPOUR_PRESSURE, day, "vapour pressure not above 0 or above saturation");
        }
        outside(
                RawVariable.DEW_POINT,
                day,
                LOWEST_TEMPERATURE_C,
                HIGHEST_TEMPERATURE_C,
                "dew point outside -90 to 60 °C");
        if (Atmosphere.saturationVapourPressure(weather.value(RawVariable.DEW_POINT, day)) > most) {
            weather.blank(RawVariable.DEW_POINT, day, "dew point above the maximum temperature");
        }
        for (RawVariable variable : HUMIDITIES) {
            double value = weather.value(variable, day);
            if (value <= 0.0 || value > HIGHEST_HUMIDITY_PCT) {
                weather.blank(variable, day, "relative humidity not above 0 or above 110 %");
            }
        }
        double specific = weather.value(RawVariable.SPECIFIC_HUMIDITY, day);
        if (specific <= 0.0 || specific > HIGHEST_SPECIFIC_HUMIDITY) {
            weather.blank(RawVariable.SPECIFIC_HUMIDITY, day, "specific humidity not above 0 or above 0.05");
        }
        double lowest = weather.value(RawVariable.HUMIDITY_MIN, day);
        double highest = weather.value(RawVariable.HUMIDITY_MAX, day);
        if (lowest > highest) {
            weather.blank(RawVariable.HUMIDITY_MIN, day, "minimum humidity above maximum");
            weather.blank(RawVariable.HUMIDITY_MAX, day, "maximum humidity below minimum");
        }
    }

    private void outside(RawVariable variable, int day, double lower, double upper, String reason) {
        double value = weather.value(variable, day);
        if ((value < lower || value > upper) && isChecked(variable, day)) {
            weather.blank(variable, day, reason);
        }
    }

    private boolean isChecked(RawVariable variable, int day) {
        WeatherVariable engineVariable = variable.engineVariable();
        return !weather.isMissing(variable, day) && (engineVariable == null || weather.isMeasured(engineVariable, day));
    }
}
