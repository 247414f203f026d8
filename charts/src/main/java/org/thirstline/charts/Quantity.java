package org.thirstline.charts;

import java.util.regex.Pattern;

/**
 * What a value of a calibration measures. Values are in SI; those of dry matter per area and of water are shown in the reader's units. Immutable
 * and thread-safe.
 *
 * @param words what it is, e.g. "harvested dry matter"
 * @param unit its SI unit as text, empty where there is none
 */
public record Quantity(String words, String unit) {

    private static final int DIGITS = 2;

    private static final Pattern INVERSE = Pattern.compile("(\\([^)]*\\)|[^ /(]+)\u207b([\u00b9\u00b2\u00b3])");

    /** Harvested dry matter. */
    public static final Quantity HARVEST = new Quantity("harvested dry matter", UnitSystem.SI.yieldUnit());

    /** Returns a value, or a difference of values, in the reader's units. */
    double shown(double value, UnitSystem units) {
        if (isDryMatter()) {
            return units.dryMatter(value);
        }
        return isWater() ? units.water(value) : value;
    }

    /** Returns the unit that the reader sees. */
    String unit(UnitSystem units) {
        if (isDryMatter()) {
            return units.yieldUnit();
        }
        return isWater() ? units.waterUnit() : plain(unit);
    }

    /** Returns a value with its unit, a yield to one decimal, anything else to two or three digits. */
    public String text(double value, UnitSystem units) {
        String unit = unit(units);
        return number(value, units) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** Returns a value without its unit. */
    public String number(double value, UnitSystem units) {
        double shown = shown(value, units);
        if (isDryMatter()) {
            return Numbers.fixed(shown, 1);
        }
        return Numbers.significant(shown, Math.abs(shown) < 10.0 ? DIGITS : DIGITS + 1);
    }

    /** Returns words with the unit behind them, for an axis. */
    String axis(UnitSystem units) {
        return withUnit(words, unit(units));
    }

    /** Returns a name with its unit behind it. */
    static String withUnit(String name, String unit) {
        String plain = plain(unit);
        return plain.isEmpty() ? name : name + " (" + plain + ")";
    }

    /** Writes a unit without negative exponents, which the typeface lacks: g m⁻² as g/m²; one for none as nothing. */
    static String plain(String unit) {
        String text = unit.strip();
        if (text.equals("1")) {
            return "";
        }
        String divided = INVERSE.matcher(text).replaceAll(found -> "/" + found.group(1) + power(found.group(2)));
        String tidy = divided.replace(" /", "/");
        return tidy.startsWith("/") ? "1" + tidy : tidy;
    }

    private static String power(String digit) {
        return digit.equals("¹") ? "" : digit;
    }

    private boolean isDryMatter() {
        return unit.equals(UnitSystem.SI.yieldUnit());
    }

    private boolean isWater() {
        return unit.equals(UnitSystem.SI.waterUnit());
    }
}
