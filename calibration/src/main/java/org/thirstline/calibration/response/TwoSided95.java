package org.thirstline.calibration.response;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.hipparchus.distribution.continuous.TDistribution;

/** Quantiles of Student's t for intervals at 95 %. A band asks for the same one at each of its points, so each is found once. Thread-safe. */
final class TwoSided95 {

    private static final double UPPER = 0.975;
    private static final Map<Integer, Double> FOUND = new ConcurrentHashMap<>();

    private TwoSided95() {}

    /**
     * Returns the quantile.
     *
     * @param freedom degrees of freedom, at least 1
     */
    static double t(int freedom) {
        return FOUND.computeIfAbsent(freedom, n -> new TDistribution(n).inverseCumulativeProbability(UPPER));
    }
}
