package org.thirstline.calibration.sensitivity;

import org.thirstline.calibration.response.Interval;

/**
 * How much of one output's variance an input answers for. Immutable and thread-safe.
 *
 * @param name the input
 * @param first share due to the input alone; NaN if the output does not vary
 * @param firstInterval its 95 % bootstrap interval
 * @param total share due to the input alone and with others; near 0 the input may be fixed anywhere in its range
 * @param totalInterval its 95 % bootstrap interval
 */
public record SobolIndex(String name, double first, Interval firstInterval, double total, Interval totalInterval) {

    /** An input decides if its total index is beyond that even at the lower end of its interval (our choice). */
    public static final double DECIDES = 0.05;

    /** Returns whether the input decides beyond doubt. */
    public boolean decides() {
        return totalInterval.lower() > DECIDES;
    }
}
