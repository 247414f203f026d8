package org.thirstline.calibration.skill;

import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;

/** Guards of paired values. */
final class Pairs {

    private Pairs() {}

    static void requireSameLength(String first, double[] firstValues, String second, double[] secondValues) {
        if (firstValues.length != secondValues.length) {
            throw new InputException(
                    CalibrationError.LENGTHS_DIFFER, first, firstValues.length, second, secondValues.length);
        }
    }

    static void requireFinite(String name, double[] values) {
        for (double value : values) {
            Check.range(name, value, "", -Double.MAX_VALUE, Double.MAX_VALUE);
        }
    }
}
