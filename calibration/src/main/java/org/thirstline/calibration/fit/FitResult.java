package org.thirstline.calibration.fit;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * Fitted parameters with the uncertainty of linear theory at the minimum. A parameter at a bound has no standard error (NaN), and the
 * others' hold with it fixed there. Immutable and thread-safe.
 */
public final class FitResult {

    /** Share of the largest singular value below which a direction counts as not determined. */
    private static final double RANK_TOLERANCE = 1.0e-13;

    /** Sums of squares this close, relatively, count as the same minimum. */
    private static final double SAME_MINIMUM = 1.0e-6;

    private final List<FitParameter> parameters;
    private final List<SearchResult> searches;
    private final double[] residuals;
    private final double[][] covariance;
    private final double conditionNumber;

    FitResult(
            List<FitParameter> parameters,
            List<SearchResult> searches,
            double[] residuals,
            int[] inside,
            double[][] jacobian) {
        this.parameters = List.copyOf(parameters);
        this.searches = List.copyOf(searches);
        this.residuals = residuals.clone();
        covariance = new double[parameters.size()][parameters.size()];
        for (double[] row : covariance) {
            Arrays.fill(row, Double.NaN);
        }
        conditionNumber = inside.length == 0 ? Double.NaN : fillCovariance(inside, jacobian);
    }

    /** Fills the covariance s² (JᵀJ)⁻¹ through the singular values of J with columns of unit length; returns their ratio. */
    private double fillCovariance(int[] inside, double[][] jacobian) {
        RealMatrix scaled = new Array2DRowRealMatrix(jacobian, true);
        double[] lengths = new double[inside.length];
        for (int column = 0; column < inside.length; column++) {
            lengths[column] = scaled.getColumnVector(column).getNorm();
            double length = lengths[column] > 0.0 ? lengths[column] : 1.0;
            scaled.setColumnVector(column, scaled.getColumnVector(column).mapDivide(length));
        }
        SingularValueDecomposition decomposition = new SingularValueDecomposition(scaled);
        double[] singular = decomposition.getSingularValues();
        double smallest = singular[singular.length - 1];
        if (smallest <= RANK_TOLERANCE * singular[0]) {
            return Double.POSITIVE_INFINITY;
        }
        RealMatrix inverse = inverseSquare(decomposition.getV(), singular);
        double variance = residualVariance();
        for (int row = 0; row < inside.length; row++) {
            for (int column = 0; column < inside.length; column++) {
                covariance[inside[row]][inside[column]] =
                        variance * inverse.getEntry(row, column) / (lengths[row] * lengths[column]);
            }
        }
        return singular[0] / smallest;
    }

    private static RealMatrix inverseSquare(RealMatrix v, double[] singular) {
        RealMatrix weighted = v.copy();
        for (int column = 0; column < singular.length; column++) {
            weighted.setColumnVector(column, weighted.getColumnVector(column).mapDivide(singular[column]));
        }
        return weighted.multiplyTransposed(weighted);
    }

    /** Returns the parameters as they were given. */
    public List<FitParameter> parameters() {
        return parameters;
    }

    /** Returns a copy of the best values. */
    public double[] values() {
        return searches.get(0).end();
    }

    /**
     * Returns one best value.
     *
     * @param index of the parameter
     */
    public double value(int index) {
        return values()[index];
    }

    /** Returns a copy of the residuals at the best values. */
    public double[] residuals() {
        return residuals.clone();
    }

    /** Returns the sum of squared residuals. */
    public double residualSumOfSquares() {
        return BoundedSearch.sumOfSquares(residuals);
    }

    /** Returns residuals minus parameters. */
    public int degreesOfFreedom() {
        return residuals.length - parameters.size();
    }

    /** Returns the residual standard deviation; NaN without degrees of freedom. */
    public double residualDeviation() {
        return Math.sqrt(residualVariance());
    }

    private double residualVariance() {
        return degreesOfFreedom() > 0 ? residualSumOfSquares() / degreesOfFreedom() : Double.NaN;
    }

    /** Returns whether the best search ended where the sum of squares is level. */
    public boolean converged() {
        return searches.get(0).converged();
    }

    /**
     * Returns whether a parameter ended at one of its bounds.
     *
     * @param index of the parameter
     */
    public boolean isAtBound(int index) {
        double value = value(index);
        return value <= parameters.get(index).lower()
                || value >= parameters.get(index).upper();
    }

    /**
     * Returns a parameter's standard error; NaN at a bound or when the data do not determine the parameters.
     *
     * @param index of the parameter
     */
    public double standardError(int index) {
        return Math.sqrt(covariance[index][index]);
    }

    /**
     * Returns the covariance of two estimates; NaN where there is none.
     *
     * @param first index of a parameter
     * @param second index of a parameter
     */
    public double covariance(int first, int second) {
        return covariance[first][second];
    }

    /**
     * Returns the correlation of two estimates; NaN where there is none.
     *
     * @param first index of a parameter
     * @param second index of a parameter
     */
    public double correlation(int first, int second) {
        return covariance[first][second] / (standardError(first) * standardError(second));
    }

    /**
     * Returns the ratio of largest to smallest singular value of the Jacobian with columns of unit length. Above about 30 the data
     * hardly tell some parameters apart (Belsley and others 1980); infinite if not at all.
     */
    public double conditionNumber() {
        return conditionNumber;
    }

    /** Returns all searches, best first. */
    public List<SearchResult> searches() {
        return searches;
    }

    /** Returns how many searches found the best sum of squares, to a millionth. */
    public long searchesAgreeing() {
        double limit = residualSumOfSquares() * (1.0 + SAME_MINIMUM);
        return searches.stream()
                .filter(search -> search.residualSumOfSquares() <= limit)
                .count();
    }
}
