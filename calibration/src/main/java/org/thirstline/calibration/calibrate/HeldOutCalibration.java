package org.thirstline.calibration.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.calibrate.HeldOut.Group;
import org.thirstline.calibration.calibrate.HeldOut.Prediction;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.fit.Parallel;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.calibration.problem.ErrorModel;
import org.thirstline.calibration.problem.Observation;
import org.thirstline.calibration.skill.Fold;
import org.thirstline.calibration.skill.HeldOutSkill;
import org.thirstline.calibration.skill.IntervalCoverage;
import org.thirstline.calibration.skill.Predictor;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Holds out sites, plots and years, fits the rest again and predicts what was held out. Confined to one calibration. */
public final class HeldOutCalibration {

    /** Share that prediction intervals are to catch. */
    public static final double STATED = 0.9;

    /** Step of the slopes of a prediction, as a share of a parameter's range. */
    private static final double STEP = 5.0e-3;

    private final CalibrationProblem problem;
    private final double[] point;
    private final int threads;
    private final List<Integer> yields;
    private final double[] observed;
    private final double[] rain;

    /**
     * Prepares.
     *
     * @param fit the fit to all data, a starting point of the refits
     * @param threads refits at once
     */
    public HeldOutCalibration(CalibrationFit fit, int threads) {
        problem = fit.problem();
        point = fit.point();
        this.threads = threads;
        List<@Nullable SeasonRecord> seasons = problem.seasons(point);
        yields = IntStream.range(0, problem.observations().size())
                .filter(i -> problem.observations().get(i).variable() == PlotVariable.YIELD)
                .boxed()
                .toList();
        observed = yields.stream()
                .mapToDouble(i -> problem.observations().get(i).value())
                .toArray();
        rain = withoutGaps(yields.stream()
                .mapToDouble(i -> {
                    SeasonRecord season = seasons.get(i);
                    return season == null ? Double.NaN : season.value(SeasonVariable.SEASON_RAIN);
                })
                .toArray());
    }

    /** A year whose rain is not known whole is taken for an average one. */
    private static double[] withoutGaps(double[] rain) {
        double mean = Arrays.stream(rain).filter(Double::isFinite).average().orElse(0.0);
        return Arrays.stream(rain)
                .map(value -> Double.isFinite(value) ? value : mean)
                .toArray();
    }

    /** Returns the skill on every kind of group of which there are at least two, and whose rest can be fitted. */
    public List<HeldOut> all() {
        boolean sites = yields.stream()
                        .map(i -> problem.observations().get(i).site())
                        .distinct()
                        .count()
                > 1;
        List<HeldOut> all = new ArrayList<>();
        of(sites ? Group.SITE : Group.PLOT).ifPresent(all::add);
        of(Group.YEAR).ifPresent(all::add);
        return all;
    }

    private Optional<HeldOut> of(Group group) {
        List<String> groups = yields.stream()
                .map(i -> group.of(problem.observations().get(i)))
                .toList();
        if (groups.stream().distinct().count() < 2) {
            return Optional.empty();
        }
        List<Fold> folds = Fold.leaveOneGroupOut(groups);
        int fewest =
                folds.stream().mapToInt(fold -> fold.training().size()).min().orElse(0);
        if (fewest <= problem.parameters().size() + 1) {
            return Optional.empty();
        }
        List<Refit> refits = Parallel.map(folds, threads, fold -> refit(group, fold));
        Map<String, Refit> byGroup = new HashMap<>();
        for (int i = 0; i < folds.size(); i++) {
            byGroup.put(folds.get(i).group(), refits.get(i));
        }
        Predictor engine =
                fold -> Optional.ofNullable(byGroup.get(fold.group())).orElseThrow().predicted;
        HeldOutSkill model = HeldOutSkill.of(engine, folds, observed);
        HeldOutSkill mean = HeldOutSkill.of(Predictor.mean(observed), folds, observed);
        HeldOutSkill byRain = HeldOutSkill.of(Predictor.regression(observed, rain), folds, observed);
        List<Prediction> predictions = predictions(folds, refits, mean, byRain);
        double[] lower = predictions.stream().mapToDouble(Prediction::lower).toArray();
        double[] upper = predictions.stream().mapToDouble(Prediction::upper).toArray();
        return Optional.of(new HeldOut(
                group, predictions, model, mean, byRain, IntervalCoverage.of(observed, lower, upper, STATED)));
    }

    private List<Prediction> predictions(List<Fold> folds, List<Refit> refits, HeldOutSkill mean, HeldOutSkill byRain) {
        Prediction[] predictions = new Prediction[observed.length];
        for (int i = 0; i < folds.size(); i++) {
            Refit refit = refits.get(i);
            List<Integer> heldOut = folds.get(i).heldOut();
            for (int j = 0; j < heldOut.size(); j++) {
                int at = heldOut.get(j);
                predictions[at] = new Prediction(
                        problem.observations().get(yields.get(at)),
                        folds.get(i).group(),
                        refit.predicted[j],
                        refit.lower[j],
                        refit.upper[j],
                        mean.predicted()[at],
                        byRain.predicted()[at]);
            }
        }
        return List.of(predictions);
    }

    /** What one refit predicts. */
    private record Refit(double[] predicted, double[] lower, double[] upper) {}

    /** Leaves out everything measured in the group, not only its yields. */
    private Refit refit(Group group, Fold fold) {
        List<Integer> training = IntStream.range(0, problem.observations().size())
                .filter(i -> !group.of(problem.observations().get(i)).equals(fold.group()))
                .boxed()
                .toList();
        CalibrationProblem rest = problem.withObservations(training);
        LeastSquaresCalibration.Weighted weighted =
                LeastSquaresCalibration.weigh(rest, LeastSquaresCalibration.refit(rest, List.of(point)));
        FitResult result = weighted.result();
        ErrorModel error = weighted.problem().error(PlotVariable.YIELD);
        double scale = weighted.problem().errors().stream().allMatch(ErrorModel::estimated)
                ? 1.0
                : 1.0 / result.residualDeviation();
        double quantile = new TDistribution(Math.max(1, result.degreesOfFreedom()))
                .inverseCumulativeProbability(0.5 + 0.5 * STATED);
        double[] values = result.values();
        double[] simulated = problem.simulate(values);
        double[][] slopes = slopes(values, error);
        int count = fold.heldOut().size();
        Refit refit = new Refit(new double[count], new double[count], new double[count]);
        for (int j = 0; j < count; j++) {
            int at = yields.get(fold.heldOut().get(j));
            Observation observation = problem.observations().get(at);
            double deviations = quantile * Math.sqrt(1.0 + scale * scale * variance(result, slopes, at));
            refit.predicted[j] = simulated[at];
            refit.lower[j] = error.away(observation, simulated[at], -deviations);
            refit.upper[j] = error.away(observation, simulated[at], deviations);
        }
        return refit;
    }

    /** Variance of a prediction by the uncertainty of the parameters, in units of the error's variance; bounds count as known. */
    private static double variance(FitResult result, double[][] slopes, int at) {
        double sum = 0.0;
        for (int i = 0; i < slopes.length; i++) {
            for (int k = 0; k < slopes.length; k++) {
                double covariance = result.covariance(i, k);
                sum += Double.isNaN(covariance) ? 0.0 : slopes[i][at] * covariance * slopes[k][at];
            }
        }
        return sum;
    }

    /** Slopes of what the error model compares, in units of the error, by parameter and observation. */
    private double[][] slopes(double[] values, ErrorModel error) {
        double[][] slopes = new double[values.length][];
        for (int i = 0; i < values.length; i++) {
            CalibratedParameter parameter = problem.parameters().get(i);
            double step = STEP * (parameter.upper() - parameter.lower());
            double[] above = values.clone();
            double[] below = values.clone();
            above[i] = Math.min(parameter.upper(), values[i] + step);
            below[i] = Math.max(parameter.lower(), values[i] - step);
            double[] high = problem.simulate(above);
            double[] low = problem.simulate(below);
            slopes[i] = new double[high.length];
            for (int at : yields) {
                Observation observation = problem.observations().get(at);
                double change = error.difference(observation, high[at]) - error.difference(observation, low[at]);
                double slope = change / (above[i] - below[i]) / error.size();
                slopes[i][at] = Double.isFinite(slope) ? slope : 0.0;
            }
        }
        return slopes;
    }
}
