package org.thirstline.validation.catalogue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/** Numbers as text, the same on every machine. */
public final class Numbers {

    private Numbers() {}

    /** Returns a number with five significant digits; an en dash for none. */
    public static String five(double value) {
        return significant(value, 5);
    }

    /** Returns a number with some significant digits; an en dash for none. */
    public static String significant(double value, int digits) {
        if (!Double.isFinite(value)) {
            return "–";
        }
        if (value == 0.0) {
            return "0";
        }
        double size = Math.abs(value);
        if (size < 1.0e-4 || size >= 1.0e7) {
            return String.format(Locale.ROOT, "%." + (digits - 1) + "e", value);
        }
        return new BigDecimal(value)
                .round(new MathContext(digits))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Returns a coordinate of a picture. */
    static String coordinate(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
