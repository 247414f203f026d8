package org.thirstline.calibration.calibrate;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.calibrate.PosteriorCalibration.Sampled;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.calibration.problem.Observation;
import org.thirstline.calibration.problem.PlotData;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * A finished calibration: what tables, charts and the crop file are made from. Immutable and thread-safe.
 *
 * @param data what was used and what not
 * @param fit the fit and what the data can tell
 * @param posterior the sampled posterior, if asked for
 * @param skill skill on held-out sites or plots, and years
 * @param chosen the values that stand for the calibration where only one set can
 * @param residuals every value beside its simulation with the chosen values, in the order of the observations
 */
public record CalibrationOutcome(
        PlotData data,
        CalibrationFit fit,
        Optional<Sampled> posterior,
        List<HeldOut> skill,
        ChosenValues chosen,
        List<Residual> residuals) {

    /** Copies the lists. */
    public CalibrationOutcome {
        skill = List.copyOf(skill);
        residuals = List.copyOf(residuals);
    }

    /**
     * Puts the parts together.
     *
     * @param data what was used and what not
     * @param fit the fit
     * @param posterior the sampled posterior, if asked for
     * @param skill skill on what was held out
     */
    public static CalibrationOutcome of(
            PlotData data, CalibrationFit fit, Optional<Sampled> posterior, List<HeldOut> skill) {
        ChosenValues chosen = ChosenValues.of(fit.point(), posterior.map(Sampled::draws), point -> fit.problem()
                .sampling()
                .logPosterior(point));
        return new CalibrationOutcome(data, fit, posterior, skill, chosen, residuals(fit.problem(), chosen.point()));
    }

    /**
     * A value beside its simulation.
     *
     * @param observation measured
     * @param before simulated with the values before the calibration
     * @param simulated simulated with the chosen values
     * @param standardised what is left over, in units of the error
     * @param seasonRainMm rain of the growing season [mm], NaN if not known
     */
    public record Residual(
            Observation observation, double before, double simulated, double standardised, double seasonRainMm) {

        /** Returns measured minus simulated, in the unit of the variable. */
        public double residual() {
            return observation.value() - simulated;
        }
    }

    private static List<Residual> residuals(CalibrationProblem problem, double[] point) {
        double[] before = problem.simulate(problem.start());
        double[] simulated = problem.simulate(point);
        double[] standardised = problem.standardised(simulated);
        List<@Nullable SeasonRecord> seasons = problem.seasons(point);
        return IntStream.range(0, simulated.length)
                .mapToObj(i -> {
                    SeasonRecord season = seasons.get(i);
                    double rain = season == null ? Double.NaN : season.value(SeasonVariable.SEASON_RAIN);
                    return new Residual(problem.observations().get(i), before[i], simulated[i], standardised[i], rain);
                })
                .toList();
    }

    /** Returns the fitted parameters. */
    public List<CalibratedParameter> parameters() {
        return fit.problem().parameters();
    }

    /** Returns the posterior of each parameter in numbers, empty without one. */
    public List<ParameterSummary> summaries() {
        return posterior.map(sampled -> sampled.draws().summaries()).orElse(List.of());
    }

    /** Returns whether place, weather or plots of any site are made up. */
    public boolean invented() {
        return data.sources().stream()
                .anyMatch(source -> source.study().invented()
                        || source.weather().invented()
                        || source.plots().invented());
    }
}
