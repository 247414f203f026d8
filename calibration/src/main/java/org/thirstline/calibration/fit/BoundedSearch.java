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
import org.hipparchus.optim.nonlinear.vector.leastsquares.ValueAndJacobianFunction;
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

    private static final double STATIONARY = 1.0e-6;

    /** Searches that end at a larger change do not ask for a level that the model's roughness hides. */
    private static final double ROUGH = 1.0e-9;

    private final ResidualModel model;
    private final List<FitParameter> parameters;
    private final NumericJacobian jacobian;
    private final int maximumEvaluations;
    private final double tolerance;
    private double[] best;
    private double[] bestResiduals;
    private double bestSum;
    private int evaluations;
    private boolean spent;

    BoundedSearch(ResidualModel model, List<FitParameter> parameters, FitOptions options, double[] start) {
        this.model = model;
        this.parameters = parameters;
        jacobian = new NumericJacobian(this::count, parameters, options);
        maximumEvaluations = options.maximumEvaluations();
        tolerance = options.tolerance();
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
            if (tolerance > ROUGH && isInside()) {
                break;
            }
            int[] next = freeAtBest();
            if (Arrays.equals(next, free) && bestSum >= before * (1.0 - tolerance)) {
                break;
            }
            free = next;
        }
        boolean converged = tolerance > ROUGH ? !spent : isStationary(freeAtBest());
        return new SearchResult(start, best, bestSum, converged, evaluations);
    }

    private boolean isInside() {
        return IntStream.range(0, parameters.size())
                .allMatch(i -> best[i] > parameters.get(i).lower()
                        && best[i] < parameters.get(i).upper());
    }

    private int[] allParameters() {
        return IntStream.range(0, parameters.size()).toArray();
    }

    private void minimize(int[] free) {
        double[] base = best.clone();
        LeastSquaresBuilder problem = new LeastSquaresBuilder()
                .start(take(base, free))
                .target(new double[bestResiduals.length])
                .model(new Moved(base, free))
                .parameterValidator(point -> clamp(free, point))
                .lazyEvaluation(true)
                .maxEvaluations(maximumEvaluations)
                .maxIterations(maximumEvaluations);
        spent = false;
        try {
            new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(tolerance)
                    .withParameterRelativeTolerance(tolerance)
                    .withOrthoTolerance(tolerance)
                    .optimize(problem.build());
        } catch (MathRuntimeException stopped) {
            // Tolerances at the rounding unit or evaluations spent: the best point so far is kept, and judged by
            // isStationary.
            bestSum = Math.min(bestSum, sumOfSquares(bestResiduals));
            spent = true;
        }
    }

    private RealVector clamp(int[] free, RealVector point) {
        double[] clamped = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            clamped[i] = parameters.get(free[i]).clamp(point.getEntry(i));
        }
        return new ArrayRealVector(clamped, false);
    }

    /** The model with only some parameters moved. Slopes are taken where they are asked for, not at steps that are refused. */
    private final class Moved implements ValueAndJacobianFunction {

        private final double[] base;
        private final int[] free;
        private double[] lastPoint = {};
        private double[] lastResiduals = {};

        Moved(double[] base, int[] free) {
            this.base = base;
            this.free = free;
        }

        @Override
        public Pair<RealVector, RealMatrix> value(RealVector moved) {
            double[] point = moved.toArray();
            return new Pair<>(computeValue(point), computeJacobian(point));
        }

        @Override
        public RealVector computeValue(double[] moved) {
            double[] residuals = residuals(moved);
            if (!NumericJacobian.isFinite(residuals)) {
                residuals = new double[residuals.length];
                Arrays.fill(residuals, NO_RESIDUAL);
            }
            return new ArrayRealVector(residuals, true);
        }

        @Override
        public RealMatrix computeJacobian(double[] moved) {
            double[] residuals = residuals(moved);
            double[][] slopes = NumericJacobian.isFinite(residuals)
                    ? jacobian.at(all(moved), residuals, free)
                    : new double[residuals.length][free.length];
            return new Array2DRowRealMatrix(slopes, false);
        }

        private double[] residuals(double[] moved) {
            if (!Arrays.equals(moved, lastPoint)) {
                lastPoint = moved.clone();
                lastResiduals = evaluate(all(moved));
            }
            return lastResiduals;
        }

        private double[] all(double[] moved) {
            double[] point = base.clone();
            for (int i = 0; i < free.length; i++) {
                point[free[i]] = moved[i];
            }
            return point;
        }
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
