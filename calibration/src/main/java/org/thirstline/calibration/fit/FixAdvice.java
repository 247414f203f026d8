package org.thirstline.calibration.fit;

import java.util.List;
import java.util.Locale;

/**
 * A parameter that should not be fitted to these data. Immutable and thread-safe.
 *
 * @param name the parameter
 * @param reason why
 * @param number what the reason rests on: moves of the data in residual standard deviations, or a collinearity index
 * @param partners parameters that it can't be told apart from; empty for other reasons
 */
public record FixAdvice(String name, Reason reason, double number, List<String> partners) {

    /** Why a parameter should be fixed. */
    public enum Reason {
        /** The simulated data hardly move when the parameter crosses its range. */
        UNRESPONSIVE,
        /** Other parameters can make up for it. */
        COLLINEAR,
        /** Its profile stays flat over its range. */
        FLAT_PROFILE
    }

    /** Copies the partners. */
    public FixAdvice {
        partners = List.copyOf(partners);
    }

    /** Returns the advice in words. */
    public String words() {
        return switch (reason) {
            case UNRESPONSIVE ->
                String.format(
                        Locale.ROOT,
                        "Fix %s: over its whole range the simulated data move by only %.2g residual standard deviations in all.",
                        name,
                        number);
            case COLLINEAR ->
                String.format(
                        Locale.ROOT,
                        "Fix %s, or %s instead: the data can't tell them apart (collinearity index %s, limit %.0f).",
                        name,
                        String.join(" or ", partners),
                        number >= 1.0e4 ? "above 10000" : String.format(Locale.ROOT, "%.1f", number),
                        Identifiability.COLLINEARITY_LIMIT);
            case FLAT_PROFILE ->
                String.format(
                        Locale.ROOT, "Fix %s: every value in its range fits about as well as the best one.", name);
        };
    }
}
