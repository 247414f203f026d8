package org.thirstline.validation.observed;

import java.util.ArrayList;
import java.util.List;

/** Observed and simulated values of the same days. Confined to one thread. */
final class Pairs {

    private final List<double[]> pairs = new ArrayList<>();

    /** Adds a pair unless one of the two is missing. */
    void add(double observed, double simulated) {
        if (Double.isFinite(observed) && Double.isFinite(simulated)) {
            pairs.add(new double[] {observed, simulated});
        }
    }

    int count() {
        return pairs.size();
    }

    double mean(int which) {
        return pairs.stream().mapToDouble(pair -> pair[which]).average().orElse(Double.NaN);
    }

    /** Mean of simulated minus observed. */
    double bias() {
        return mean(1) - mean(0);
    }

    double rmse() {
        return Math.sqrt(pairs.stream()
                .mapToDouble(pair -> (pair[1] - pair[0]) * (pair[1] - pair[0]))
                .average()
                .orElse(Double.NaN));
    }

    double correlation() {
        double x = mean(0);
        double y = mean(1);
        double xy = 0.0;
        double xx = 0.0;
        double yy = 0.0;
        for (double[] pair : pairs) {
            xy += (pair[0] - x) * (pair[1] - y);
            xx += (pair[0] - x) * (pair[0] - x);
            yy += (pair[1] - y) * (pair[1] - y);
        }
        return xy / Math.sqrt(xx * yy);
    }

    /** Slope of simulated on observed through the origin. */
    double slopeThroughOrigin() {
        double xy = pairs.stream().mapToDouble(pair -> pair[0] * pair[1]).sum();
        return xy / pairs.stream().mapToDouble(pair -> pair[0] * pair[0]).sum();
    }
}
