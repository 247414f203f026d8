package org.thirstline.model.error;

/** Guards for constructors: a value outside its limits is refused with its name, unit and limits. */
public final class Check {

    private Check() {}

    /**
     * Returns the value if it lies within closed limits.
     *
     * @param name what the value is
     * @param value the value
     * @param unit its unit
     * @param lower smallest allowed value
     * @param upper largest allowed value
     * @return the value
     * @throws InputException if it is not a number or outside the limits
     */
    public static double range(String name, double value, String unit, double lower, double upper) {
        if (!(value >= lower && value <= upper)) {
            throw new InputException(ModelError.VALUE_OUT_OF_RANGE, name, value, unit, lower, upper, unit);
        }
        return value;
    }

    /**
     * Requires a strict order between two values.
     *
     * @param smallName name of the value that must be smaller
     * @param small its value
     * @param largeName name of the value that must be larger
     * @param large its value
     * @param unit their unit
     * @throws InputException if {@code small >= large}
     */
    public static void below(String smallName, double small, String largeName, double large, String unit) {
        if (!(small < large)) {
            throw new InputException(ModelError.VALUES_OUT_OF_ORDER, smallName, small, largeName, large, unit);
        }
    }
}
