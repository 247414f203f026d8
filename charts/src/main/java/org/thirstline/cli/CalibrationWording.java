package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationOutcome;
import org.thirstline.calibration.calibrate.HeldOut;
import org.thirstline.calibration.fit.FixAdvice;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.ErrorModel;
import org.thirstline.calibration.skill.SkillScores;

/** A calibration in words, for terminal and report. */
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
        out.println(fittedTo());
        leftOut().forEach(out::println);
        outcome.data().notices().forEach(out::println);
        out.println();
        parameters(out);
        doubts().forEach(out::println);
        out.println(searches());
        errors().forEach(out::println);
        if (outcome.posterior().isPresent()) {
            out.println();
            posterior().forEach(out::println);
        }
        skill(out);
        if (!soils().isEmpty()) {
            out.println();
            soils().forEach(out::println);
        }
    }

    /** Returns what came out, one sentence each. */
    List<String> findings() {
        List<String> findings = new ArrayList<>(List.of(fittedTo()));
        findings.addAll(skillSentences());
        findings.addAll(bounds());
        findings.addAll(errors());
        findings.add(searches());
        findings.addAll(posterior());
        findings.addAll(soils());
        return findings;
    }

    private String fittedTo() {
        int stands = fit.problem().distinctStands();
        return String.format(
                Locale.ROOT,
                "Fitted to %d measured values of %d %s at %d %s.",
                outcome.residuals().size(),
                stands,
                stands == 1 ? "stand" : "stands",
                outcome.data().sources().size(),
                outcome.data().sources().size() == 1 ? "site" : "sites");
    }

    List<String> leftOut() {
        List<String> lines = new ArrayList<>();
        CalibrationJson.leftOut(outcome)
                .forEach((reason, count) ->
                        lines.add("Left out: " + count + (count == 1 ? " value, " : " values, ") + reason + "."));
        return lines;
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
    }

    List<String> doubts() {
        List<String> lines = new ArrayList<>();
        fit.fixed()
                .forEach(fixed -> lines.add("Not fitted, kept at "
                        + number(fixed.parameter().unfitted(fit.problem().crop())) + ": "
                        + fixed.advice().words()));
        fit.doubts().stream().map(FixAdvice::words).forEach(words -> lines.add("Doubtful: " + words));
        lines.addAll(bounds());
        if (fit.profilesFoundBetter()) {
            lines.add("A profile found a better fit than the searches: try more --starts, or --global.");
        }
        return lines;
    }

    /** Says which values are bounds rather than estimates. */
    private List<String> bounds() {
        List<String> lines = new ArrayList<>();
        double[] point = fit.point();
        for (int i = 0; i < point.length; i++) {
            if (fit.result().isAtBound(i)) {
                CalibratedParameter parameter = outcome.parameters().get(i);
                lines.add(
                        parameter.name() + " ended at its " + (point[i] <= parameter.lower() ? "lower" : "upper")
                                + " bound of " + number(point[i])
                                + ", where the data alone would not have stopped: that is no estimate, and what was fitted with it leans on"
                                + " it. Fix it, or measure what shows it"
                                + (outcome.posterior().isPresent()
                                        ? "."
                                        : ", or sample the posterior (--posterior 4000), which weighs the published range too."));
            }
        }
        return lines;
    }

    private String searches() {
        return fit.searchesAgreeing() + " of " + fit.searches().size() + " searches ended at the best fit.";
    }

    static String interval(Profile profile) {
        return switch (profile.verdict()) {
            case DETERMINED -> number(profile.lower()) + " to " + number(profile.upper());
            case FLAT -> "not determined";
            case ONE_SIDED ->
                profile.lowerOpen() ? "below " + number(profile.upper()) : "above " + number(profile.lower());
        };
    }

    private List<String> errors() {
        return fit.problem().errors().stream().map(CalibrationWording::error).toList();
    }

    private static String error(ErrorModel error) {
        String size =
                switch (error.kind()) {
                    case SD -> number(error.size()) + " " + error.variable().unit();
                    case CV -> String.format(Locale.ROOT, "%.1f %%", PERCENT * error.size());
                    case STATED -> number(error.size()) + " times the stated errors";
                };
        return "Error of " + error.variable().key() + ": " + size
                + (error.estimated() ? " (estimated from what is left over)." : " (as given).");
    }

    private List<String> posterior() {
        List<String> lines = new ArrayList<>();
        outcome.posterior()
                .ifPresent(sampled -> lines.add(String.format(
                        Locale.ROOT,
                        "Posterior: %d draws of %d chains, %.0f %% of the proposals accepted.",
                        sampled.draws().size(),
                        sampled.draws().chains(),
                        PERCENT * sampled.acceptedShare())));
        for (ParameterSummary summary : outcome.summaries()) {
            lines.add("Posterior of " + summary.name() + ": median " + number(summary.median()) + ", 90 % from "
                    + number(summary.lower5()) + " to " + number(summary.upper95()) + ".");
        }
        lines.addAll(apart());
        if (!outcome.summaries().stream().allMatch(ParameterSummary::converged)) {
            lines.add(
                    "The chains have not settled (R-hat above 1.01, or too few effective draws), so that posterior and crop file may lie"
                            + " wrong: ask for more draws.");
        }
        if (outcome.posterior().isPresent()) {
            lines.add("Values of the crop file: " + outcome.chosen().basis().words() + ".");
        }
        return lines;
    }

    /** Says where least squares and the posterior do not mean the same. */
    private List<String> apart() {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < outcome.summaries().size(); i++) {
            ParameterSummary summary = outcome.summaries().get(i);
            double fitted = fit.point()[i];
            if (fitted < summary.lower5() || fitted > summary.upper95()) {
                names.add(summary.name());
            }
        }
        return names.isEmpty()
                ? List.of()
                : List.of("Least squares lies outside the 90 % of the posterior for " + String.join(", ", names)
                        + ": it knows the measured values alone, the posterior the published ranges (its priors) too."
                        + " Which to believe hangs on whether those ranges hold for this stand.");
    }

    private void skill(PrintWriter out) {
        for (HeldOut heldOut : outcome.skill()) {
            out.println();
            out.println("Yields predicted with each " + heldOut.what().word() + " held out:");
            scores(out, "the calibrated engine", heldOut.model().overall());
            scores(out, "the mean of the other plots", heldOut.mean().overall());
            scores(out, "a line on seasonal rain", heldOut.rain().overall());
            out.println("  " + caught(heldOut));
            if (!isBetter(heldOut)) {
                out.println("  The engine is no better here than the simpler of these: do not rely on it for this.");
            }
        }
    }

    private static String caught(HeldOut heldOut) {
        return heldOut.coverage().inside() + " of " + heldOut.coverage().count()
                + " yields lie in their 90 % prediction interval.";
    }

    private static double bestBaseline(HeldOut heldOut) {
        return Math.min(
                heldOut.mean().overall().rootMeanSquareError(),
                heldOut.rain().overall().rootMeanSquareError());
    }

    private static boolean isBetter(HeldOut heldOut) {
        return heldOut.model().overall().rootMeanSquareError() < bestBaseline(heldOut);
    }

    List<String> skillSentences() {
        return outcome.skill().stream()
                .map(heldOut -> String.format(
                        Locale.ROOT,
                        "With each %s held out, yields are predicted to %.2f Mg/ha (root mean square), %s; %s",
                        heldOut.what().word(),
                        heldOut.model().overall().rootMeanSquareError(),
                        isBetter(heldOut)
                                ? String.format(
                                        Locale.ROOT,
                                        "better than the best of the simple predictions (%.2f)",
                                        bestBaseline(heldOut))
                                : String.format(
                                        Locale.ROOT,
                                        "no better than the best of the simple predictions (%.2f): do not rely on it for this",
                                        bestBaseline(heldOut)),
                        caught(heldOut)))
                .toList();
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

    private List<String> soils() {
        List<String> lines = new ArrayList<>();
        double[] point = outcome.chosen().point();
        for (int i = 0; i < point.length; i++) {
            CalibratedParameter parameter = outcome.parameters().get(i);
            if (parameter.soil().isPresent()) {
                lines.add("The crop file cannot hold the soil; " + CalibratedCrop.advice(parameter, point[i]) + ".");
            }
        }
        return lines;
    }

    static String number(double value) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, "%.4g", value);
    }
}
