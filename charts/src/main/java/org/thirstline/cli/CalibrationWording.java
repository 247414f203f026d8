package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.calibrate.PosteriorCalibration.Sampled;
import org.thirstline.calibration.fit.FixAdvice;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.ErrorModel;
import org.thirstline.calibration.skill.SkillScores;

/** A calibration in words, for a terminal. */
final class CalibrationWording {

    private static final double PERCENT = 100.0;

    private final CalibrationOutcome outcome;
    private final CalibrationFit fit;

    CalibrationWording(CalibrationOutcome outcome) {
        this.outcome = outcome;
        fit = outcome.fit();
    }

    void print(PrintWriter out) {
        String invented = outcome.invented() ? " (invented data)" : "";
        out.println(outcome.data().sources().get(0).study().title() + invented);
        out.println();
        data(out);
        out.println();
        parameters(out);
        errors(out);
        posterior(out);
        skill(out);
        soils(out);
    }

    private void data(PrintWriter out) {
        int stands = fit.problem().distinctStands();
        out.printf(
                Locale.ROOT,
                "Fitted to %d measured values of %d %s at %d %s.%n",
                outcome.residuals().size(),
                stands,
                stands == 1 ? "stand" : "stands",
                outcome.data().sources().size(),
                outcome.data().sources().size() == 1 ? "site" : "sites");
        CalibrationJson.leftOut(outcome)
                .forEach((reason, count) ->
                        out.println("Left out: " + count + (count == 1 ? " value, " : " values, ") + reason + "."));
        outcome.data().notices().forEach(out::println);
    }

    private void parameters(PrintWriter out) {
        int width = outcome.parameters().stream()
                .mapToInt(parameter -> parameter.name().length())
                .max()
                .orElse(10);
        String layout = "%-" + width + "s  %9s  %9s  %9s  %s%n";
        out.printf(layout, "parameter", "before", "fitted", "error", "95 % interval (profile)");
        double[] point = fit.point();
        for (int i = 0; i < point.length; i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            out.printf(
                    layout,
                    parameter.name(),
                    number(parameter.start()),
                    number(point[i]),
                    fit.result().isAtBound(i) ? "at bound" : number(fit.standardError(i)),
                    interval(fit.profiles().get(i)));
        }
        fit.fixed()
                .forEach(fixed -> out.println(
                        "Not fitted, kept at " + number(fixed.parameter().start()) + ": "
                                + fixed.advice().words()));
        fit.doubts().stream().map(FixAdvice::words).forEach(words -> out.println("Doubtful: " + words));
        if (fit.profilesFoundBetter()) {
            out.println("A profile found a better fit than the searches: try more --starts, or --global.");
        }
        out.printf(
                Locale.ROOT,
                "%d of %d searches ended at the best fit.%n",
                fit.searchesAgreeing(),
                fit.searches().size());
    }

    private static String interval(Profile profile) {
        return switch (profile.verdict()) {
            case DETERMINED -> number(profile.lower()) + " to " + number(profile.upper());
            case FLAT -> "not determined";
            case ONE_SIDED ->
                profile.lowerOpen() ? "below " + number(profile.upper()) : "above " + number(profile.lower());
        };
    }

    private void errors(PrintWriter out) {
        for (ErrorModel error : fit.problem().errors()) {
            String size =
                    switch (error.kind()) {
                        case SD -> number(error.size()) + " " + error.variable().unit();
                        case CV -> String.format(Locale.ROOT, "%.1f %%", PERCENT * error.size());
                        case STATED -> number(error.size()) + " times the stated errors";
                    };
            out.println("Error of " + error.variable().key() + ": " + size
                    + (error.estimated() ? " (estimated from what is left over)" : " (as given)"));
        }
    }

    private void posterior(PrintWriter out) {
        Optional<Sampled> sampled = outcome.posterior();
        if (sampled.isEmpty()) {
            return;
        }
        out.println();
        out.printf(
                Locale.ROOT,
                "Posterior: %d draws of %d chains, %.0f %% of the proposals accepted.%n",
                sampled.get().draws().size(),
                sampled.get().draws().chains(),
                PERCENT * sampled.get().acceptedShare());
        for (ParameterSummary summary : outcome.summaries()) {
            out.println("  " + summary.name() + ": median " + number(summary.median()) + ", 90 % from "
                    + number(summary.lower5()) + " to " + number(summary.upper95()));
        }
        if (!outcome.summaries().stream().allMatch(ParameterSummary::converged)) {
            out.println(
                    "  The chains have not settled (R-hat above 1.01, or too few effective draws): ask for more draws.");
        }
    }

    private void skill(PrintWriter out) {
        for (HeldOut heldOut : outcome.skill()) {
            out.println();
            out.println("Yields predicted with each " + heldOut.what().word() + " held out:");
            scores(out, "the calibrated engine", heldOut.model().overall());
            scores(out, "the mean of the other plots", heldOut.mean().overall());
            scores(out, "a line on seasonal rain", heldOut.rain().overall());
            out.printf(
                    Locale.ROOT,
                    "  %d of %d yields lie in their 90 %% prediction interval.%n",
                    heldOut.coverage().inside(),
                    heldOut.coverage().count());
            SkillScores best = heldOut.mean().overall().rootMeanSquareError()
                            < heldOut.rain().overall().rootMeanSquareError()
                    ? heldOut.mean().overall()
                    : heldOut.rain().overall();
            if (heldOut.model().overall().rootMeanSquareError() >= best.rootMeanSquareError()) {
                out.println("  The engine is no better here than the simpler of these: do not rely on it for this.");
            }
        }
    }

    private static void scores(PrintWriter out, String what, SkillScores scores) {
        out.printf(
                Locale.ROOT,
                "  %-28s off by %.2f Mg/ha (root mean square), bias %+.2f, efficiency %.2f%n",
                what,
                scores.rootMeanSquareError(),
                scores.bias(),
                scores.efficiency());
    }

    private void soils(PrintWriter out) {
        double[] point = fit.point();
        boolean first = true;
        for (int i = 0; i < point.length; i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            if (parameter.soil().isPresent()) {
                if (first) {
                    out.println();
                    first = false;
                }
                out.println("The crop file cannot hold the soil; " + CalibratedCrop.advice(parameter, point[i]) + ".");
            }
        }
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, "%.4g", value);
    }
}
