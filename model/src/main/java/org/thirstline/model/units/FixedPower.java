package org.thirstline.model.units;

/**
 * x to one fixed power, by tables in the manner of {@link Rise}: x = 2^k · c · (1 + r) with c the middle of one of 256 steps of the significand and
 * |r| at most 1/512; the powers of 2^k and c from tables, that of 1 + r by its binomial series. A growing day takes one such power, which as
 * {@link Math#pow} was its dearest operation. Immutable and thread-safe.
 */
public final class FixedPower {

    private static final int STEP_BITS = 8;
    private static final int STEPS = 1 << STEP_BITS;
    private static final int FRACTION_BITS = 52;
    private static final int BIAS = 1023;
    private static final long FRACTION_MASK = (1L << FRACTION_BITS) - 1;
    private static final long ONE = Double.doubleToRawLongBits(1.0);

    private final double exponent;
    private final double second;
    private final double third;
    private final double fourth;
    private final double fifth;
    private final double[] reciprocals = new double[STEPS];
    private final double[] powers = new double[STEPS];
    private final double[] powersOfTwo = new double[2 * BIAS + 1];

    /**
     * Prepares a power.
     *
     * @param exponent -1 to 1, for which every result is an ordinary number
     */
    public FixedPower(double exponent) {
        this.exponent = exponent;
        second = exponent * (exponent - 1.0) / 2.0;
        third = second * (exponent - 2.0) / 3.0;
        fourth = third * (exponent - 3.0) / 4.0;
        fifth = fourth * (exponent - 4.0) / 5.0;
        for (int step = 0; step < STEPS; step++) {
            reciprocals[step] = 1.0 / (1.0 + (step + 0.5) / STEPS);
            powers[step] = StrictMath.pow(reciprocals[step], -exponent);
        }
        for (int k = -BIAS; k <= BIAS; k++) {
            powersOfTwo[k + BIAS] = StrictMath.pow(Math.scalb(1.0, k), exponent);
        }
    }

    /**
     * Returns x to the power, to three last places: two tables, their product, the sum, and r each round once. What is not above 0 or no ordinary
     * number is left to {@link Math#pow}.
     *
     * @param x any value
     */
    public double of(double x) {
        if (!(x >= Double.MIN_NORMAL && x <= Double.MAX_VALUE)) {
            return Math.pow(x, exponent);
        }
        long bits = Double.doubleToRawLongBits(x);
        int step = (int) (bits >>> (FRACTION_BITS - STEP_BITS)) & (STEPS - 1);
        double r = Double.longBitsToDouble((bits & FRACTION_MASK) | ONE) * reciprocals[step] - 1.0;
        double power = powers[step] * powersOfTwo[(int) (bits >>> FRACTION_BITS)];
        double square = r * r;
        double rest = r * exponent + square * (second + r * third + square * (fourth + r * fifth));
        return power + power * rest;
    }
}
