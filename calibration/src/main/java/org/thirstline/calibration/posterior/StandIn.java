package org.thirstline.calibration.posterior;

import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * A quadratic that stands in for the log likelihood, fitted by least squares to past states; with the priors, which are exact. It decides which
 * proposals are worth a whole evaluation (Christen and Fox 2005) and is fitted anew whenever the archive has doubled, so that it changes less and
 * less (Cui and others 2011). Immutable and thread-safe.
 *
 * @cite christen2005
 * @cite cui2011
 */
final class StandIn {

    /** States for each coefficient of the first fit (our choice). */
    private static final int STATES_PER_COEFFICIENT = 10;

    /** Root mean square by which it may miss log likelihoods of past states; beyond it, screening costs more than it saves (our choice). */
    private static final double LARGEST_MISS = 0.5;

    private static final double SINGULAR = 1.0e-10;

    private final SamplingProblem problem;
    private final double[] centre;
    private final double[] width;
    private final double[] coefficients;

    private StandIn(SamplingProblem problem, double[] centre, double[] width, double[] coefficients) {
        this.problem = problem;
        this.centre = centre;
        this.width = width;
        this.coefficients = coefficients;
    }

    /** Number of sampled states that the stand-in for an archive of so many is fitted to: it doubles, or is 0 while there are too few. */
    static int states(int sampled, int dimension) {
        int states = STATES_PER_COEFFICIENT * (dimension + 1) * (dimension + 2) / 2;
        if (sampled < states) {
            return 0;
        }
        while (2 * states <= sampled) {
            states *= 2;
        }
        return states;
    }

    /**
     * Fits to the later half of the first states of an archive, whose earlier half may still be on its way to the posterior.
     *
     * @param first index of the first sampled state
     * @param states number of sampled states, as {@link #states} has it
     * @return null if no quadratic comes close
     */
    static @Nullable StandIn of(SamplingProblem problem, Archive archive, int first, int states) {
        if (states == 0) {
            return null;
        }
        int from = first + states / 2;
        int to = first + states;
        double[] centre = new double[problem.dimension()];
        double[] width = new double[problem.dimension()];
        for (int i = 0; i < centre.length; i++) {
            int parameter = i;
            double[] values = IntStream.range(from, to)
                    .mapToDouble(state -> archive.at(state, parameter))
                    .toArray();
            centre[i] = Moments.mean(values);
            width[i] = Math.sqrt(Moments.variance(values));
        }
        return fitted(problem, archive, from, to, centre, width);
    }

    private static @Nullable StandIn fitted(
            SamplingProblem problem, Archive archive, int from, int to, double[] centre, double[] width) {
        int dimension = centre.length;
        RealMatrix terms = new Array2DRowRealMatrix(to - from, (dimension + 1) * (dimension + 2) / 2);
        RealVector densities = new ArrayRealVector(to - from);
        double[] point = new double[dimension];
        for (int row = 0; row < to - from; row++) {
            archive.copy(from + row, point);
            terms.setRow(row, terms(point, centre, width));
            densities.setEntry(row, archive.logDensity(from + row) - problem.logPrior(point));
        }
        try {
            RealVector coefficients =
                    new QRDecomposition(terms, SINGULAR).getSolver().solve(densities);
            double miss = densities.subtract(terms.operate(coefficients)).getNorm() / Math.sqrt(to - from);
            return miss <= LARGEST_MISS ? new StandIn(problem, centre, width, coefficients.toArray()) : null;
        } catch (MathRuntimeException singular) {
            return null;
        }
    }

    private static double[] terms(double[] point, double[] centre, double[] width) {
        int dimension = point.length;
        double[] terms = new double[(dimension + 1) * (dimension + 2) / 2];
        int next = 0;
        terms[next++] = 1.0;
        for (int i = 0; i < dimension; i++) {
            double moved = (point[i] - centre[i]) / width[i];
            terms[next++] = moved;
            for (int j = 0; j <= i; j++) {
                terms[next++] = moved * (point[j] - centre[j]) / width[j];
            }
        }
        return terms;
    }

    /** About the log posterior density of a point within the bounds. */
    double at(double[] point) {
        double[] terms = terms(point, centre, width);
        double sum = problem.logPrior(point);
        for (int i = 0; i < terms.length; i++) {
            sum += coefficients[i] * terms[i];
        }
        return sum;
    }
}
