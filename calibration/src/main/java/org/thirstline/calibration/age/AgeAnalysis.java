package org.thirstline.calibration.age;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Is it the stand, or the weather? Yields over what an unageing stand would have given in the same years are fitted against stand age, with
 * plots and years as random effects. The years are the sample: more plots in the same years hardly help.
 */
public final class AgeAnalysis {

    /** Growth years of established stand under which nothing is fitted (our choice). */
    public static final int FEWEST_YEARS = 5;

    /** Growth years of established stand under which no decline is ruled out: with six, intervals hold the truth too seldom (measured: 85 %). */
    public static final int FEWEST_YEARS_TO_RULE_OUT = 8;

    /** Share of the apparent decline that may remain once weather is out, for weather to be called the explanation (our choice). */
    private static final double MOSTLY_WEATHER = 0.5;

    private AgeAnalysis() {}

    /** Answers for one trial. Without simulated yields the raw curve is fitted, but nothing is attributed. */
    public static AgeFindings of(TrialData data, AgeOptions options) {
        TrialDesign bare = TrialDesign.of(data.withoutSimulation(), options.establishedAge());
        Optional<DeclineFit> raw = new DeclineFitter(bare, bare.logObserved(), options).fit();
        Optional<DeclineFit> fair = Optional.empty();
        if (data.hasSimulation()) {
            TrialDesign design = TrialDesign.of(data, options.establishedAge());
            fair = new DeclineFitter(design, design.logRatio(), options).fit();
        }
        AgeVerdict verdict =
                fair.map(fit -> verdict(fit, raw.orElseThrow(), options)).orElse(AgeVerdict.CANNOT_TELL_YET);
        String sentence = new AgeWords(options).sentence(verdict, data.hasSimulation(), raw, fair);
        return new AgeFindings(verdict, sentence, raw, fair);
    }

    /** Counts verdicts of one trial under several simulations, such as draws from a posterior. */
    public static Map<AgeVerdict, Integer> tally(List<TrialData> simulations, AgeOptions options) {
        Map<AgeVerdict, Integer> tally = new EnumMap<>(AgeVerdict.class);
        simulations.forEach(data -> tally.merge(of(data, options).verdict(), 1, Integer::sum));
        return tally;
    }

    private static AgeVerdict verdict(DeclineFit fair, DeclineFit raw, AgeOptions options) {
        if (fair.declines()) {
            return AgeVerdict.DECLINE_BEYOND_WEATHER;
        }
        return rulesOutMargin(fair, options) || weatherTookIt(fair, raw)
                ? AgeVerdict.WEATHER_EXPLAINS_IT
                : AgeVerdict.CANNOT_TELL_YET;
    }

    static boolean rulesOutMargin(DeclineFit fair, AgeOptions options) {
        return fair.years() >= FEWEST_YEARS_TO_RULE_OUT
                && fair.meanDeclineInterval().upper() < options.marginPerYear();
    }

    /** A raw decline that is surely larger than what remains of it, of which less than half remains, and nothing of it called. */
    private static boolean weatherTookIt(DeclineFit fair, DeclineFit raw) {
        return raw.declines()
                && fair.chance(Reading.FACE_VALUE) > 0.5 * AgeOptions.SIZE
                && fair.meanDeclineInterval().upper() < raw.meanDeclinePerYear()
                && fair.meanDeclinePerYear() < MOSTLY_WEATHER * raw.meanDeclinePerYear();
    }
}
