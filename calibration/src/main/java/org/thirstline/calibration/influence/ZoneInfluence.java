package org.thirstline.calibration.influence;

import java.util.List;
import org.thirstline.io.study.Zone;

/**
 * What decides the outputs of one zone. Immutable and thread-safe.
 *
 * @param zone the zone
 * @param years how many growth years are behind means and spread
 * @param fullGrown whether they are of a full-grown stand
 * @param outputs an answer for each output
 * @param sampled keys of the parameters that were sampled after the screening
 * @param runs in how many pairs of runs the answers rest
 * @param deaths in how many of them the stand was dead, or never emerged, in at least one year
 */
public record ZoneInfluence(
        Zone zone,
        int years,
        boolean fullGrown,
        List<OutputInfluence> outputs,
        List<String> sampled,
        int runs,
        int deaths) {

    /** An effect below that share of the largest, on every output, hardly matters (our choice). */
    public static final double HARDLY = 0.05;

    /** Copies the lists. */
    public ZoneInfluence {
        outputs = List.copyOf(outputs);
        sampled = List.copyOf(sampled);
    }

    /**
     * Returns the largest effect of a parameter on any output that varies noticeably, relative to the largest effect on that output.
     *
     * @param key the parameter
     */
    public double relativeEffect(String key) {
        return largest(outputs, key);
    }

    static double largest(List<OutputInfluence> outputs, String key) {
        return outputs.stream()
                .filter(output -> output.noticeable() && output.largestEffect() > 0.0)
                .mapToDouble(output -> output.effect(key).orElseThrow().meanAbsolute() / output.largestEffect())
                .max()
                .orElse(0.0);
    }
}
