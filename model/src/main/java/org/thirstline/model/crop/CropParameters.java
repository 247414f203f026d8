package org.thirstline.model.crop;

import java.util.Map;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/** One value for every {@link CropParameter}, each inside its limits and in order with its neighbours. Immutable and thread-safe. */
public final class CropParameters {

    private final String name;
    private final double[] values;

    private CropParameters(String name, double[] values) {
        this.name = name;
        this.values = values;
    }

    /**
     * Creates a set.
     *
     * @param name the crop's name
     * @param values a value for every parameter
     * @return the set
     * @throws InputException if a value is absent, outside its limits, or out of order with another
     */
    public static CropParameters of(String name, Map<CropParameter, Double> values) {
        double[] copied = new double[CropParameter.values().length];
        for (CropParameter parameter : CropParameter.values()) {
            Double value = values.get(parameter);
            if (value == null) {
                throw new InputException(ModelError.VALUE_MISSING, parameter.key());
            }
            copied[parameter.ordinal()] = checked(parameter, value);
        }
        return new CropParameters(name, copied).inOrder();
    }

    /** Returns the crop's name. */
    public String name() {
        return name;
    }

    /**
     * Returns one value, in the unit of the parameter.
     *
     * @param parameter which parameter
     */
    public double get(CropParameter parameter) {
        return values[parameter.ordinal()];
    }

    /**
     * Returns a copy of this set with one value changed.
     *
     * @param parameter which parameter
     * @param value its new value
     * @return the new set
     * @throws InputException if the value is outside its limits or out of order with another
     */
    public CropParameters with(CropParameter parameter, double value) {
        double[] changed = values.clone();
        changed[parameter.ordinal()] = checked(parameter, value);
        return new CropParameters(name, changed).inOrder();
    }

    /**
     * Returns a copy of this set with several values changed at once: their order is that of the outcome, not of the steps on the way.
     *
     * @param changes new values; not modified
     * @return the new set
     * @throws InputException if a value is outside its limits or out of order with another
     */
    public CropParameters with(Map<CropParameter, Double> changes) {
        double[] changed = values.clone();
        changes.forEach((parameter, value) -> changed[parameter.ordinal()] = checked(parameter, value));
        return new CropParameters(name, changed).inOrder();
    }

    private static double checked(CropParameter parameter, double value) {
        return Check.range(parameter.key(), value, parameter.unit(), parameter.lowest(), parameter.highest());
    }

    private CropParameters inOrder() {
        below(CropParameter.LEAF_BASE, CropParameter.LEAF_UPPER);
        below(CropParameter.GROWTH_MIN, CropParameter.GROWTH_OPTIMUM_LOW);
        below(CropParameter.GROWTH_OPTIMUM_LOW, CropParameter.GROWTH_OPTIMUM_HIGH);
        below(CropParameter.GROWTH_OPTIMUM_HIGH, CropParameter.GROWTH_MAX);
        return this;
    }

    private void below(CropParameter small, CropParameter large) {
        Check.below(small.key(), get(small), large.key(), get(large), small.unit());
    }
}
