package org.thirstline.calibration.posterior;

import java.util.Arrays;

/** Past states of all chains in the order they were added. Written by one thread; others may read what {@link #first} gives. */
final class Archive {

    private final int dimension;
    private double[] points;
    private double[] logDensities;
    private int size;

    /** Takes over copies of a flat array of points and their densities. */
    Archive(int dimension, double[] points, double[] logDensities) {
        this.dimension = dimension;
        this.points = points.clone();
        this.logDensities = logDensities.clone();
        size = logDensities.length;
    }

    /** For an archive that shares the arrays of another. */
    private Archive(double[] points, double[] logDensities, int dimension, int size) {
        this.points = points;
        this.logDensities = logDensities;
        this.dimension = dimension;
        this.size = size;
    }

    /** Returns its first states, not copied, to be read only; later additions to this archive do not touch them. */
    Archive first(int states) {
        return new Archive(points, logDensities, dimension, states);
    }

    int size() {
        return size;
    }

    double at(int index, int parameter) {
        return points[index * dimension + parameter];
    }

    /** Copies a state's parameters. */
    void copy(int index, double[] point) {
        System.arraycopy(points, index * dimension, point, 0, dimension);
    }

    double logDensity(int index) {
        return logDensities[index];
    }

    void add(double[] point, double logDensity) {
        if (size == logDensities.length) {
            int larger = Math.max(64, 2 * size);
            points = Arrays.copyOf(points, larger * dimension);
            logDensities = Arrays.copyOf(logDensities, larger);
        }
        System.arraycopy(point, 0, points, size * dimension, dimension);
        logDensities[size] = logDensity;
        size++;
    }

    double[] points() {
        return Arrays.copyOf(points, size * dimension);
    }

    double[] logDensities() {
        return Arrays.copyOf(logDensities, size);
    }
}
