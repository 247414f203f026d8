package org.thirstline.calibration.fit;

import java.util.List;
import org.thirstline.calibration.fit.FitOptions.Differences;

/** Derivatives of residuals by differences that stay inside the bounds. Immutable; as thread-safe as the model. */
final class NumericJacobian {

    private final ResidualModel model;
    private final List<FitParameter> parameters;
    private final double relativeStep;
    private final Differences differences;

    NumericJacobian(ResidualModel model, List<FitParameter> parameters, FitOptions options) {
        this.model = model;
        this.parameters = parameters;
        relativeStep = options.relativeStep();
        differences = options.differences();
    }

    /**
     * Returns derivatives by the given parameters.
     *
     * @param point where; not modified
     * @param residuals the residuals there; not modified
     * @param columns indices of the parameters to move
     * @return rows of residuals, columns as asked
     */
    double[][] at(double[] point, double[] residuals, int[] columns) {
        double[][] jacobian = new double[residuals.length][columns.length];
        for (int column = 0; column < columns.length; column++) {
            fillColumn(point, residuals, columns[column], column, jacobian);
        }
        return jacobian;
    }

    private void fillColumn(double[] point, double[] residuals, int moved, int column, double[][] jacobian) {
        FitParameter parameter = parameters.get(moved);
        double step = relativeStep * Math.max(Math.abs(point[moved]), 1.0e-3 * parameter.scale());
        double above = Math.min(parameter.upper(), point[moved] + step);
        double below = Math.max(parameter.lower(), point[moved] - step);
        boolean forward = differences == Differences.FORWARD && above > point[moved];
        double[] right = above > point[moved] ? moved(point, moved, above) : residuals;
        double[] left = forward || below >= point[moved] ? residuals : moved(point, moved, below);
        if (!isFinite(right)) {
            above = point[moved];
            right = residuals;
        }
        boolean leftStays = left == residuals || !isFinite(left);
        double width = above - (leftStays ? point[moved] : below);
        double[] start = leftStays ? residuals : left;
        for (int row = 0; row < residuals.length; row++) {
            jacobian[row][column] = width > 0.0 ? (right[row] - start[row]) / width : 0.0;
        }
    }

    private double[] moved(double[] point, int index, double value) {
        double[] moved = point.clone();
        moved[index] = value;
        return model.residuals(moved);
    }

    static boolean isFinite(double[] values) {
        for (double value : values) {
            if (!Double.isFinite(value)) {
                return false;
            }
        }
        return true;
    }
}
