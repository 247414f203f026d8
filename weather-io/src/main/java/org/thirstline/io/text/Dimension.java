package org.thirstline.io.text;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.thirstline.model.units.Units;

/**
 * What a value measures. Every such value is written in one of two ways: a key that ends in the unit with a bare number
 * ({@code elevation_m: 228}), or the plain key with number and unit ({@code elevation: 748 ft}).
 */
public enum Dimension {
    /** In metres. */
    LENGTH("length", "m", "m", "m", 1, "cm", 0.01, "mm", 0.001, "ft", Units.M_PER_FOOT, "in", Units.MM_PER_INCH / 1000),
    /** In millimetres. */
    WATER_DEPTH("water depth", "mm", "mm", "mm", 1, "cm", 10, "in", Units.MM_PER_INCH),
    /** In hectares. The acre is the international one. */
    AREA("area", "ha", "ha", "ha", 1, "m2", 1e-4, "acre", 0.40468564224, "acres", 0.40468564224),
    /** In millimetres of water per metre of soil. */
    AVAILABLE_WATER(
            "available water capacity",
            "mm/m",
            "mm_per_m",
            "mm/m",
            1,
            "mm/cm",
            100,
            "cm/m",
            10,
            "in/ft",
            1000.0 / 12,
            "in/in",
            1000,
            "m3/m3",
            1000,
            "%",
            10),
    /** In cubic metres per cubic metre. */
    WATER_CONTENT("volumetric water content", "m3/m3", "m3_m3", "m3/m3", 1, "cm3/cm3", 1, "%", 0.01, "% vol", 0.01),
    /** In percent. */
    PERCENT("share", "%", "pct", "%", 1, "pct", 1, "percent", 1),
    /** In percent of field capacity. */
    WETNESS("wetness of the topsoil", "% of field capacity", "pct_of_field_capacity", "% of field capacity", 1),
    /** In degrees, decimal. */
    ANGLE("angle", "deg", "deg", "deg", 1, "°", 1, "degrees", 1),
    /** In days. */
    DURATION("time", "days", "days", "days", 1, "day", 1, "d", 1),
    /** Per day. */
    DAILY_RATE("daily share", "per day", "per_day", "per day", 1, "/day", 1, "/d", 1, "% per day", 0.01),
    /** In millimetres per day. */
    WATER_FLUX(
            "water flux",
            "mm/day",
            "mm_per_day",
            "mm/day",
            1,
            "mm/d",
            1,
            "mm/h",
            24,
            "in/day",
            Units.MM_PER_INCH,
            "in/h",
            24 * Units.MM_PER_INCH),
    /** In parts per million by volume. */
    MIXING_RATIO("mixing ratio", "ppm", "ppm", "ppm", 1, "µmol/mol", 1),
    /** Plants per square metre. */
    PLANT_DENSITY(
            "planting density",
            "per m2",
            "per_m2",
            "per m2",
            1,
            "per ha",
            1e-4,
            "per acre",
            1e-4 / 0.40468564224,
            "per ft2",
            1 / (Units.M_PER_FOOT * Units.M_PER_FOOT));

    private final String words;
    private final String unit;
    private final String suffix;
    private final Map<String, Double> factors;

    Dimension(String words, String unit, String suffix, Object... unitsAndFactors) {
        this.words = words;
        this.unit = unit;
        this.suffix = suffix;
        Map<String, Double> read = new LinkedHashMap<>();
        for (int i = 0; i < unitsAndFactors.length; i += 2) {
            read.put((String) unitsAndFactors[i], ((Number) unitsAndFactors[i + 1]).doubleValue());
        }
        this.factors = Collections.unmodifiableMap(read);
    }

    /** Returns what is measured, in words. */
    public String words() {
        return words;
    }

    /** Returns the unit that values are turned into. */
    public String unit() {
        return unit;
    }

    /** Returns that unit as the end of a key. */
    public String suffix() {
        return suffix;
    }

    /** Returns the accepted units with the number of our unit in each of them, our own first. */
    public Map<String, Double> factors() {
        return factors;
    }
}
