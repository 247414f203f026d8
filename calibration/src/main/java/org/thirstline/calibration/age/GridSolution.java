package org.thirstline.calibration.age;

/** Workspace and result of one solution at a grid point. Mutable; owned by one replicate. */
final class GridSolution {

    /** Floors of a residual sum of squares: yields that a model meets exactly have a scatter of rounding, not of zero. */
    private static final double ROUNDING = 1.0e-20;

    private static final double ROUNDING_SHARE = 1.0e-9;

    private final double[] white;
    private final double[] onBase;
    private final double[] slope;
    private final double[] residual;
    private double nullResidual;

    GridSolution(int groupColumns, int baseColumns, int onsets) {
        white = new double[groupColumns];
        onBase = new double[baseColumns];
        slope = new double[onsets];
        residual = new double[onsets];
    }

    double[] white() {
        return white;
    }

    double[] onBase() {
        return onBase;
    }

    void setNull(double residualSumOfSquares) {
        nullResidual = Math.max(residualSumOfSquares, ROUNDING);
    }

    void setDecline(int k, double product, double norm) {
        slope[k] = norm > 0.0 ? product / norm : 0.0;
        residual[k] = Math.max(nullResidual - slope[k] * product, ROUNDING_SHARE * nullResidual);
    }

    /** Weighted residual sum of squares without decline. */
    double nullResidual() {
        return nullResidual;
    }

    /** Loss of log yield per year past an onset. */
    double slope(int k) {
        return slope[k];
    }

    /** Weighted residual sum of squares with decline from an onset. */
    double residual(int k) {
        return residual[k];
    }
}
