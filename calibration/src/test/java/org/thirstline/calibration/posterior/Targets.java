package org.thirstline.calibration.posterior;

import java.util.ArrayList;
import java.util.List;

/** Posteriors whose moments are known. */
final class Targets {

    private Targets() {}

    static SamplingProblem in(int dimension, double lower, double upper, LogDensity target) {
        List<SampledParameter> parameters = new ArrayList<>();
        for (int i = 0; i < dimension; i++) {
            parameters.add(new SampledParameter("p" + (i + 1), Prior.uniform(lower, upper)));
        }
        return new SamplingProblem(parameters, target, "none");
    }

    /** Two normals with means 1 and -2, standard deviations 1 and 3. */
    static LogDensity correlatedNormal(double correlation) {
        return point -> {
            double x = point[0] - 1.0;
            double y = (point[1] + 2.0) / 3.0;
            return -0.5 * (x * x - 2.0 * correlation * x * y + y * y) / (1.0 - correlation * correlation);
        };
    }

    /** x normal with standard deviation 2; y normal about x squared over 4 with standard deviation 0.5: mean of y 1, variance 2.25. */
    static double banana(double[] point) {
        double bend = (point[1] - 0.25 * point[0] * point[0]) / 0.5;
        return -0.5 * (point[0] * point[0] / 4.0 + bend * bend);
    }
}
