package org.thirstline.calibration.response;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What one year does to the straight line. Immutable and thread-safe.
 *
 * @param year the year
 * @param cooksDistance Cook's (1977) distance; infinite when the line hangs on this year alone
 * @param slopeWithout slope of the line fitted without the year; NaN when the other years have no spread
 */
public record YearInfluence(int year, double cooksDistance, double slopeWithout) {

    /** Parameters of a straight line. */
    private static final double PARAMETERS = 2.0;

    private static final double FULL_LEVERAGE = 1.0 - 1.0e-12;

    /** Computes the influence of every year, strongest first. */
    static List<YearInfluence> of(double[] x, double[] y, int[] years, StraightLine line) {
        List<YearInfluence> influences = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            influences.add(of(x[i], y[i], years[i], line));
        }
        influences.sort(Comparator.comparingDouble(YearInfluence::cooksDistance)
                .reversed()
                .thenComparingInt(YearInfluence::year));
        return List.copyOf(influences);
    }

    private static YearInfluence of(double x, double y, int year, StraightLine line) {
        double leverage = line.leverage(x);
        if (leverage >= FULL_LEVERAGE) {
            return new YearInfluence(year, Double.POSITIVE_INFINITY, Double.NaN);
        }
        double residual = y - line.at(x);
        double variance = line.residualDeviation() * line.residualDeviation();
        double deleted = residual / (1.0 - leverage);
        double distance = variance > 0.0 ? deleted * deleted * leverage / (PARAMETERS * variance) : 0.0;
        double slopeWithout = line.slope() - (x - line.meanX()) * deleted / line.sumSquaresX();
        return new YearInfluence(year, distance, slopeWithout);
    }

    /** Returns whether the year pulls more than the common limit of 4/n (Bollen and Jackman 1985). */
    boolean isStrong(int n) {
        return cooksDistance > 4.0 / n;
    }
}
