package org.thirstline.calibration.age;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

class AgeAnalysisTest {

    private static final AgeOptions OPTIONS = AgeOptions.usual().withReplicates(199, 199, 199);

    /** Two log yields equal but for rounding. */
    private static final org.assertj.core.data.Offset<Double> ROUNDING = within(1e-6);

    private static TrialData exact(double decline, int onset, double dryLastYears) {
        List<PlotYear> rows = new ArrayList<>();
        for (int plot = 0; plot < 3; plot++) {
            for (int age = 1; age <= 14; age++) {
                double weather = 1.0 + 0.1 * Math.sin(2.1 * age) - (age > 10 ? dryLastYears : 0.0);
                double simulated = 15.0 * weather;
                double wobble = 1.0 + 0.02 * Math.sin(5.0 * age + plot) + 0.02 * Math.sin(37.0 * age * (plot + 1));
                double observed = simulated * Math.pow(1.0 - decline, Math.max(0, age - onset)) * wobble;
                rows.add(PlotYear.simulated(
                        "Larkmoor", "old stand", "plot " + plot, 2001, 2000 + age, observed, simulated));
            }
        }
        return TrialData.of(rows);
    }

    @Test
    void clearDeclineIsCalledWithItsOnsetAndRate() {
        AgeFindings findings = AgeAnalysis.of(exact(0.06, 7, 0.0), OPTIONS);
        DeclineFit fit = findings.withWeatherTakenOut().orElseThrow();

        assertThat(findings.verdict()).isEqualTo(AgeVerdict.DECLINE_BEYOND_WEATHER);
        assertThat(fit.onsetAge()).isEqualTo(7);
        assertThat(fit.ratePerYear()).isCloseTo(0.06, within(0.01));
        assertThat(fit.criterionGain()).isPositive();
        assertThat(fit.meanDeclinePerYear()).isCloseTo(1.0 - Math.pow(0.94, 7.0 / 11.0), within(0.01));
        assertThat(findings.sentence()).startsWith("Decline beyond weather:").contains("after age 7");
    }

    @Test
    void dryYearsThatWereSimulatedAreWeather() {
        AgeFindings findings = AgeAnalysis.of(exact(0.0, 14, 0.4), OPTIONS);

        assertThat(findings.withWeatherLeftIn().orElseThrow().declines()).isTrue();
        assertThat(findings.verdict()).isEqualTo(AgeVerdict.WEATHER_EXPLAINS_IT);
        assertThat(findings.sentence()).startsWith("Weather explains it:");
    }

    @Test
    void withoutWeatherNothingIsAttributedHoweverSteepTheFall() {
        AgeFindings findings = AgeAnalysis.of(exact(0.15, 6, 0.0).withoutSimulation(), OPTIONS);

        assertThat(findings.withWeatherLeftIn().orElseThrow().declines()).isTrue();
        assertThat(findings.verdict()).isEqualTo(AgeVerdict.CANNOT_TELL_YET);
        assertThat(findings.withWeatherTakenOut()).isEmpty();
        assertThat(findings.sentence()).contains("can't be attributed to age");
    }

    @Test
    void risingYieldIsNoDecline() {
        AgeFindings findings = AgeAnalysis.of(exact(-0.05, 6, 0.0), OPTIONS);

        assertThat(findings.verdict()).isEqualTo(AgeVerdict.WEATHER_EXPLAINS_IT);
        assertThat(findings.withWeatherTakenOut().orElseThrow().ratePerYear()).isNegative();
    }

    @Test
    void sixYearsCanNotBeFitted() {
        List<PlotYear> rows = exact(0.1, 3, 0.0).rows().stream()
                .filter(row -> row.standAge() <= 6)
                .toList();

        AgeFindings findings = AgeAnalysis.of(TrialData.of(rows), OPTIONS);

        assertThat(findings.verdict()).isEqualTo(AgeVerdict.CANNOT_TELL_YET);
        assertThat(findings.withWeatherTakenOut()).isEmpty();
        assertThat(findings.sentence()).contains("at least 5 growth years");
    }

    @Test
    void onePlotWithoutAnyScatterIsStillFitted() {
        List<PlotYear> rows = new ArrayList<>();
        for (int age = 1; age <= 12; age++) {
            double fall = Math.pow(0.95, Math.max(0, age - 6));
            rows.add(PlotYear.simulated("Larkmoor", "stand", "plot", 2001, 2000 + age, 12.0 * fall, 12.0));
        }
        DeclineFit fit = AgeAnalysis.of(TrialData.of(rows), OPTIONS)
                .withWeatherTakenOut()
                .orElseThrow();

        assertThat(fit.onsetAge()).isEqualTo(6);
        assertThat(fit.ratePerYear()).isCloseTo(0.05, ROUNDING);
    }

    @Test
    void neitherThreadsNorTheOrderOfRowsChangeAnything() throws Exception {
        TrialData data = SyntheticTrial.declining(4, 14, 0.03, 6).draw(5);
        List<PlotYear> shuffled = new ArrayList<>(data.rows());
        Collections.shuffle(shuffled, new Random(1));
        AgeFindings expected = AgeAnalysis.of(data, OPTIONS);
        for (int threads : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                assertThat(pool.submit(() -> AgeAnalysis.of(TrialData.of(shuffled), OPTIONS))
                                .get())
                        .isEqualTo(expected);
            } finally {
                pool.shutdown();
            }
        }
        assertThat(AgeAnalysis.of(data, OPTIONS.withSeed(9))).isNotEqualTo(expected);
    }

    @Test
    void levelOfSimulationAndOfYieldDoNotMatter() {
        TrialData data = SyntheticTrial.declining(3, 12, 0.04, 6).draw(8);
        TrialData doubled = TrialData.of(data.rows().stream()
                .map(row -> PlotYear.simulated(
                        row.site(),
                        row.planting(),
                        row.plot(),
                        row.plantingYear(),
                        row.growthYear(),
                        row.observedMgHa(),
                        2.0 * row.simulatedMgHa()))
                .toList());
        DeclineFit one = AgeAnalysis.of(data, OPTIONS).withWeatherTakenOut().orElseThrow();
        DeclineFit other =
                AgeAnalysis.of(doubled, OPTIONS).withWeatherTakenOut().orElseThrow();

        assertThat(other.ratePerYear()).isCloseTo(one.ratePerYear(), within(1e-9));
        assertThat(other.chances()).isEqualTo(one.chances());
    }

    @Test
    void verdictsUnderSeveralSimulationsAreCounted() {
        TrialData falling = exact(0.06, 7, 0.0);
        TrialData steady = exact(0.0, 14, 0.0);

        assertThat(AgeAnalysis.tally(List.of(falling, steady, falling), OPTIONS))
                .isEqualTo(Map.of(AgeVerdict.DECLINE_BEYOND_WEATHER, 2, AgeVerdict.WEATHER_EXPLAINS_IT, 1));
    }

    /** The full counts are in the long tests; this one notices a broken method. */
    @Test
    void fewTrialsWithoutDeclineAndMostWithOneAreCalled() {
        AgeOptions quick = AgeOptions.usual().withReplicates(99, 99, 99);
        int falseAlarms = 0;
        int found = 0;
        for (int seed = 1000; seed < 1040; seed++) {
            TrialData dry =
                    SyntheticTrial.steady(4, 15).endingInDrought(0.8, 0.5).draw(seed);
            TrialData falling = SyntheticTrial.declining(4, 15, 0.05, 6).draw(seed);
            falseAlarms += AgeAnalysis.of(dry, quick).verdict() == AgeVerdict.DECLINE_BEYOND_WEATHER ? 1 : 0;
            found += AgeAnalysis.of(falling, quick).verdict() == AgeVerdict.DECLINE_BEYOND_WEATHER ? 1 : 0;
        }

        // 5 % of 40 is 2, standard deviation 1.4
        assertThat(falseAlarms).isLessThanOrEqualTo(5);
        assertThat(found).isGreaterThanOrEqualTo(32);
    }

    @Test
    void inconsistentTrialsAreRefused() {
        PlotYear row = PlotYear.simulated("a", "p", "1", 2001, 2005, 12.0, 13.0);

        assertRefused(List.of(), CalibrationError.NO_PLOT_YEARS);
        assertRefused(List.of(row, row), CalibrationError.PLOT_YEAR_TWICE);
        assertRefused(
                List.of(row, PlotYear.simulated("b", "p", "2", 2001, 2005, 12.0, 13.0)),
                CalibrationError.PLANTING_DIFFERS);
        assertRefused(
                List.of(row, PlotYear.simulated("a", "p", "2", 2002, 2005, 12.0, 13.0)),
                CalibrationError.PLANTING_DIFFERS);
        assertRefused(
                List.of(row, PlotYear.yieldOnly("a", "p", "2", 2001, 2005, 12.0)),
                CalibrationError.SIMULATION_INCOMPLETE);
        assertThatThrownBy(() -> PlotYear.yieldOnly("a", "p", "1", 2001, 2000, 12.0))
                .isInstanceOf(InputException.class);
        assertThatThrownBy(() -> PlotYear.yieldOnly("a", "p", "1", 2001, 2005, 0.0))
                .isInstanceOf(InputException.class);
    }

    private static void assertRefused(List<PlotYear> rows, CalibrationError error) {
        assertThatThrownBy(() -> TrialData.of(rows))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(error));
    }
}
