package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationFit.Fixed;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.CalibrationOutcome.Residual;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.calibrate.HeldOut.Prediction;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.fit.ProfilePoint;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.posterior.PosteriorDraws;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.DroppedValue;
import org.thirstline.calibration.problem.Observation;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;

/** The tables of a calibration. Stateless but for what they tell of. */
final class CalibrationTables {

    private static final int DECIMALS = 6;
    private static final int VALUE_DECIMALS = 3;
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+\\.[0-9]+(E-?[0-9]+)?");

    private final CalibrationOutcome outcome;
    private final CalibrationFit fit;

    CalibrationTables(CalibrationOutcome outcome) {
        this.outcome = outcome;
        fit = outcome.fit();
    }

    List<ResultTable> all() {
        List<ResultTable> tables = new ArrayList<>();
        tables.add(parameters());
        tables.add(residuals());
        tables.add(dropped());
        tables.add(profiles());
        tables.add(correlations());
        outcome.posterior().ifPresent(sampled -> tables.add(draws(sampled.draws())));
        if (!outcome.skill().isEmpty()) {
            tables.add(skill());
            tables.add(heldOut());
        }
        return tables;
    }

    private ResultTable parameters() {
        ResultTable result = ResultTable.start(new TableInfo(
                "parameters.csv",
                "Parameters before and after the calibration",
                List.of(
                        ColumnInfo.text("parameter", "Key of the crop parameter, or factor on a soil"),
                        ColumnInfo.text("unit", "Unit of the numbers"),
                        ColumnInfo.text("fitted", "yes, or fixed because the data cannot tell it"),
                        ColumnInfo.number("before", "", "Value before the calibration"),
                        ColumnInfo.number("least_squares", "", "Value fitted by least squares"),
                        ColumnInfo.number(
                                "standard_error", "", "Standard error of it, linear theory; empty at a bound"),
                        ColumnInfo.number(
                                "profile_low", "", "Lower end of the 95 % profile interval; empty where open"),
                        ColumnInfo.number("profile_high", "", "Upper end of it; empty where open"),
                        ColumnInfo.number("lower_bound", "", "Lowest value tried"),
                        ColumnInfo.number("upper_bound", "", "Highest value tried"),
                        ColumnInfo.text("prior", "What was believed before the data"),
                        ColumnInfo.number("posterior_mean", "", "Mean of the posterior"),
                        ColumnInfo.number("posterior_sd", "", "Standard deviation of the posterior"),
                        ColumnInfo.number("posterior_5_pct", "", "5 % quantile of the posterior"),
                        ColumnInfo.number("posterior_median", "", "Median of the posterior"),
                        ColumnInfo.number("posterior_95_pct", "", "95 % quantile of the posterior"),
                        ColumnInfo.number(
                                "in_crop_file",
                                "",
                                "Value for runs: by least squares or, with a posterior, its medians or its most probable draw"),
                        ColumnInfo.number("r_hat", "1", "Rank-normalised split R-hat"),
                        ColumnInfo.number("bulk_effective_draws", "1", "Independent draws the middle is worth"),
                        ColumnInfo.number("tail_effective_draws", "1", "Independent draws the tails are worth"))));
        CsvTable table = result.table();
        List<ParameterSummary> summaries = outcome.summaries();
        double[] point = fit.point();
        for (int i = 0; i < point.length; i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            Profile profile = fit.profiles().get(i);
            table.text(parameter.name()).text(parameter.unit()).text("yes");
            table.number(parameter.start(), DECIMALS).number(point[i], DECIMALS);
            table.number(fit.standardError(i), DECIMALS);
            table.number(profile.lowerOpen() ? Double.NaN : profile.lower(), DECIMALS);
            table.number(profile.upperOpen() ? Double.NaN : profile.upper(), DECIMALS);
            bounds(table, parameter);
            double chosen = outcome.chosen().values().get(i);
            summary(table, chosen, i < summaries.size() ? Optional.of(summaries.get(i)) : Optional.empty());
            table.endRow();
        }
        for (Fixed fixed : fit.fixed()) {
            CalibratedParameter parameter = fixed.parameter();
            table.text(parameter.name()).text(parameter.unit()).text("fixed");
            double kept = parameter.unfitted(fit.problem().crop());
            table.number(kept, DECIMALS).number(kept, DECIMALS);
            table.empty().empty().empty();
            bounds(table, parameter);
            summary(table, kept, Optional.empty());
            table.endRow();
        }
        return result;
    }

    private static void bounds(CsvTable table, CalibratedParameter parameter) {
        table.number(parameter.lower(), DECIMALS)
                .number(parameter.upper(), DECIMALS)
                .text(words(parameter.prior()));
    }

    /** Returns a prior with four digits of its numbers. */
    static String words(Prior prior) {
        return NUMBER.matcher(prior.toString())
                .replaceAll(found -> String.format(Locale.ROOT, "%.4g", Double.parseDouble(found.group()))
                        .replaceAll("(\\.\\d*?)0+$", "$1")
                        .replaceAll("\\.$", ""));
    }

    private static void summary(CsvTable table, double chosen, Optional<ParameterSummary> summary) {
        if (summary.isEmpty()) {
            table.empty().empty().empty().empty().empty();
            table.number(chosen, DECIMALS).empty().empty().empty();
            return;
        }
        ParameterSummary posterior = summary.get();
        table.number(posterior.mean(), DECIMALS)
                .number(posterior.standardDeviation(), DECIMALS)
                .number(posterior.lower5(), DECIMALS)
                .number(posterior.median(), DECIMALS)
                .number(posterior.upper95(), DECIMALS)
                .number(chosen, DECIMALS)
                .number(posterior.rHat(), 4)
                .number(posterior.bulkEffectiveDraws(), 0)
                .number(posterior.tailEffectiveDraws(), 0);
    }

    private static List<ColumnInfo> observationColumns() {
        return List.of(
                ColumnInfo.text("site", "Site"),
                ColumnInfo.text("zone", "Zone of the field"),
                ColumnInfo.text("plot", "Plot, its block in front if there is one"),
                ColumnInfo.integer("planting_year", "yr", "Growth year of planting"),
                ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                ColumnInfo.integer("stand_age", "yr", "Age of the stand in growth years, planting year = 1"),
                ColumnInfo.text("variable", "What was measured"),
                ColumnInfo.text("unit", "Unit of the values; days of dates count from the start of the growth year"),
                ColumnInfo.date("date", "Day of the measurement"),
                ColumnInfo.number("depth_m", "m", "Depth of soil water; empty for the whole profile"),
                ColumnInfo.text("file", "File it was read from"),
                ColumnInfo.integer("line", "", "Line there"),
                ColumnInfo.number("observed", "", "Measured value"));
    }

    private static void observation(CsvTable table, Observation observation) {
        table.text(observation.site())
                .text(observation.zone())
                .text(observation.plot())
                .whole(observation.plantingYear())
                .whole(observation.growthYear())
                .whole(observation.standAge())
                .text(observation.variable().key())
                .text(observation.variable().unit())
                .date(observation.date())
                .number(observation.depthM(), 2)
                .text(observation.file())
                .whole(observation.line())
                .number(observation.value(), VALUE_DECIMALS);
    }

    private ResultTable residuals() {
        List<ColumnInfo> columns = new ArrayList<>(observationColumns());
        columns.add(ColumnInfo.number("stated_error", "", "Standard error as the file states it"));
        columns.add(ColumnInfo.number("simulated_before", "", "Simulated with the values before the calibration"));
        columns.add(ColumnInfo.number("simulated", "", "Simulated with the values of the crop file"));
        columns.add(ColumnInfo.number("residual", "", "Observed minus simulated"));
        columns.add(ColumnInfo.number("standardised", "1", "What is left over in units of the error"));
        columns.add(ColumnInfo.number("season_rain_mm", "mm", "Precipitation in the growing-season window"));
        ResultTable result = ResultTable.start(
                new TableInfo("residuals.csv", "Every value that was fitted to, with its simulation", columns));
        for (Residual residual : outcome.residuals()) {
            observation(result.table(), residual.observation());
            result.table()
                    .number(residual.observation().statedError(), VALUE_DECIMALS)
                    .number(residual.before(), VALUE_DECIMALS)
                    .number(residual.simulated(), VALUE_DECIMALS)
                    .number(residual.residual(), VALUE_DECIMALS)
                    .number(residual.standardised(), VALUE_DECIMALS)
                    .number(residual.seasonRainMm(), 1)
                    .endRow();
        }
        return result;
    }

    private ResultTable dropped() {
        List<ColumnInfo> columns = new ArrayList<>(observationColumns());
        columns.add(ColumnInfo.text("reason", "Why it was left out"));
        ResultTable result =
                ResultTable.start(new TableInfo("left-out.csv", "Values that were not fitted to, and why", columns));
        for (DroppedValue dropped : outcome.data().dropped()) {
            observation(result.table(), dropped.observation());
            result.table().text(dropped.reason()).endRow();
        }
        return result;
    }

    private ResultTable profiles() {
        ResultTable result = ResultTable.start(new TableInfo(
                "profiles.csv",
                "Profile likelihoods: one parameter held, the others fitted again",
                List.of(
                        ColumnInfo.text("parameter", "Parameter that is held"),
                        ColumnInfo.number("value", "", "Where it is held"),
                        ColumnInfo.number("residual_sum_of_squares", "1", "Smallest sum of squares there"),
                        ColumnInfo.number(
                                "signed_root",
                                "1",
                                "Root of the rise over the residual variance, negative below the best value"),
                        ColumnInfo.number("limit", "1", "Size of the root at the ends of the 95 % interval"))));
        for (Profile profile : fit.profiles()) {
            for (ProfilePoint point : profile.points()) {
                boolean finite = Double.isFinite(point.residualSumOfSquares());
                result.table()
                        .text(profile.name())
                        .number(point.value(), DECIMALS)
                        .number(finite ? point.residualSumOfSquares() : Double.NaN, DECIMALS)
                        .number(finite ? point.signedRoot() : Double.NaN, DECIMALS)
                        .number(profile.limit(), DECIMALS)
                        .endRow();
            }
        }
        return result;
    }

    private ResultTable correlations() {
        ResultTable result = ResultTable.start(new TableInfo(
                "correlations.csv",
                "Correlations of the estimates",
                List.of(
                        ColumnInfo.text("parameter", "One parameter"),
                        ColumnInfo.text("other", "Another"),
                        ColumnInfo.number("least_squares", "1", "Correlation by linear theory at the best fit"),
                        ColumnInfo.number("posterior", "1", "Correlation of the posterior"))));
        for (int i = 0; i < outcome.parameters().size(); i++) {
            for (int k = 0; k < i; k++) {
                int one = i;
                int other = k;
                result.table()
                        .text(outcome.parameters().get(i).name())
                        .text(outcome.parameters().get(k).name())
                        .number(fit.result().correlation(i, k), 4)
                        .number(
                                outcome.posterior()
                                        .map(sampled -> sampled.draws().correlation(one, other))
                                        .orElse(Double.NaN),
                                4)
                        .endRow();
            }
        }
        return result;
    }

    private static ResultTable draws(PosteriorDraws draws) {
        List<ColumnInfo> columns = new ArrayList<>();
        columns.add(ColumnInfo.integer("chain", "", "Chain, first is 1"));
        columns.add(ColumnInfo.integer("draw", "", "Draw of the chain, first is 1"));
        draws.names()
                .forEach(name -> columns.add(ColumnInfo.number(name.replace(' ', '_'), "", "Value of the parameter")));
        ResultTable result = ResultTable.start(
                new TableInfo("draws.csv", "Draws from the posterior, first half of each chain left out", columns));
        for (int chain = 0; chain < draws.chains(); chain++) {
            for (int draw = 0; draw < draws.drawsPerChain(); draw++) {
                result.table().whole(chain + 1L).whole(draw + 1L);
                for (double value : draws.draw(chain, draw)) {
                    result.table().number(value, DECIMALS);
                }
                result.table().endRow();
            }
        }
        return result;
    }

    private ResultTable skill() {
        ResultTable result = ResultTable.start(new TableInfo(
                "skill.csv",
                "Skill on yields that were held out, beside two baselines",
                List.of(
                        ColumnInfo.text("held_out", "What is held out at a time: site, plot or year"),
                        ColumnInfo.text("group", "Which one; all together in the first row"),
                        ColumnInfo.text(
                                "predictor", "calibrated engine, mean of the other plots, or line on seasonal rain"),
                        ColumnInfo.integer("yields", "1", "Number of yields predicted"),
                        ColumnInfo.number("rmse_mg_ha", "Mg/ha", "Root mean square error"),
                        ColumnInfo.number("bias_mg_ha", "Mg/ha", "Mean of predicted minus observed"),
                        ColumnInfo.number("nash_sutcliffe", "1", "Nash-Sutcliffe efficiency"),
                        ColumnInfo.number("refined_willmott", "1", "Refined index of agreement"),
                        ColumnInfo.number(
                                "within_90_pct", "1", "Share of yields inside their 90 % prediction interval"))));
        SkillRows.write(outcome.skill(), result.table());
        return result;
    }

    private ResultTable heldOut() {
        List<ColumnInfo> columns = new ArrayList<>(observationColumns());
        columns.add(ColumnInfo.text("held_out", "What was held out at a time"));
        columns.add(ColumnInfo.text("group", "Which one"));
        columns.add(ColumnInfo.number("predicted_mg_ha", "Mg/ha", "Predicted by the engine fitted to the rest"));
        columns.add(ColumnInfo.number("lower_90_pct_mg_ha", "Mg/ha", "Lower end of the 90 % prediction interval"));
        columns.add(ColumnInfo.number("upper_90_pct_mg_ha", "Mg/ha", "Upper end of it"));
        columns.add(ColumnInfo.number("by_mean_mg_ha", "Mg/ha", "Mean of the other plots"));
        columns.add(ColumnInfo.number("by_rain_mg_ha", "Mg/ha", "Straight line on seasonal rain"));
        ResultTable result = ResultTable.start(
                new TableInfo("held-out.csv", "Yields as the rest of the data predicts them", columns));
        for (HeldOut heldOut : outcome.skill()) {
            for (Prediction prediction : heldOut.predictions()) {
                observation(result.table(), prediction.observation());
                result.table()
                        .text(heldOut.what().word())
                        .text(prediction.group())
                        .number(prediction.predicted(), VALUE_DECIMALS)
                        .number(prediction.lower(), VALUE_DECIMALS)
                        .number(prediction.upper(), VALUE_DECIMALS)
                        .number(prediction.byMean(), VALUE_DECIMALS)
                        .number(prediction.byRain(), VALUE_DECIMALS)
                        .endRow();
            }
        }
        return result;
    }
}
