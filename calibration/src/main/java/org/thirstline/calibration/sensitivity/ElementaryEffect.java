package org.thirstline.calibration.sensitivity;

/**
 * What moving one input does to one output, over the whole space of inputs: in units of the output, for a move through the input's whole
 * range. Immutable and thread-safe.
 *
 * @param name the input
 * @param mean mean of the effects; opposite effects cancel
 * @param meanAbsolute mean size of the effects: how much the input matters
 * @param deviation standard deviation of the effects: how far the effect depends on this and other inputs' values
 * @param meanAbsoluteError standard error of the mean size
 */
public record ElementaryEffect(
        String name, double mean, double meanAbsolute, double deviation, double meanAbsoluteError) {

    static ElementaryEffect of(String name, double[] effects) {
        double mean = 0.0;
        double size = 0.0;
        for (double effect : effects) {
            mean += effect / effects.length;
            size += Math.abs(effect) / effects.length;
        }
        double square = 0.0;
        double sizeSquare = 0.0;
        for (double effect : effects) {
            square += (effect - mean) * (effect - mean) / (effects.length - 1);
            sizeSquare += (Math.abs(effect) - size) * (Math.abs(effect) - size) / (effects.length - 1);
        }
        return new ElementaryEffect(name, mean, size, Math.sqrt(square), Math.sqrt(sizeSquare / effects.length));
    }
}
