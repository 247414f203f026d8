package org.thirstline.charts;

import org.thirstline.calibration.response.BrokenLine;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.response.ResponseVerdict;
import org.thirstline.calibration.response.StraightLine;

/** What a drought response says, in the words of a chart. Immutable and thread-safe. */
final class ResponseText {

    /** Thresholds this near to normal are told as normal [mm]. */
    private static final double NEAR_NORMAL_MM = 10.0;

    private final ResponseView view;
    private final DroughtResponse response;
    private final UnitSystem units;
    private final String noun;
    private final boolean againstNormal;

    ResponseText(ResponseView view, UnitSystem units) {
        this.view = view;
        this.response = view.response();
        this.againstNormal = view.isAgainstNormal();
        this.noun = view.noun();
        this.units = units;
    }

    String title() {
        return switch (response.verdict()) {
            case TOO_FEW_YEARS ->
                "Too few years for a line: " + response.n() + " of the " + DroughtResponse.MINIMUM_YEARS + " needed";
            case NO_SPREAD -> "Every year had the same " + noun + ": no response can be seen";
            case NOT_DISTINGUISHABLE ->
                response.brokenLine()
                        .map(this::brokenTitle)
                        .orElse("No clear link between " + noun + " and lost yield in " + response.n() + " years");
            case LOSS_GROWS -> response.brokenLine().map(this::brokenTitle).orElseGet(this::straightTitle);
            case LOSS_SHRINKS -> "The loss shrinks with more " + noun + ": look at the data first";
        };
    }

    private String straightTitle() {
        double slope = response.line().orElseThrow().slope();
        return "Each " + units.waterStep() + " of " + noun + " cost " + slopeText(slope);
    }

    private String brokenTitle(BrokenLine line) {
        String cost = " cost " + slopeText(line.slope());
        String threshold = units.waterText(Math.abs(line.threshold()));
        if (!againstNormal) {
            return "Once ET0 exceeded rain by " + units.waterText(line.threshold()) + ", each further "
                    + units.waterStep() + cost;
        }
        if (Math.abs(line.threshold()) < NEAR_NORMAL_MM) {
            return "Once rain fell below normal, each missing " + units.waterStep() + cost;
        }
        return line.threshold() > 0.0
                ? "Beyond " + threshold + " of missing rain, each further " + units.waterStep() + cost
                : "Once rain fell under " + threshold + " above normal, each " + units.waterStep() + " less" + cost;
    }

    private String slopeText(double mgHaPerMm) {
        return Numbers.significant(units.slope(mgHaPerMm), 2) + " " + units.yieldUnit();
    }

    String subtitle(String zone, String deficitMeaning) {
        String meaning = deficitMeaning.isBlank() ? "" : " (" + deficitMeaning + ")";
        String text = Subtitles.sentence(
                zone, "yield lost to drought against " + (againstNormal ? "rainfall deficit" : noun) + meaning);
        return switch (response.verdict()) {
            case TOO_FEW_YEARS -> text + "; no line is drawn through so few years";
            case NO_SPREAD -> text + "; no line is drawn";
            case NOT_DISTINGUISHABLE -> text + "; the slope may as well be zero";
            case LOSS_GROWS, LOSS_SHRINKS -> text + ", " + response.n() + " growth years";
        };
    }

    /** Returns the equation in the reader's units, empty without a line. */
    String equation() {
        return response.brokenLine()
                .map(line -> equation(line, units))
                .or(() -> response.line().map(line -> equation(line, units)))
                .orElse("");
    }

    /** Returns the equation in both units with what tells how good it is, and what a calibration leaves possible. */
    String note() {
        String whiskers = view.bands().isEmpty() ? "" : Whiskers.note(view.bands());
        return (line() + slopes() + " " + whiskers).strip();
    }

    private String slopes() {
        return view.slopes()
                .filter(band -> band.isKnown() && hasLine())
                .map(band -> " Over " + band.draws() + " draws of the calibration the straight line's slope is "
                        + Numbers.fixed(units.slope(band.low()), 2) + " to "
                        + Numbers.fixed(units.slope(band.high()), 2) + " " + units.yieldUnit() + " per "
                        + units.waterStep() + " (5 to 95 %).")
                .orElse("");
    }

    private String line() {
        if (response.brokenLine().isPresent()) {
            BrokenLine line = response.brokenLine().orElseThrow();
            var interval = line.thresholdInterval();
            return "Line: " + equation(line, UnitSystem.SI) + ", or " + equation(line, UnitSystem.US)
                    + "; threshold 95 % interval " + units.waterText(interval.lower()) + " to "
                    + units.waterText(interval.upper()) + "; " + response.n()
                    + " years; better than a straight line by " + Numbers.fixed(response.brokenLineGain(), 1)
                    + " in AICc.";
        }
        return response.line().map(this::straightNote).orElse("");
    }

    private String straightNote(StraightLine line) {
        var interval = line.slopeInterval();
        String fit = Double.isNaN(line.rSquared()) ? "" : ", R\u00b2 " + Numbers.fixed(line.rSquared(), 2);
        return "Line: " + equation(line, UnitSystem.SI) + ", or " + equation(line, UnitSystem.US) + "; " + line.n()
                + " years" + fit + "; slope 95 % interval " + Numbers.fixed(units.slope(interval.lower()), 2) + " to "
                + Numbers.fixed(units.slope(interval.upper()), 2) + " " + units.yieldUnit() + " per "
                + units.waterStep() + ".";
    }

    private String equation(StraightLine line, UnitSystem units) {
        double slope = units.dryMatter(line.slope()) / units.water(1.0);
        return "loss = " + Numbers.fixed(units.dryMatter(line.intercept()), 2) + signed(slope) + " \u00d7 " + variable()
                + suffix(units);
    }

    private String equation(BrokenLine line, UnitSystem units) {
        double slope = units.dryMatter(line.slope()) / units.water(1.0);
        String threshold = Numbers.fixed(units.water(line.threshold()), units == UnitSystem.SI ? 0 : 1);
        String difference = threshold.startsWith("\u2212")
                ? variable() + " + " + threshold.substring(1)
                : variable() + " \u2212 " + threshold;
        return "loss = " + Numbers.fixed(units.dryMatter(line.level()), 2) + signed(slope) + " \u00d7 max(0, "
                + difference + ")" + suffix(units);
    }

    private String variable() {
        return againstNormal ? "deficit" : "(ET0 \u2212 rain)";
    }

    private static String signed(double value) {
        return (value < 0.0 ? " \u2212 " : " + ") + Numbers.significant(Math.abs(value), 3);
    }

    private static String suffix(UnitSystem units) {
        return " (" + units.yieldUnit() + ", " + units.waterUnit() + ")";
    }

    boolean hasLine() {
        return response.line().isPresent();
    }

    boolean isBroken() {
        ResponseVerdict verdict = response.verdict();
        return response.brokenLine().isPresent() && verdict != ResponseVerdict.LOSS_SHRINKS;
    }
}
