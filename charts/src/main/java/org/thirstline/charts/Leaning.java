package org.thirstline.charts;

import java.util.TreeMap;

/**
 * Whether residuals lean on something: a straight line through the means at each of its values, so that many plots of one year count as one
 * year. Immutable and thread-safe.
 *
 * @param slope of the line
 * @param intercept of the line
 * @param errors standard errors that the slope is away from none; 0 where there are too few values to say
 * @param low least value
 * @param high greatest value
 * @param values how many different values
 */
record Leaning(double slope, double intercept, double errors, double low, double high, int values) {

    /** A slope that far from none is told; by chance alone one in a hundred or so is (our choice). */
    private static final double TOLD = 3.0;

    private static final int FEWEST = 5;

    static Leaning of(double[] xs, double[] ys) {
        TreeMap<Double, double[]> groups = new TreeMap<>();
        for (int i = 0; i < xs.length; i++) {
            double[] sum = groups.computeIfAbsent(xs[i], x -> new double[2]);
            sum[0] += ys[i];
            sum[1]++;
        }
        if (groups.size() < FEWEST) {
            double low = groups.isEmpty() ? 0.0 : groups.firstKey();
            return new Leaning(0.0, 0.0, 0.0, low, groups.isEmpty() ? 0.0 : groups.lastKey(), groups.size());
        }
        return line(
                groups.keySet().stream().mapToDouble(Double::doubleValue).toArray(),
                groups.values().stream().mapToDouble(sum -> sum[0] / sum[1]).toArray());
    }

    private static Leaning line(double[] xs, double[] ys) {
        int n = xs.length;
        double meanX = mean(xs);
        double meanY = mean(ys);
        double xx = 0.0;
        double xy = 0.0;
        double yy = 0.0;
        for (int i = 0; i < n; i++) {
            xx += (xs[i] - meanX) * (xs[i] - meanX);
            xy += (xs[i] - meanX) * (ys[i] - meanY);
            yy += (ys[i] - meanY) * (ys[i] - meanY);
        }
        double slope = xy / xx;
        double error = Math.sqrt(Math.max(0.0, yy - slope * xy) / (n - 2) / xx);
        double errors = error > 0.0 ? slope / error : 0.0;
        return new Leaning(slope, meanY - slope * meanX, errors, xs[0], xs[n - 1], n);
    }

    private static double mean(double[] values) {
        double sum = 0.0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    boolean isTold() {
        return Math.abs(errors) > TOLD;
    }

    double at(double x) {
        return intercept + slope * x;
    }
}
