package org.thirstline.charts;

import java.util.Comparator;
import java.util.List;

/**
 * What moving each parameter through its whole range does to one output. Immutable and thread-safe.
 *
 * @param output the output
 * @param where zone or site; may be empty
 * @param effects of the parameters, in any order
 */
public record MorrisView(Quantity output, String where, List<Effect> effects) {

    /** Sorts the effects by size. */
    public MorrisView {
        effects = effects.stream()
                .sorted(Comparator.comparingDouble(effect -> -effect.size()))
                .toList();
    }

    /**
     * The effect of one parameter.
     *
     * @param name the parameter in words
     * @param mean mean effect, with its sign
     * @param size mean size of the effects, mu*
     * @param sizeError standard error of the mean size
     * @param deviation standard deviation of the effects, sigma
     */
    public record Effect(String name, double mean, double size, double sizeError, double deviation) {

        /** Effects of which at least that share goes one way have a direction (our choice). */
        private static final double ONE_WAY = 0.9;

        boolean raises() {
            return mean > 0.0 && mean >= ONE_WAY * size;
        }

        boolean lowers() {
            return mean < 0.0 && -mean >= ONE_WAY * size;
        }
    }
}
