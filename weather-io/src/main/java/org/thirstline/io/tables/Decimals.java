package org.thirstline.io.tables;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;

/** Decimals of result columns by their unit: a tenth or less of what can be measured. */
public final class Decimals {

    private static final int OTHERWISE = 4;

    private static final Map<String, Integer> BY_UNIT = byUnit();

    private Decimals() {}

    /** Returns the decimals of a unit, as units are written in the model. */
    public static int of(String unit) {
        return BY_UNIT.getOrDefault(unit, OTHERWISE);
    }

    static boolean isKnown(String unit) {
        return BY_UNIT.containsKey(unit);
    }

    private static Map<String, Integer> byUnit() {
        Map<String, Integer> decimals = new HashMap<>();
        Stream.of("d", "m³/ha").forEach(unit -> decimals.put(unit, 0));
        Stream.of("°C", "m", "%", "% wet basis", "GJ/ha", "m⁻²", "MJ/m²", "MJ m⁻² d⁻¹")
                .forEach(unit -> decimals.put(unit, 2));
        Stream.of("mm", "mm/d", "Mg/ha", "g/m²", "g m⁻² d⁻¹", "kPa", "m/s").forEach(unit -> decimals.put(unit, 3));
        Stream.of("1", "m²/m²").forEach(unit -> decimals.put(unit, 4));
        return Map.copyOf(decimals);
    }
}
