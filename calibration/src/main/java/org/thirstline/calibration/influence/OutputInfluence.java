package org.thirstline.calibration.influence;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.sensitivity.ElementaryEffect;
import org.thirstline.calibration.sensitivity.SobolIndex;

/**
 * What decides one output. Immutable and thread-safe.
 *
 * @param output the output
 * @param standard its value with the standard parameters
 * @param noticeable whether any parameter moves it by more than {@link #NOTICEABLE}; if not, nothing worth a word decides it
 * @param range the middle 90 % of its values with the sampled parameters anywhere in their ranges, all others standard
 * @param effects of every varied parameter, in their order
 * @param indices of the sampled parameters, in their order
 */
public record OutputInfluence(
        InfluenceOutput output,
        double standard,
        boolean noticeable,
        Interval range,
        List<ElementaryEffect> effects,
        List<SobolIndex> indices) {

    /**
     * An output that no parameter moves by more than that share of its value, of the mean harvest for dry matter, hardly varies (our
     * choice).
     */
    public static final double NOTICEABLE = 0.03;

    /** Copies the lists. */
    public OutputInfluence {
        effects = List.copyOf(effects);
        indices = List.copyOf(indices);
    }

    /** Returns the parameters that decide beyond doubt, the strongest first. */
    public List<SobolIndex> deciding() {
        return indices.stream()
                .filter(index -> noticeable && index.decides())
                .sorted(Comparator.comparingDouble(index -> -index.total()))
                .toList();
    }

    /** Returns the share of the spread that no parameter makes alone: what they make only together. */
    public double together() {
        return Math.max(
                0.0,
                Math.min(
                        1.0,
                        1.0 - indices.stream().mapToDouble(SobolIndex::first).sum()));
    }

    /**
     * Returns the effect of a parameter.
     *
     * @param key its key
     */
    public Optional<ElementaryEffect> effect(String key) {
        return effects.stream().filter(effect -> effect.name().equals(key)).findFirst();
    }

    /**
     * Returns the index of a parameter, if it was sampled.
     *
     * @param key its key
     */
    public Optional<SobolIndex> index(String key) {
        return indices.stream().filter(index -> index.name().equals(key)).findFirst();
    }

    double largestEffect() {
        return effects.stream()
                .mapToDouble(ElementaryEffect::meanAbsolute)
                .max()
                .orElse(0.0);
    }
}
