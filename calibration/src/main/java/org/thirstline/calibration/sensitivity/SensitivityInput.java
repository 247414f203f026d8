package org.thirstline.calibration.sensitivity;

import java.util.function.DoubleUnaryOperator;
import org.thirstline.model.error.Check;

/**
 * An input that varies. Immutable; as thread-safe as the quantile function.
 *
 * @param name what it is
 * @param quantile value below which a given share, 0 to 1, of the input's distribution lies; finite at 0 and 1
 */
public record SensitivityInput(String name, DoubleUnaryOperator quantile) {

    /**
     * Returns an input with every value between two ends alike.
     *
     * @param name what it is
     * @param lower lower end
     * @param upper upper end
     */
    public static SensitivityInput between(String name, double lower, double upper) {
        Check.range("lower end of " + name, lower, "", -Double.MAX_VALUE, Double.MAX_VALUE);
        Check.range("upper end of " + name, upper, "", -Double.MAX_VALUE, Double.MAX_VALUE);
        Check.below("lower end of " + name, lower, "upper end", upper, "");
        return new SensitivityInput(name, share -> lower + share * (upper - lower));
    }
}
