package org.thirstline.calibration.age;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * The mixed model at one set of variance ratios, everything but the yields solved. With V = I + Z D Z' and M = Z'Z + 1/D = L L',
 * a' V^-1 c = a'c - (L^-1 Z'a)'(L^-1 Z'c) (Woodbury), so that nothing of the size of the trial is inverted. Immutable and thread-safe.
 */
final class GridPoint {

    /** Share of a column that must be left once the others are taken out, else it says nothing new. */
    private static final double DISTINCT = 1.0e-9;

    private final double[] ratios;
    private final double[][] lower;
    private final double[][] whiteBase;
    private final double[][] whiteDeclines;
    private final double[][] baseLower;
    private final double[][] declineOnBase;
    private final double[] declineNorm;
    private final double logDeterminant;
    private final double logBaseDeterminant;

    /** Solves the model for group variances that are these multiples of the residual variance, one for each kind of group. */
    GridPoint(double[] ratios, ModelColumns columns, double[][] groupsGroups) {
        this.ratios = ratios;
        double[][] inner = new double[groupsGroups.length][];
        double logRatios = 0.0;
        int column = 0;
        for (int g = 0; g < ratios.length; g++) {
            for (int j = 0; j < columns.groupSizes()[g]; j++) {
                inner[column] = groupsGroups[column].clone();
                inner[column][column] += 1.0 / ratios[g];
                logRatios += Math.log(ratios[g]);
                column++;
            }
        }
        lower = cholesky(inner);
        whiteBase = whitened(columns.base(), columns);
        whiteDeclines = whitened(columns.declines(), columns);
        baseLower = cholesky(baseProducts(columns.base()));
        declineOnBase = new double[whiteDeclines.length][];
        declineNorm = new double[whiteDeclines.length];
        for (int k = 0; k < whiteDeclines.length; k++) {
            projectDecline(k, columns);
        }
        logDeterminant = 2.0 * logDiagonal(lower) + logRatios;
        logBaseDeterminant = 2.0 * logDiagonal(baseLower);
    }

    private static double[][] cholesky(double[][] matrix) {
        return matrix.length == 0
                ? matrix
                : new CholeskyDecomposition(MatrixUtils.createRealMatrix(matrix))
                        .getL()
                        .getData();
    }

    private double[][] whitened(double[][] vectors, ModelColumns columns) {
        double[][] white = new double[vectors.length][];
        for (int k = 0; k < vectors.length; k++) {
            white[k] = columns.groupSums(vectors[k]);
            solveLower(lower, white[k]);
        }
        return white;
    }

    private double[][] baseProducts(double[][] base) {
        double[][] products = new double[base.length][base.length];
        for (int a = 0; a < base.length; a++) {
            for (int b = 0; b < base.length; b++) {
                products[a][b] = ModelColumns.dot(base[a], base[b]) - ModelColumns.dot(whiteBase[a], whiteBase[b]);
            }
        }
        return products;
    }

    private void projectDecline(int k, ModelColumns columns) {
        double[] decline = columns.declines()[k];
        double[] onBase = new double[whiteBase.length];
        for (int a = 0; a < onBase.length; a++) {
            onBase[a] = ModelColumns.dot(columns.base()[a], decline) - ModelColumns.dot(whiteBase[a], whiteDeclines[k]);
        }
        solveLower(baseLower, onBase);
        double plain = ModelColumns.dot(decline, decline);
        double left = plain - ModelColumns.dot(whiteDeclines[k], whiteDeclines[k]) - ModelColumns.dot(onBase, onBase);
        declineOnBase[k] = onBase;
        declineNorm[k] = left > DISTINCT * plain ? left : 0.0;
    }

    private static double logDiagonal(double[][] triangle) {
        double sum = 0.0;
        for (int i = 0; i < triangle.length; i++) {
            sum += Math.log(triangle[i][i]);
        }
        return sum;
    }

    /** Replaces a vector by its solution against a lower triangle. */
    private static void solveLower(double[][] triangle, double[] vector) {
        for (int i = 0; i < triangle.length; i++) {
            double[] row = triangle[i];
            double sum = vector[i];
            for (int j = 0; j < i; j++) {
                sum -= row[j] * vector[j];
            }
            vector[i] = sum / row[i];
        }
    }

    /**
     * Solves for one set of yields.
     *
     * @param sums products of the yields with the columns; not modified
     * @param solution residual sums of squares and rates; modified
     */
    void solve(YieldSums sums, GridSolution solution) {
        double[] white = solution.white();
        System.arraycopy(sums.groups(), 0, white, 0, white.length);
        solveLower(lower, white);
        double[] onBase = solution.onBase();
        for (int a = 0; a < onBase.length; a++) {
            onBase[a] = sums.base()[a] - ModelColumns.dot(whiteBase[a], white);
        }
        solveLower(baseLower, onBase);
        solution.setNull(sums.square() - ModelColumns.dot(white, white) - ModelColumns.dot(onBase, onBase));
        for (int k = 0; k < declineNorm.length; k++) {
            double product = sums.declines()[k]
                    - ModelColumns.dot(whiteDeclines[k], white)
                    - ModelColumns.dot(declineOnBase[k], onBase);
            solution.setDecline(k, product, declineNorm[k]);
        }
    }

    double[] ratios() {
        return ratios;
    }

    double logDeterminant() {
        return logDeterminant;
    }

    double logBaseDeterminant() {
        return logBaseDeterminant;
    }

    double declineNorm(int k) {
        return declineNorm[k];
    }
}
