package org.thirstline.io.plots;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.model.units.Units;

/** Units in which people write dry matter per ground area. */
public enum YieldUnit {
    /** Megagrams per hectare. */
    MG_HA("Mg/ha", 1.0),
    /** Metric tons per hectare, the same. */
    T_HA("t/ha", 1.0),
    /** Kilograms per hectare. */
    KG_HA("kg/ha", 0.001),
    /** Grams per square metre. */
    G_M2("g/m2", Units.MG_HA_PER_G_M2),
    /** Short tons of 2000 lb per acre. */
    SHORT_TON_ACRE("short ton/acre", 1.0 / Units.SHORT_TON_ACRE_PER_MG_HA);

    private final String text;
    private final double mgHa;

    YieldUnit(String text, double mgHa) {
        this.text = text;
        this.mgHa = mgHa;
    }

    /** Returns how it is written. */
    public String text() {
        return text;
    }

    /** Returns a value of this unit in Mg/ha. */
    public double toMgHa(double value) {
        return value * mgHa;
    }

    /** Returns the unit that a text names; {@code g/m²}, {@code t ha-1} and capital letters are understood. */
    public static Optional<YieldUnit> of(String text) {
        String plain = text.strip()
                .toLowerCase(Locale.ROOT)
                .replace('²', '2')
                .replace("⁻¹", "-1")
                .replace("⁻2", "-2")
                .replaceAll("\\s*(ha|acre)-1$", "/$1")
                .replaceAll("\\s*m-2$", "/m2")
                .replace("tons", "ton")
                .replaceAll("\\s*/\\s*", "/");
        return Arrays.stream(values())
                .filter(unit -> unit.text.toLowerCase(Locale.ROOT).equals(plain))
                .findFirst();
    }

    /** Returns all units as they are written. */
    public static List<String> texts() {
        return Arrays.stream(values()).map(YieldUnit::text).toList();
    }
}
