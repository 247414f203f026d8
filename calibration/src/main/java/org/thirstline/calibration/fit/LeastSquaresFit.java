package org.thirstline.calibration.fit;

import java.util.ArrayList;
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
        List<SearchResult> searches = new ArrayList<>();
        for (double[] start : StartPoints.of(parameters, options)) {
            searches.add(new BoundedSearch(model, parameters, options, start).run());
        }
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
