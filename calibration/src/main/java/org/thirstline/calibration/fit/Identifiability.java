package org.thirstline.calibration.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * Which parameters the data can tell, by the slopes of the residuals at the best fit: how far the data respond to each parameter, and
 * how far others can make up for it (collinearity index). Immutable and thread-safe.
 *
 * @cite brun2001
 */
public final class Identifiability {

    /** Collinearity index above which parameters can't be told apart: a change of one is made up for to a tenth by the others. */
    public static final double COLLINEARITY_LIMIT = 10.0;

    /** Moves of the data, in residual standard deviations, below which two standard errors to each side span a parameter's range. */
    public static final double RESPONSE_LIMIT = 4.0;

    /** A parameter without finite bounds counts as so many of its typical sizes wide. */
    private static final double WIDTH_IN_SCALES = 10.0;

    private final List<FitParameter> parameters;
    private final double[][] jacobian;
    private final double[] lengths;
    private final double deviation;

    /**
     * Takes the slopes at the best fit.
     *
     * @param model what was fitted
     * @param fit its best fit
     * @param options kind of numeric Jacobian
     * @param errorsKnown whether residuals come in units of errors that are known
     */
    public Identifiability(ResidualModel model, FitResult fit, FitOptions options, boolean errorsKnown) {
        parameters = fit.parameters();
        int[] all = IntStream.range(0, parameters.size()).toArray();
        jacobian = new NumericJacobian(model, parameters, options).at(fit.values(), fit.residuals(), all);
        lengths = new double[all.length];
        for (int column = 0; column < all.length; column++) {
            for (double[] row : jacobian) {
                lengths[column] = Math.hypot(lengths[column], row[column]);
            }
        }
        deviation = errorsKnown ? 1.0 : fit.residualDeviation();
    }

    /**
     * Returns by how much residuals change, as a root mean square, when a parameter changes by its typical size.
     *
     * @param index of the parameter
     */
    public double sensitivity(int index) {
        return lengths[index] * parameters.get(index).scale() / Math.sqrt(jacobian.length);
    }

    /**
     * Returns how far all data together move, in residual standard deviations, when a parameter crosses its range; infinite if there is
     * no residual left, 0 if they do not move at all.
     *
     * @param index of the parameter
     */
    public double response(int index) {
        FitParameter parameter = parameters.get(index);
        double width = parameter.hasFiniteBounds()
                ? parameter.upper() - parameter.lower()
                : WIDTH_IN_SCALES * parameter.scale();
        return lengths[index] == 0.0 ? 0.0 : lengths[index] * width / deviation;
    }

    /**
     * Returns the collinearity index of some parameters: 1 if each moves the data in its own direction, infinite if one can be made up
     * for entirely by the others.
     *
     * @param indices at least one
     */
    public double collinearity(int... indices) {
        Array2DRowRealMatrix scaled = new Array2DRowRealMatrix(jacobian.length, indices.length);
        for (int column = 0; column < indices.length; column++) {
            if (lengths[indices[column]] == 0.0) {
                return Double.POSITIVE_INFINITY;
            }
            for (int row = 0; row < jacobian.length; row++) {
                scaled.setEntry(row, column, jacobian[row][indices[column]] / lengths[indices[column]]);
            }
        }
        double[] singular = new SingularValueDecomposition(scaled).getSingularValues();
        return 1.0 / singular[singular.length - 1];
    }

    /**
     * Returns which parameters to fix so that the data tell the rest; most influential parameters are kept.
     *
     * @param profiles profiles of some or all parameters; may be empty
     */
    public List<FixAdvice> advice(List<Profile> profiles) {
        List<FixAdvice> advice = new ArrayList<>();
        List<Integer> kept = new ArrayList<>();
        IntStream.range(0, parameters.size())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -sensitivity(i)))
                .forEachOrdered(index -> {
                    if (!(response(index) >= RESPONSE_LIMIT)) {
                        advice.add(advice(index, FixAdvice.Reason.UNRESPONSIVE, response(index), List.of()));
                    } else if (collinearity(with(kept, index)) > COLLINEARITY_LIMIT) {
                        advice.add(collinear(index, kept));
                    } else {
                        kept.add(index);
                    }
                });
        for (Profile profile : profiles) {
            boolean explained = advice.stream()
                    .anyMatch(other -> other.name().equals(profile.name())
                            || other.partners().contains(profile.name()));
            if (profile.verdict() == Profile.Verdict.FLAT && !explained) {
                advice.add(new FixAdvice(profile.name(), FixAdvice.Reason.FLAT_PROFILE, 0.0, List.of()));
            }
        }
        return List.copyOf(advice);
    }

    private FixAdvice advice(int index, FixAdvice.Reason reason, double number, List<String> partners) {
        return new FixAdvice(parameters.get(index).name(), reason, number, partners);
    }

    /** Names those kept parameters that alone are too close, or all of them if only together they are. */
    private FixAdvice collinear(int index, List<Integer> kept) {
        List<Integer> close = kept.stream()
                .filter(other -> collinearity(index, other) > COLLINEARITY_LIMIT)
                .toList();
        List<String> partners = (close.isEmpty() ? kept : close)
                .stream().map(other -> parameters.get(other).name()).toList();
        return advice(index, FixAdvice.Reason.COLLINEAR, collinearity(with(kept, index)), partners);
    }

    private static int[] with(List<Integer> kept, int index) {
        return IntStream.concat(kept.stream().mapToInt(i -> i), IntStream.of(index))
                .toArray();
    }

    /**
     * Returns the verdict in words: what to fix, or that the data tell all parameters apart.
     *
     * @param profiles profiles of some or all parameters; may be empty
     */
    public List<String> words(List<Profile> profiles) {
        List<FixAdvice> advice = advice(profiles);
        if (!advice.isEmpty()) {
            return advice.stream().map(FixAdvice::words).toList();
        }
        int[] all = IntStream.range(0, parameters.size()).toArray();
        return List.of(String.format(
                Locale.ROOT,
                "The data tell all %d parameters apart (collinearity index %.1f, limit %.0f).",
                all.length,
                collinearity(all),
                COLLINEARITY_LIMIT));
    }
}
