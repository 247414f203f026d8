package org.thirstline.charts;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/** Numbers as text, the same in every locale. */
public final class Numbers {

    private static final char MINUS = '\u2212';

    private static final DecimalFormatSymbols TICK_SYMBOLS = tickSymbols();
    private static final double[] POWERS = {1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};

    /** Below this, the error of a scaled number lies far below {@link #DOUBT}. */
    private static final double LARGEST = 1e9;

    /** Nearer to a half than this, a scaled number may lie on the wrong side of it. */
    private static final double DOUBT = 1e-4;

    private static final int LONGEST = 24;

    /** What {@link #scaled} returns where rounding is not certain. */
    public static final int UNCERTAIN = -1;

    private Numbers() {}

    private static DecimalFormatSymbols tickSymbols() {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setMinusSign(MINUS);
        return symbols;
    }

    /**
     * Writes a number with a fixed count of decimals, a true minus sign, and never as minus zero.
     *
     * @param value the number
     * @param decimals how many
     */
    public static String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return "\u2013";
        }
        String text = plain(Math.abs(value), decimals);
        boolean zero = text.chars().allMatch(c -> c == '0' || c == '.');
        return value < 0.0 && !zero ? MINUS + text : text;
    }

    /**
     * Writes a finite number, rounded half up as its shortest decimal form stands; a formatter would cost a cold start dear.
     *
     * @param value the number
     * @param decimals how many, 0 or more
     */
    public static String plain(double value, int decimals) {
        int scaled = scaled(value, decimals);
        return scaled == UNCERTAIN ? exact(value, decimals) : text(value < 0.0, scaled, decimals);
    }

    /**
     * Returns the size of a number in units of its last decimal, rounded, or {@link #UNCERTAIN} if it is large, not finite, or so near to a
     * half that the last places of the product decide.
     *
     * @param value the number; its sign does not matter
     * @param decimals how many, 0 or more
     */
    public static int scaled(double value, int decimals) {
        if (decimals >= POWERS.length) {
            return UNCERTAIN;
        }
        double scaled = Math.abs(value) * POWERS[decimals];
        int whole = (int) scaled;
        double rest = scaled - whole;
        if (!(scaled < LARGEST) || Math.abs(rest - 0.5) < DOUBT) {
            return UNCERTAIN;
        }
        return rest > 0.5 ? whole + 1 : whole;
    }

    private static String text(boolean negative, int scaled, int decimals) {
        char[] text = new char[LONGEST];
        int at = LONGEST;
        int left = scaled;
        for (int place = 0; place <= decimals || left > 0; place++) {
            if (place == decimals && decimals > 0) {
                text[--at] = '.';
            }
            text[--at] = (char) ('0' + left % 10);
            left /= 10;
        }
        if (negative && scaled > 0) {
            text[--at] = '-';
        }
        return new String(text, at, LONGEST - at);
    }

    /** What {@link #plain} stands for, by decimal arithmetic. */
    static String exact(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /**
     * Writes a number with about so many significant digits, never in powers of ten.
     *
     * @param value the number
     * @param digits how many
     */
    public static String significant(double value, int digits) {
        if (value == 0.0 || !Double.isFinite(value)) {
            return fixed(value, 0);
        }
        int decimals = digits - 1 - (int) Math.floor(Math.log10(Math.abs(value)));
        return fixed(value, Math.max(0, Math.min(6, decimals)));
    }

    /** Returns the format of tick labels. */
    static DecimalFormat ticks(double step) {
        int decimals = step >= 1.0 ? 0 : (int) Math.ceil(-Math.log10(step) - 1e-9);
        return new DecimalFormat(decimals == 0 ? "0" : "0." + "0".repeat(decimals), TICK_SYMBOLS);
    }

    /**
     * Returns a step of 1, 2 or 5 times a power of ten that divides a span into at most so many parts.
     *
     * @param span what to divide
     * @param parts how often at most
     */
    static double niceStep(double span, int parts) {
        double raw = Math.max(span, 1e-9) / Math.max(1, parts);
        double power = Math.pow(10.0, Math.floor(Math.log10(raw)));
        for (double factor : new double[] {1.0, 2.0, 5.0}) {
            if (factor * power >= raw * (1.0 - 1e-9)) {
                return factor * power;
            }
        }
        return 10.0 * power;
    }
}
