package org.thirstline.calibration.age;

import java.util.Locale;
import java.util.Optional;
import org.thirstline.calibration.response.Interval;

/** Verdicts in one plain sentence. */
final class AgeWords {

    private final AgeOptions options;

    AgeWords(AgeOptions options) {
        this.options = options;
    }

    String sentence(AgeVerdict verdict, boolean simulated, Optional<DeclineFit> raw, Optional<DeclineFit> fair) {
        if (raw.isEmpty()) {
            return format(
                    "Can't tell yet: at least %d growth years from age %d, %d of them past an onset, are needed before a decline is looked for.",
                    AgeAnalysis.FEWEST_YEARS, options.establishedAge(), options.agesPastOnset());
        }
        if (!simulated || fair.isEmpty()) {
            return unattributed(raw.get());
        }
        return switch (verdict) {
            case DECLINE_BEYOND_WEATHER -> decline(fair.get());
            case WEATHER_EXPLAINS_IT -> weather(fair.get(), raw.get());
            case CANNOT_TELL_YET -> undecided(fair.get());
        };
    }

    private static String decline(DeclineFit fit) {
        return format(
                "Decline beyond weather: over %d growth years yield fell by %s a year after age %d, more than weather explains (chance without decline at most %s, AICc gain %s).",
                fit.years(),
                rate(fit.ratePerYear(), fit.rateInterval()),
                fit.onsetAge(),
                chance(fit.decidingChance()),
                gain(fit.criterionGain()));
    }

    private String weather(DeclineFit fair, DeclineFit raw) {
        String mean = rate(fair.meanDeclinePerYear(), fair.meanDeclineInterval());
        if (AgeAnalysis.rulesOutMargin(fair, options)) {
            return format(
                    "Weather explains it: with weather taken out the mean decline over %d growth years is %s a year, which rules out %s a year.",
                    fair.years(), mean, percent(options.marginPerYear()));
        }
        return format(
                "Weather explains it: yields as harvested fell by %s a year on average over %d growth years, but with weather taken out the mean decline is %s a year.",
                percent(raw.meanDeclinePerYear()), fair.years(), mean);
    }

    private String undecided(DeclineFit fit) {
        boolean excluded = fit.meanDeclineInterval().upper() < options.marginPerYear();
        String rest = excluded
                ? format(
                        "; %d established years are needed before %s a year is ruled out",
                        AgeAnalysis.FEWEST_YEARS_TO_RULE_OUT, percent(options.marginPerYear()))
                : format(", and %s a year is not ruled out", percent(options.marginPerYear()));
        return format(
                        "Can't tell yet: with weather taken out the mean decline over %d growth years is %s a year; no decline stands in every reading (chance without decline up to %s)",
                        fit.years(),
                        rate(fit.meanDeclinePerYear(), fit.meanDeclineInterval()),
                        chance(fit.decidingChance()))
                + rest + ".";
    }

    private static String unattributed(DeclineFit raw) {
        return format(
                "Can't tell yet: yields as harvested changed by a mean decline of %s a year over %d growth years, but without the weather of those years this can't be attributed to age.",
                rate(raw.meanDeclinePerYear(), raw.meanDeclineInterval()), raw.years());
    }

    private static String rate(double rate, Interval interval) {
        return format(
                "%.1f %% (90 %% interval %.1f to %.1f %%)",
                100.0 * rate, 100.0 * interval.lower(), 100.0 * interval.upper());
    }

    private static String percent(double share) {
        return format("%.1f %%", 100.0 * share);
    }

    private static String chance(double chance) {
        return format("%.3f", chance);
    }

    private static String gain(double gain) {
        return Double.isInfinite(gain) ? "not defined for so few years" : format("%.1f", gain);
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
