package org.thirstline.calibration.response;

import java.util.Locale;
import java.util.stream.Collectors;
import org.thirstline.model.units.Units;

/** A drought response in words and both sets of units. Immutable and thread-safe. */
public final class ResponseWords {

    private static final double MM_SHOWN = 100.0;

    private final DroughtResponse response;

    ResponseWords(DroughtResponse response) {
        this.response = response;
    }

    /** Returns the slope as loss per 100 mm, or the reason for none. */
    public String slopeSi() {
        return slope(MM_SHOWN, "%.2f Mg/ha per 100 mm");
    }

    /** Returns the slope as loss per inch, or the reason for none. */
    public String slopeUs() {
        return slope(Units.tonAcrePerInch(1.0), "%.3f short ton/acre per inch");
    }

    private String slope(double factor, String pattern) {
        return response.line()
                .map(line -> format(pattern, line.slope() * factor) + " (95 % interval "
                        + range(pattern, line.slopeInterval(), factor) + ")")
                .orElse(response.verdict().words());
    }

    private static String range(String pattern, Interval interval, double factor) {
        String number = pattern.substring(0, pattern.indexOf(' '));
        return format(number, interval.lower() * factor) + " to " + format(number, interval.upper() * factor);
    }

    /** Returns the verdict as one plain sentence. */
    public String verdict() {
        return switch (response.verdict()) {
            case TOO_FEW_YEARS ->
                "Too few years: " + response.n() + " of the " + DroughtResponse.MINIMUM_YEARS
                        + " needed before a line is drawn.";
            case NO_SPREAD -> "All years had the same rainfall deficit; no response can be seen.";
            case NOT_DISTINGUISHABLE ->
                "Over " + response.n() + " years the response to rainfall deficit is not distinguishable from zero: "
                        + slopeSi() + ".";
            case LOSS_GROWS ->
                "Over " + response.n() + " years the loss to drought grows with rainfall deficit by " + slopeSi()
                        + ", or " + slopeUs() + ".";
            case LOSS_SHRINKS ->
                "Over " + response.n()
                        + " years the loss shrinks as rainfall deficit grows, which drought does not explain: "
                        + slopeSi()
                        + ". Look at the data.";
        };
    }

    /** Returns how the robust slope, single years and a threshold bear on the line; empty without a line. */
    public String detail() {
        return response.robustLine().map(this::robust).orElse("")
                + singleYears()
                + (threshold().isEmpty() ? "" : " " + threshold());
    }

    private String robust(RobustLine line) {
        return format("Theil-Sen slope: %.2f Mg/ha per 100 mm", line.slope() * MM_SHOWN) + " (95 % interval "
                + range("%.2f ", line.slopeInterval(), MM_SHOWN) + ").";
    }

    private String singleYears() {
        String range = response.slopeWithoutAnyYear()
                .map(slopes ->
                        " Leaving out any one year gives " + range("%.2f ", slopes, MM_SHOWN) + " Mg/ha per 100 mm.")
                .orElse("");
        String years = response.influentialYears().stream().map(String::valueOf).collect(Collectors.joining(", "));
        return years.isEmpty() ? range : range + " Years that pull the line most: " + years + ".";
    }

    /** Returns the broken line in words where it describes the years better than the straight one; empty elsewhere. */
    public String threshold() {
        return response.brokenLine()
                .map(line -> format(
                                "A broken line fits better (AICc lower by %.1f): no added loss up to a deficit of %.0f mm",
                                response.brokenLineGain(), line.threshold())
                        + " (" + range("%.0f ", line.thresholdInterval(), 1.0) + " mm)"
                        + format(
                                ", then %.2f Mg/ha per 100 mm, or %.3f short ton/acre per inch.",
                                line.slope() * MM_SHOWN, Units.tonAcrePerInch(line.slope())))
                .orElse("");
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
