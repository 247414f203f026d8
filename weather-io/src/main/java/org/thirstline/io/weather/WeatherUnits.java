package org.thirstline.io.weather;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The units in which a column of a user's own table may give a variable. */
public final class WeatherUnits {

    private static final Map<String, DailyUnit> TEMPERATURE =
            units("°C", DailyUnit.SAME, "°F", DailyUnit.FAHRENHEIT, "K", DailyUnit.KELVIN, "0.1 °C", DailyUnit.TENTH);
    private static final Map<String, DailyUnit> RAIN = units(
            "mm",
            DailyUnit.SAME,
            "cm",
            DailyUnit.CENTIMETRE,
            "inch",
            DailyUnit.INCH,
            "in",
            DailyUnit.INCH,
            "0.1 mm",
            DailyUnit.TENTH);
    private static final Map<String, DailyUnit> SOLAR = units(
            "MJ/m2",
            DailyUnit.SAME,
            "W/m2",
            DailyUnit.WATT_PER_M2,
            "J/cm2",
            DailyUnit.JOULE_PER_CM2,
            "kWh/m2",
            DailyUnit.KILOWATT_HOUR_PER_M2,
            "langley",
            DailyUnit.CALORIE_PER_CM2,
            "cal/cm2",
            DailyUnit.CALORIE_PER_CM2);
    private static final Map<String, DailyUnit> WIND = units(
            "m/s",
            DailyUnit.SAME,
            "km/h",
            DailyUnit.KM_PER_HOUR,
            "km/d",
            DailyUnit.KM_PER_DAY,
            "mph",
            DailyUnit.MILE_PER_HOUR,
            "knots",
            DailyUnit.KNOT,
            "kn",
            DailyUnit.KNOT);
    private static final Map<String, DailyUnit> PRESSURE = units(
            "kPa", DailyUnit.SAME, "hPa", DailyUnit.HECTOPASCAL, "mbar", DailyUnit.HECTOPASCAL, "Pa", DailyUnit.PASCAL);
    private static final Map<String, DailyUnit> SUNSHINE =
            units("h", DailyUnit.SAME, "min", DailyUnit.MINUTES, "s", DailyUnit.SECONDS);
    private static final Map<String, DailyUnit> HUMIDITY = units("%", DailyUnit.SAME, "fraction", DailyUnit.FRACTION);
    private static final Map<String, DailyUnit> MASS_RATIO =
            units("kg/kg", DailyUnit.SAME, "g/kg", DailyUnit.GRAM_PER_KG);

    private WeatherUnits() {}

    private static Map<String, DailyUnit> units(Object... namesAndUnits) {
        Map<String, DailyUnit> units = new LinkedHashMap<>();
        for (int i = 0; i < namesAndUnits.length; i += 2) {
            units.put((String) namesAndUnits[i], (DailyUnit) namesAndUnits[i + 1]);
        }
        return units;
    }

    private static Map<String, DailyUnit> of(RawVariable variable) {
        return switch (variable) {
            case TMIN, TMAX, TMEAN, DEW_POINT -> TEMPERATURE;
            case RAIN -> RAIN;
            case SOLAR -> SOLAR;
            case WIND -> WIND;
            case VAPOUR_PRESSURE -> PRESSURE;
            case SUNSHINE -> SUNSHINE;
            case SPECIFIC_HUMIDITY -> MASS_RATIO;
            case HUMIDITY_MIN, HUMIDITY_MAX, HUMIDITY_MEAN -> HUMIDITY;
        };
    }

    /** Returns the units of a variable, our own first. */
    public static List<String> names(RawVariable variable) {
        return List.copyOf(of(variable).keySet());
    }

    /** Returns a unit by name; case, blanks and raised digits do not matter. */
    static @Nullable DailyUnit find(RawVariable variable, String name) {
        for (Map.Entry<String, DailyUnit> entry : of(variable).entrySet()) {
            if (plain(entry.getKey()).equals(plain(name))) {
                return entry.getValue();
            }
        }
        return null;
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT)
                .replace(" ", "")
                .replace("°", "")
                .replace("deg", "")
                .replace("²", "2")
                .replace("/day", "/d");
    }
}
