package org.thirstline.calibration.fit;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/**
 * One search from one start: Levenberg-Marquardt on the parameters that are free to move, repeated while parameters join or leave
 * their bounds. Confined to one thread.
 */
final class BoundedSearch {

    /** Stands for a residual where the model gives none; its square still adds up. */
    private static final double NO_RESIDUAL = 1.0e100;

    /** Cosine between residuals and a Jacobian column above which a parameter at its bound wants back inside. */
    private static final double WANTS_INSIDE = 1.0e-9;

    private static final double TOLERANCE = 1.0e-14;
    private static final double STATIONARY = 1.0e-6;

    private final ResidualModel model;
    private final List<FitParameter> parameters;
    private final NumericJacobian jacobian;
    private final int maximumEvaluations;
    private double[] best;
    private double[] bestResiduals;
    private double bestSum;
    private int evaluations;

    BoundedSearch(ResidualModel model, List<FitParameter> parameters, FitOptions options, double[] start) {
        this.model = model;
        this.parameters = parameters;
        jacobian = new NumericJacobian(this::count, parameters, options);
        maximumEvaluations = options.maximumEvaluations();
        best = start.clone();
        bestResiduals = model.residuals(best.clone());
        bestSum = NumericJacobian.isFinite(bestResiduals) ? sumOfSquares(bestResiduals) : Double.POSITIVE_INFINITY;
    }

    /** Runs to a point where no free parameter can improve, or until the evaluations are spent. */
    SearchResult run() {
        double[] start = best.clone();
        if (bestSum == Double.POSITIVE_INFINITY) {
            return new SearchResult(start, best, bestSum, false, evaluations);
        }
        int[] free = allParameters();
        for (int round = 0; round <= 2 * parameters.size(); round++) {
            double before = bestSum;
            if (free.length > 0) {
                minimize(free);
            }
            int[] next = freeAtBest();
            if (Arrays.equals(next, free) && bestSum >= before * (1.0 - TOLERANCE)) {
                break;
            }
            free = next;
        }
        return new SearchResult(start, best, bestSum, isStationary(freeAtBest()), evaluations);
    }

    private int[] allParameters() {
        return IntStream.range(0, parameters.size()).toArray();
    }

    private void minimize(int[] free) {
        double[] base = best.clone();
        MultivariateJacobianFunction function = point -> valueAndJacobian(base, free, point);
        LeastSquaresBuilder problem = new LeastSquaresBuilder()
                .start(take(base, free))
                .target(new double[bestResiduals.length])
                .model(function)
                .parameterValidator(point -> clamp(free, point))
                .lazyEvaluation(false)
                .maxEvaluations(maximumEvaluations)
                .maxIterations(maximumEvaluations);
        try {
            new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(TOLERANCE)
                    .withParameterRelativeTolerance(TOLERANCE)
                    .withOrthoTolerance(TOLERANCE)
                    .optimize(problem.build());
        } catch (MathRuntimeException stopped) {
            // Tolerances at the rounding unit or evaluations spent: the best point so far is kept, and judged by
            // isStationary.
            bestSum = Math.min(bestSum, sumOfSquares(bestResiduals));
        }
    }

    private RealVector clamp(int[] free, RealVector point) {
        double[] clamped = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            clamped[i] = parameters.get(free[i]).clamp(point.getEntry(i));
        }
        return new ArrayRealVector(clamped, false);
    }

    private Pair<RealVector, RealMatrix> valueAndJacobian(double[] base, int[] free, RealVector moved) {
        double[] point = base.clone();
        for (int i = 0; i < free.length; i++) {
            point[free[i]] = moved.getEntry(i);
        }
        double[] residuals = evaluate(point);
        double[] shown = residuals;
        double[][] slopes;
        if (NumericJacobian.isFinite(residuals)) {
            slopes = jacobian.at(point, residuals, free);
        } else {
            shown = new double[residuals.length];
            Arrays.fill(shown, NO_RESIDUAL);
            slopes = new double[residuals.length][free.length];
        }
        return new Pair<>(new ArrayRealVector(shown, false), new Array2DRowRealMatrix(slopes, false));
    }

    private double[] evaluate(double[] point) {
        double[] residuals = count(point);
        if (NumericJacobian.isFinite(residuals)) {
            double sum = sumOfSquares(residuals);
            if (sum < bestSum) {
                best = point.clone();
                bestResiduals = residuals;
                bestSum = sum;
            }
        }
        return residuals;
    }

    private double[] count(double[] point) {
        evaluations++;
        return model.residuals(point.clone());
    }

    /** Parameters inside their bounds, and those at a bound that descend towards the inside. */
    private int[] freeAtBest() {
        double[] cosines = cosines(allParameters());
        return IntStream.range(0, parameters.size())
                .filter(i -> !(best[i] <= parameters.get(i).lower() && cosines[i] > -WANTS_INSIDE)
                        && !(best[i] >= parameters.get(i).upper() && cosines[i] < WANTS_INSIDE))
                .toArray();
    }

    private boolean isStationary(int[] free) {
        return Arrays.stream(cosines(free)).allMatch(cosine -> Math.abs(cosine) <= STATIONARY);
    }

    /** Cosine between residuals and each Jacobian column: the slope of the sum of squares without its units. */
    private double[] cosines(int[] columns) {
        double[] point = best.clone();
        double[] residuals = bestResiduals;
        double[][] slopes = jacobian.at(point, residuals, columns);
        double length = Math.sqrt(sumOfSquares(residuals));
        double[] cosines = new double[columns.length];
        for (int column = 0; column < columns.length; column++) {
            double product = 0.0;
            double square = 0.0;
            for (int row = 0; row < residuals.length; row++) {
                product += slopes[row][column] * residuals[row];
                square += slopes[row][column] * slopes[row][column];
            }
            double lengths = length * Math.sqrt(square);
            cosines[column] = lengths > 0.0 ? product / lengths : 0.0;
        }
        return cosines;
    }

    private static double[] take(double[] values, int[] indices) {
        return Arrays.stream(indices).mapToDouble(i -> values[i]).toArray();
    }

    static double sumOfSquares(double[] values) {
        double sum = 0.0;
        for (double value : values) {
            sum += value * value;
        }
        return sum;
    }
}
