package org.thirstline.io.tables;

/** Decimals of result columns by their unit: a tenth or less of what can be measured. */
public final class Decimals {

    private static final int OTHERWISE = 4;

    private Decimals() {}

    /** Returns the decimals of a unit, as units are written in the model. */
    public static int of(String unit) {
        return switch (unit) {
            case "d", "m³/ha" -> 0;
            case "°C", "m", "%", "% wet basis", "GJ/ha", "m⁻²", "MJ/m²", "MJ m⁻² d⁻¹" -> 2;
            case "mm", "mm/d", "Mg/ha", "g/m²", "g m⁻² d⁻¹", "kPa", "m/s" -> 3;
            case "1", "m²/m²" -> 4;
            default -> OTHERWISE;
        };
    }
}
