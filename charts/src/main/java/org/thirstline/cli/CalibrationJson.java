package org.thirstline.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.calibrate.PosteriorCalibration.Sampled;
import org.thirstline.calibration.fit.FixAdvice;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.skill.SkillScores;
import org.thirstline.io.text.JsonText;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code calibration.json}: parameters, what the data can tell, errors, posterior, skill, what was left out. */
final class CalibrationJson {

    static final String FILE = "calibration.json";

    private CalibrationJson() {}

    static String text(CalibrationOutcome outcome) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        CalibrationFit fit = outcome.fit();
        root.put("study", outcome.data().sources().get(0).study().title());
        root.put("invented", outcome.invented());
        ArrayNode sites = root.putArray("sites");
        outcome.data().sources().forEach(source -> sites.add(source.site()));
        root.put("values_fitted_to", outcome.residuals().size());
        root.put("values_left_out", outcome.data().dropped().size());
        root.put("distinct_stands_simulated", fit.problem().distinctStands());
        parameters(outcome, root.putArray("parameters"));
        ArrayNode fixed = root.putArray("fixed");
        fit.fixed().forEach(each -> {
            ObjectNode node = fixed.addObject();
            node.put("parameter", each.parameter().name());
            node.put("value", each.parameter().unfitted(fit.problem().crop()));
            node.put("why", each.advice().words());
        });
        ArrayNode doubts = root.putArray("doubts");
        fit.doubts().stream().map(FixAdvice::words).forEach(doubts::add);
        fit(fit, root.putObject("least_squares"));
        ArrayNode errors = root.putArray("errors");
        fit.problem().errors().forEach(error -> {
            ObjectNode node = errors.addObject();
            node.put("variable", error.variable().key());
            node.put("kind", error.kind().name().toLowerCase(Locale.ROOT));
            finite("size", error.size(), node);
            node.put("estimated", error.estimated());
        });
        outcome.posterior().ifPresent(sampled -> posterior(outcome, sampled, root.putObject("posterior")));
        ArrayNode skill = root.putArray("skill_on_held_out_yields");
        outcome.skill().forEach(heldOut -> skill(heldOut, skill.addObject()));
        ObjectNode left = root.putObject("left_out");
        leftOut(outcome).forEach(left::put);
        ArrayNode notices = root.putArray("notices");
        outcome.data().notices().forEach(notices::add);
        return JsonText.of(root);
    }

    /** Reasons with the number of values that each concerns. */
    static Map<String, Integer> leftOut(CalibrationOutcome outcome) {
        Map<String, Integer> reasons = new LinkedHashMap<>();
        outcome.data().dropped().forEach(dropped -> reasons.merge(dropped.reason(), 1, Integer::sum));
        return reasons;
    }

    private static void parameters(CalibrationOutcome outcome, ArrayNode array) {
        CalibrationFit fit = outcome.fit();
        double[] point = fit.point();
        for (int i = 0; i < point.length; i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            Profile profile = fit.profiles().get(i);
            ObjectNode node = array.addObject();
            node.put("parameter", parameter.name());
            node.put("unit", parameter.unit());
            node.put("before", parameter.start());
            node.put("value", outcome.chosen().values().get(i));
            node.put("value_is", outcome.chosen().basis().words());
            node.put("least_squares", point[i]);
            finite("standard_error", fit.standardError(i), node);
            node.put("at_bound", fit.result().isAtBound(i));
            node.put("profile", profile.words());
            node.put("lower_bound", parameter.lower());
            node.put("upper_bound", parameter.upper());
            node.put("prior", CalibrationTables.words(parameter.prior()));
        }
    }

    private static void fit(CalibrationFit fit, ObjectNode node) {
        finite("residual_sum_of_squares", fit.result().residualSumOfSquares(), node);
        node.put("degrees_of_freedom", fit.result().degreesOfFreedom());
        finite("condition_number", fit.result().conditionNumber(), node);
        node.put("searches", fit.searches().size());
        node.put("searches_at_the_best", fit.searchesAgreeing());
        node.put("profiles_found_a_better_fit", fit.profilesFoundBetter());
    }

    private static void posterior(CalibrationOutcome outcome, Sampled sampled, ObjectNode node) {
        List<ParameterSummary> summaries = outcome.summaries();
        node.put("draws", sampled.draws().size());
        node.put("chains", sampled.draws().chains());
        node.put("generations", sampled.generations());
        node.put("evaluations", sampled.evaluations());
        finite("accepted_share", sampled.acceptedShare(), node);
        node.put("converged", summaries.stream().allMatch(ParameterSummary::converged));
        ArrayNode array = node.putArray("parameters");
        for (ParameterSummary summary : summaries) {
            ObjectNode each = array.addObject();
            each.put("parameter", summary.name());
            finite("mean", summary.mean(), each);
            finite("standard_deviation", summary.standardDeviation(), each);
            finite("median", summary.median(), each);
            finite("lower_5_pct", summary.lower5(), each);
            finite("upper_95_pct", summary.upper95(), each);
            finite("r_hat", summary.rHat(), each);
            finite("bulk_effective_draws", summary.bulkEffectiveDraws(), each);
            finite("tail_effective_draws", summary.tailEffectiveDraws(), each);
        }
    }

    private static void skill(HeldOut heldOut, ObjectNode node) {
        node.put("held_out", heldOut.what().word());
        scores(heldOut.model().overall(), node.putObject("calibrated_engine"));
        scores(heldOut.mean().overall(), node.putObject("mean_of_the_other_plots"));
        scores(heldOut.rain().overall(), node.putObject("line_on_seasonal_rain"));
        node.put("share_within_90_pct_interval", heldOut.coverage().share());
    }

    private static void scores(SkillScores scores, ObjectNode node) {
        node.put("yields", scores.count());
        finite("rmse_mg_ha", scores.rootMeanSquareError(), node);
        finite("bias_mg_ha", scores.bias(), node);
        finite("nash_sutcliffe", scores.efficiency(), node);
        finite("refined_willmott", scores.refinedIndex(), node);
    }

    private static void finite(String key, double value, ObjectNode node) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
    }
}
