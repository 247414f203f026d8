package org.thirstline.io.climate;

import java.util.EnumMap;
import java.util.Map;

/** Normals of a month or season. Immutable and thread-safe. */
public final class ClimateNormal {

    /**
     * One normal.
     *
     * @param value mean over the years that count, NaN if none does
     * @param years years that count
     * @param measuredPct share of their days on which the value was measured [%]; NaN where it is always computed
     */
    public record Value(double value, int years, double measuredPct) {}

    private final String name;
    private final Map<ClimateVariable, Value> values;

    ClimateNormal(String name, Map<ClimateVariable, Value> values) {
        this.name = name;
        this.values = new EnumMap<>(values);
    }

    /** Returns the month as two digits, or {@code season}. */
    public String name() {
        return name;
    }

    /** Returns a normal with what stands behind it. */
    public Value of(ClimateVariable variable) {
        Value value = values.get(variable);
        return value == null ? new Value(Double.NaN, 0, Double.NaN) : value;
    }

    /** Returns a normal, NaN if no year counts. */
    public double value(ClimateVariable variable) {
        return of(variable).value();
    }

    /** Returns the number of years behind a normal. */
    public int years(ClimateVariable variable) {
        return of(variable).years();
    }
}
