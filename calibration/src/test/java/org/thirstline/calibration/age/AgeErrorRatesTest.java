package org.thirstline.calibration.age;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often the verdict is right on trials whose truth is known; run with the profile long-tests. Seeds are fixed, so that a rate moves only when the method does. */
@Tag("long")
class AgeErrorRatesTest {

    private static final int TRIALS = 500;

    private static final AgeOptions OPTIONS = AgeOptions.usual().withReplicates(199, 199, 199);

    private static List<AgeFindings> findings(SyntheticTrial trial, int count) {
        return LongStream.range(0, count)
                .parallel()
                .mapToObj(seed -> AgeAnalysis.of(trial.draw(seed), OPTIONS.withSeed(seed)))
                .toList();
    }

    private static double share(String what, List<AgeFindings> findings, Predicate<AgeFindings> test) {
        double share = findings.stream().filter(test).count() / (double) findings.size();
        System.out.printf("%s: %.3f of %d trials%n", what, share, findings.size());
        return share;
    }

    private static boolean decline(AgeFindings findings) {
        return findings.verdict() == AgeVerdict.DECLINE_BEYOND_WEATHER;
    }

    private static boolean covers(AgeFindings findings, double rate) {
        return findings.withWeatherTakenOut().orElseThrow().rateInterval().contains(rate);
    }

    @Test
    void noDeclineIsSeldomCalledOne() {
        List<AgeFindings> findings = findings(SyntheticTrial.steady(4, 15), TRIALS);

        assertThat(share("no decline, called", findings, AgeErrorRatesTest::decline))
                .isLessThanOrEqualTo(0.05);
        assertThat(share("no decline, covered", findings, f -> covers(f, 0.0))).isBetween(0.85, 0.95);
    }

    @Test
    void droughtAtTheEndSimulatedByFourFifthsIsSeldomCalledDecline() {
        SyntheticTrial steady = SyntheticTrial.steady(4, 15);

        assertThat(share(
                        "drought in the last year, called",
                        findings(steady.endingInDrought(0.8, 0.5), TRIALS),
                        AgeErrorRatesTest::decline))
                .isLessThanOrEqualTo(0.05);
        assertThat(share(
                        "drought in the last two years, called",
                        findings(steady.endingInDrought(0.8, 0.4, 0.5), TRIALS),
                        AgeErrorRatesTest::decline))
                .isLessThanOrEqualTo(0.05);
    }

    @Test
    void declineOfFivePercentFromYearSixIsFound() {
        List<AgeFindings> findings = findings(SyntheticTrial.declining(4, 15, 0.05, 6), TRIALS);

        assertThat(share("5 % a year, found", findings, AgeErrorRatesTest::decline))
                .isGreaterThanOrEqualTo(0.80);
        assertThat(share("5 % a year, covered", findings, f -> covers(f, 0.05))).isBetween(0.85, 0.95);
    }

    @Test
    void declineOfTheMarginIsSeldomRuledOut() {
        List<AgeFindings> findings = findings(SyntheticTrial.declining(4, 15, OPTIONS.marginPerYear(), 3), TRIALS);

        // One side of a 90 % interval is 5 %; resampled years are somewhat too narrow.
        assertThat(share(
                        "2 % a year from the start, ruled out",
                        findings, f -> f.verdict() == AgeVerdict.WEATHER_EXPLAINS_IT))
                .isLessThanOrEqualTo(0.10);
    }

    @Test
    void eightYearsOfOnePlantingCanNotTell() {
        List<AgeFindings> steady = findings(SyntheticTrial.steady(4, 8), TRIALS);
        List<AgeFindings> falling = findings(SyntheticTrial.declining(4, 8, 0.05, 4), TRIALS);
        List<AgeFindings> collapsing = findings(SyntheticTrial.declining(4, 8, 0.25, 4), TRIALS);
        Predicate<AgeFindings> open = f -> f.verdict() == AgeVerdict.CANNOT_TELL_YET;

        assertThat(share("8 years, no decline, can't tell", steady, open)).isGreaterThan(0.95);
        assertThat(share("8 years, no decline, called", steady, AgeErrorRatesTest::decline))
                .isLessThanOrEqualTo(0.05);
        assertThat(share("8 years, 5 % a year, can't tell", falling, open)).isGreaterThan(0.80);
        assertThat(share("8 years, 25 % a year, called", collapsing, AgeErrorRatesTest::decline))
                .isGreaterThan(0.80);
    }
}
