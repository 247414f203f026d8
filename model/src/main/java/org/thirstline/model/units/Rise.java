package org.thirstline.model.units;

/**
 * The saturating rise 1 - exp(-x) that light, leaf, height and litter share, by a table after Tang (1989, ACM Transactions on Mathematical Software
 * 15:144-157): exp(-x) = 2^(k/256) · exp(r) with |r| at most ln 2 / 512, the power from the table, the rest by its Taylor series. A day takes four
 * such terms, and they are a good part of it; this is half again as fast as {@link Math#exp}. Stateless and thread-safe.
 */
public final class Rise {

    private static final int STEP_BITS = 8;
    private static final int STEPS = 1 << STEP_BITS;
    private static final int FRACTION_BITS = 52;
    private static final double STEP = Math.log(2.0) / STEPS;
    private static final double PER_STEP = STEPS / Math.log(2.0);

    /** Where exp(-x) is still an ordinary number; beyond it, and for what is no number, the library decides. */
    private static final double LARGEST = 700.0;

    /** Adding it rounds to a whole number, which then stands in the last bits of the sum. */
    private static final double ROUNDING = 0x1.8p52;

    /** 2^(i/256) as bits, less the i that k will add to them. */
    private static final long[] POWERS = powers();

    private Rise() {}

    /**
     * Returns 1 - exp(-x), to the last place of a 1 (2.3e-16).
     *
     * @param x 0 or more
     */
    public static double of(double x) {
        if (!(x >= 0.0 && x <= LARGEST)) {
            return 1.0 - Math.exp(-x);
        }
        double rounded = ROUNDING - x * PER_STEP;
        long k = Double.doubleToRawLongBits(rounded);
        double r = (ROUNDING - rounded) * STEP - x;
        double power = Double.longBitsToDouble(POWERS[(int) k & (STEPS - 1)] + (k << (FRACTION_BITS - STEP_BITS)));
        double square = r * r;
        double rest = r + square * (1.0 / 2.0 + r * (1.0 / 6.0) + square * (1.0 / 24.0));
        return 1.0 - (power + power * rest);
    }

    private static long[] powers() {
        long[] powers = new long[STEPS];
        for (int i = 0; i < STEPS; i++) {
            long bits = Double.doubleToRawLongBits(StrictMath.pow(2.0, i / (double) STEPS));
            powers[i] = bits - ((long) i << (FRACTION_BITS - STEP_BITS));
        }
        return powers;
    }
}
