package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A column of the plain format: its name says quantity and unit, and for wind the height.
 *
 * @param variable the quantity
 * @param unit the unit
 * @param heightM height of a wind speed [m], else 2
 */
record PlainColumn(RawVariable variable, DailyUnit unit, double heightM) {

    private static final Map<String, DailyUnit> TEMPERATURE =
            Map.of("c", DailyUnit.SAME, "f", DailyUnit.FAHRENHEIT, "k", DailyUnit.KELVIN);
    private static final Map<String, DailyUnit> RAIN = Map.of("mm", DailyUnit.SAME, "in", DailyUnit.INCH);
    private static final Map<String, DailyUnit> SOLAR = Map.of(
            "mj_m2", DailyUnit.SAME,
            "w_m2", DailyUnit.WATT_PER_M2,
            "j_cm2", DailyUnit.JOULE_PER_CM2,
            "kwh_m2", DailyUnit.KILOWATT_HOUR_PER_M2,
            "cal_cm2", DailyUnit.CALORIE_PER_CM2);
    private static final Map<String, DailyUnit> WIND = Map.of(
            "m_s", DailyUnit.SAME,
            "km_h", DailyUnit.KM_PER_HOUR,
            "km_d", DailyUnit.KM_PER_DAY,
            "mph", DailyUnit.MILE_PER_HOUR,
            "kn", DailyUnit.KNOT);
    private static final Map<String, DailyUnit> PRESSURE =
            Map.of("kpa", DailyUnit.SAME, "hpa", DailyUnit.HECTOPASCAL, "pa", DailyUnit.PASCAL);
    private static final Map<String, DailyUnit> SUNSHINE =
            Map.of("h", DailyUnit.SAME, "min", DailyUnit.MINUTES, "s", DailyUnit.SECONDS);
    private static final Map<String, DailyUnit> MASS_RATIO =
            Map.of("kg_kg", DailyUnit.SAME, "g_kg", DailyUnit.GRAM_PER_KG);
    private static final Map<String, DailyUnit> PERCENT = Map.of("pct", DailyUnit.SAME);

    private static final double LOWEST_ANEMOMETER_M = 0.5;
    private static final double HIGHEST_ANEMOMETER_M = 200.0;

    /** Returns what a column name says, or null if it is not one of ours. */
    static @Nullable PlainColumn of(String name) {
        RawVariable variable = quantity(name);
        if (variable == null || name.length() == variable.shortName().length()) {
            return null;
        }
        String rest = name.substring(variable.shortName().length() + 1);
        if (variable == RawVariable.WIND) {
            return wind(rest);
        }
        DailyUnit unit = units(variable).get(rest);
        return unit == null ? null : new PlainColumn(variable, unit, 2.0);
    }

    private static @Nullable PlainColumn wind(String heightAndUnit) {
        int metre = heightAndUnit.indexOf("m_");
        if (metre <= 0) {
            return null;
        }
        double height = Numbers.parse(heightAndUnit, 0, metre);
        DailyUnit unit = WIND.get(heightAndUnit.substring(metre + 2));
        boolean possible = height >= LOWEST_ANEMOMETER_M && height <= HIGHEST_ANEMOMETER_M;
        return unit == null || !possible ? null : new PlainColumn(RawVariable.WIND, unit, height);
    }

    /** Returns the quantity that a column name starts with, or null. */
    static @Nullable RawVariable quantity(String name) {
        for (RawVariable variable : RawVariable.values()) {
            String start = variable.shortName();
            if (name.startsWith(start) && (name.length() == start.length() || name.charAt(start.length()) == '_')) {
                return variable;
            }
        }
        return null;
    }

    /** Returns the allowed names of a quantity; for wind with heights of 2 and 10 m as examples. */
    static List<String> names(RawVariable variable) {
        List<String> names = new ArrayList<>();
        names.add(variable.column());
        for (String unit : new TreeMap<>(units(variable)).keySet()) {
            if (variable == RawVariable.WIND) {
                names.add("wind_2m_" + unit);
                names.add("wind_10m_" + unit);
            } else {
                names.add(variable.shortName() + "_" + unit);
            }
        }
        return names.stream().distinct().toList();
    }

    private static Map<String, DailyUnit> units(RawVariable variable) {
        return switch (variable) {
            case TMIN, TMAX, TMEAN, DEW_POINT -> TEMPERATURE;
            case RAIN -> RAIN;
            case SOLAR -> SOLAR;
            case WIND -> WIND;
            case VAPOUR_PRESSURE -> PRESSURE;
            case SUNSHINE -> SUNSHINE;
            case SPECIFIC_HUMIDITY -> MASS_RATIO;
            case HUMIDITY_MIN, HUMIDITY_MAX, HUMIDITY_MEAN -> PERCENT;
        };
    }
}
