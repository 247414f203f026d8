package org.thirstline.calibration.fit;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/** Bounded nonlinear least squares by Levenberg-Marquardt from one or several starts. */
public final class LeastSquaresFit {

    private LeastSquaresFit() {}

    /**
     * Fits parameters.
     *
     * @param model what is fitted
     * @param parameters what may change
     * @param options how to search
     * @return the best of all searches, with its uncertainty
     * @throws InputException if there are fewer residuals than parameters or no start gives finite residuals
     */
    public static FitResult fit(ResidualModel model, List<FitParameter> parameters, FitOptions options) {
        return fit(model, parameters, options, options, 1);
    }

    /**
     * Fits parameters by many quick searches and one that is thorough, from the best of them.
     *
     * @param model what is fitted; thread-safe if there are several threads
     * @param parameters what may change
     * @param quick how to search from every start
     * @param thorough how to go on from the best end, and how to take slopes there; its starts do not count
     * @param threads searches run at once; the result does not depend on it
     * @return the best of all searches, with its uncertainty
     * @throws InputException if there are fewer residuals than parameters or no start gives finite residuals
     */
    public static FitResult fit(
            ResidualModel model, List<FitParameter> parameters, FitOptions quick, FitOptions thorough, int threads) {
        return fitFrom(StartPoints.of(parameters, quick), model, parameters, quick, thorough, threads);
    }

    /**
     * Fits parameters as {@link #fit} does, from starts of the caller's.
     *
     * @param starts points within the bounds
     * @param model what is fitted; thread-safe if there are several threads
     * @param parameters what may change
     * @param quick how to search from every start
     * @param thorough how to go on from the best end
     * @param threads searches run at once
     */
    public static FitResult fitFrom(
            List<double[]> starts,
            ResidualModel model,
            List<FitParameter> parameters,
            FitOptions quick,
            FitOptions thorough,
            int threads) {
        List<SearchResult> searches =
                Parallel.map(starts, threads, start -> new BoundedSearch(model, parameters, quick, start).run());
        searches.sort(Comparator.comparingDouble(SearchResult::residualSumOfSquares));
        if (!thorough.equals(quick)) {
            double[] end = searches.get(0).end();
            searches.add(new BoundedSearch(model, parameters, thorough, end).run());
        }
        return best(model, parameters, searches, thorough);
    }

    private static FitResult best(
            ResidualModel model, List<FitParameter> parameters, List<SearchResult> searches, FitOptions options) {
        searches.sort(Comparator.comparingDouble(SearchResult::residualSumOfSquares));
        double[] best = searches.get(0).end();
        double[] residuals = model.residuals(best.clone());
        if (!NumericJacobian.isFinite(residuals)) {
            throw new InputException(CalibrationError.NO_FINITE_START);
        }
        if (residuals.length < parameters.size()) {
            throw new InputException(CalibrationError.TOO_FEW_RESIDUALS, residuals.length, parameters.size());
        }
        int[] inside = IntStream.range(0, parameters.size())
                .filter(i -> best[i] > parameters.get(i).lower()
                        && best[i] < parameters.get(i).upper())
                .toArray();
        double[][] jacobian = new NumericJacobian(model, parameters, options).at(best, residuals, inside);
        return new FitResult(parameters, searches, residuals, inside, jacobian);
    }
}
