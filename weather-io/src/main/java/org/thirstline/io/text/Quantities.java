package org.thirstline.io.text;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.error.InputException;

/** Reads numbers with units. Decimal point, no thousands sign. */
final class Quantities {

    static final String NUMBER = "[-+]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][-+]?[0-9]+)?";

    private static final Pattern QUANTITY = Pattern.compile("(" + NUMBER + ")\\s*(.*)");

    private Quantities() {}

    /** Returns the number, or null if the text is none. */
    static @Nullable Double number(String text) {
        return text.matches(NUMBER) ? Double.valueOf(text) : null;
    }

    /**
     * Returns the value in the unit of the dimension.
     *
     * @param key the plain key, for the advice in messages
     */
    static double read(String key, String text, Dimension dimension) {
        Matcher matcher = QUANTITY.matcher(text.strip());
        if (!matcher.matches()) {
            throw new InputException(
                    InputFileError.WRONG_KIND,
                    "'" + text + "'",
                    "a number and a unit, as in '1.5 " + dimension.unit() + "'");
        }
        String number = matcher.group(1);
        String unit = normalised(matcher.group(2));
        if (unit.isEmpty()) {
            throw new InputException(
                    InputFileError.MISSING_UNIT,
                    text,
                    key + ": " + number + " " + dimension.unit(),
                    key + "_" + dimension.suffix() + ": " + number);
        }
        Double factor = dimension.factors().get(unit);
        if (factor == null) {
            throw new InputException(
                    InputFileError.WRONG_UNIT,
                    text,
                    unit,
                    dimension.words(),
                    String.join(", ", dimension.factors().keySet()));
        }
        // In decimal arithmetic, so that 35 % is 0.35 and messages show what was written.
        return new BigDecimal(number).multiply(BigDecimal.valueOf(factor)).doubleValue();
    }

    private static String normalised(String unit) {
        return unit.strip()
                .replace('³', '3')
                .replace('²', '2')
                .replace('μ', 'µ')
                .replaceAll("\\s+", " ");
    }
}
