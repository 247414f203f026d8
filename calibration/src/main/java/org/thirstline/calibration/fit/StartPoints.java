package org.thirstline.calibration.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/** Where searches start: the stated start, then a Latin hypercube over the bounds. */
final class StartPoints {

    private static final String GENERATOR = "L64X128MixRandom";

    /** Starts of an unbounded parameter lie within this many times its scale of its start. */
    private static final double UNBOUNDED_REACH = 2.0;

    private StartPoints() {}

    static List<double[]> of(List<FitParameter> parameters, FitOptions options) {
        RandomGenerator random = RandomGeneratorFactory.of(GENERATOR).create(options.seed());
        int extra = options.starts() - 1;
        List<double[]> points = new ArrayList<>();
        points.add(parameters.stream().mapToDouble(FitParameter::start).toArray());
        for (int i = 0; i < extra; i++) {
            points.add(new double[parameters.size()]);
        }
        for (int column = 0; column < parameters.size(); column++) {
            int[] strata = permutation(extra, random);
            for (int i = 0; i < extra; i++) {
                double share = (strata[i] + random.nextDouble()) / extra;
                points.get(i + 1)[column] = at(parameters.get(column), share);
            }
        }
        return points;
    }

    private static double at(FitParameter parameter, double share) {
        if (parameter.hasFiniteBounds()) {
            return parameter.clamp(parameter.lower() + share * (parameter.upper() - parameter.lower()));
        }
        return parameter.clamp(parameter.start() + (2.0 * share - 1.0) * UNBOUNDED_REACH * parameter.scale());
    }

    private static int[] permutation(int size, RandomGenerator random) {
        int[] order = new int[size];
        for (int i = 0; i < size; i++) {
            int j = random.nextInt(i + 1);
            order[i] = order[j];
            order[j] = i;
        }
        return order;
    }
}
