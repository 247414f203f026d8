package org.thirstline.calibration.age;

import java.util.Arrays;

/** Products of one set of log yields, around their mean, with the columns of a model. The mean is left to the intercepts and only costs digits. */
record YieldSums(double[] base, double[] declines, double[] groups, double square) {

    static YieldSums of(double[] raw, ModelColumns columns) {
        double mean = Arrays.stream(raw).average().orElse(0.0);
        double[] logYield = Arrays.stream(raw).map(value -> value - mean).toArray();
        return new YieldSums(
                products(columns.base(), logYield),
                products(columns.declines(), logYield),
                columns.groupSums(logYield),
                ModelColumns.dot(logYield, logYield));
    }

    private static double[] products(double[][] vectors, double[] logYield) {
        double[] products = new double[vectors.length];
        for (int k = 0; k < products.length; k++) {
            products[k] = ModelColumns.dot(vectors[k], logYield);
        }
        return products;
    }
}
