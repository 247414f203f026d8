package org.thirstline.calibration.skill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class SkillTest {

    private static final Offset<Double> ROUNDING = within(1.0e-12);

    static IntStream seeds() {
        return IntStream.range(0, 30);
    }

    /**
     * Observed 10, 12, 14, 20 (mean 14) and simulated 11, 12, 12, 18: differences 1, 0, -2, -2; sum -3, of sizes 5, of squares 9;
     * deviations -4, -2, 0, 6: of sizes 12, of squares 56.
     */
    @Test
    void scoresByHand() {
        SkillScores scores = SkillScores.of(new double[] {10, 12, 14, 20}, new double[] {11, 12, 12, 18});

        assertThat(scores.count()).isEqualTo(4);
        assertThat(scores.rootMeanSquareError()).isCloseTo(1.5, ROUNDING);
        assertThat(scores.meanAbsoluteError()).isCloseTo(1.25, ROUNDING);
        assertThat(scores.bias()).isCloseTo(-0.75, ROUNDING);
        assertThat(scores.efficiency()).isCloseTo(1.0 - 9.0 / 56.0, ROUNDING);
        assertThat(scores.refinedIndex()).isCloseTo(1.0 - 5.0 / 24.0, ROUNDING);
    }

    /** Observed 1 and 3, simulated 11 and 13: sizes of differences 20, twice those of deviations 4, so 4/20 - 1. */
    @Test
    void refinedIndexOfABadSimulationTakesItsOtherBranch() {
        SkillScores scores = SkillScores.of(new double[] {1, 3}, new double[] {11, 13});

        assertThat(scores.refinedIndex()).isCloseTo(-0.8, ROUNDING);
        assertThat(scores.efficiency()).isCloseTo(-99.0, ROUNDING);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theMeanHasNoEfficiencyAndTheTruthAllOfIt(int seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        double[] observed = random.doubles(random.nextInt(2, 40), 0.0, 30.0).toArray();
        double[] mean = new double[observed.length];
        Arrays.fill(mean, Arrays.stream(observed).average().orElseThrow());

        assertThat(SkillScores.of(observed, observed)).isEqualTo(new SkillScores(observed.length, 0, 0, 0, 1, 1));
        assertThat(SkillScores.of(observed, mean).efficiency()).isCloseTo(0.0, ROUNDING);
        assertThat(SkillScores.of(observed, mean).refinedIndex()).isCloseTo(0.5, ROUNDING);
    }

    @Test
    void observationsAllAlikeHaveErrorsButNoEfficiency() {
        SkillScores scores = SkillScores.of(new double[] {0.1, 0.1, 0.1}, new double[] {0.1, 0.2, 0.3});

        assertThat(scores.efficiency()).isNaN();
        assertThat(scores.refinedIndex()).isNaN();
        assertThat(scores.bias()).isCloseTo(0.1, ROUNDING);
    }

    @Test
    void unpairedEmptyOrMissingValuesAreRefused() {
        refused(() -> SkillScores.of(new double[2], new double[3]), CalibrationError.LENGTHS_DIFFER);
        refused(() -> SkillScores.of(new double[0], new double[0]), ModelError.VALUE_OUT_OF_RANGE);
        refused(() -> SkillScores.of(new double[] {1, Double.NaN}, new double[2]), ModelError.VALUE_OUT_OF_RANGE);
        refused(() -> Fold.leaveOneGroupOut(List.of("a", "a")), CalibrationError.TOO_FEW_GROUPS);
    }

    private static void refused(Runnable action, Object code) {
        assertThatThrownBy(action::run).isInstanceOfSatisfying(InputException.class, e -> assertThat(e.code())
                .isEqualTo(code));
    }

    /** Ends count as inside: 3 of 5. Wilson's interval for 9 of 10 is 0.5958 to 0.9821 (Wilson 1927, by hand). */
    @Test
    void coverageByHand() {
        IntervalCoverage coverage = IntervalCoverage.of(
                new double[] {1, 2, 3, 4, 5}, new double[] {1, 0, 4, 3, 6}, new double[] {2, 2, 5, 5, 7}, 0.9);
        IntervalCoverage nineOfTen = new IntervalCoverage(10, 9, 0.9);

        assertThat(coverage.inside()).isEqualTo(3);
        assertThat(coverage.share()).isEqualTo(0.6);
        assertThat(nineOfTen.shareInterval().lower()).isCloseTo(0.5958, within(5.0e-5));
        assertThat(nineOfTen.shareInterval().upper()).isCloseTo(0.9821, within(5.0e-5));
        assertThat(nineOfTen.asStated()).isTrue();
        assertThat(new IntervalCoverage(100, 60, 0.9).asStated()).isFalse();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void foldsHoldOutEveryObservationOnceWithItsWholeGroup(int seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        List<String> groups = IntStream.range(0, random.nextInt(10, 60))
                .mapToObj(i -> "site " + (i < 2 ? i : random.nextInt(5)))
                .toList();
        List<Fold> folds = Fold.leaveOneGroupOut(groups);

        assertThat(folds.stream().flatMap(fold -> fold.heldOut().stream()))
                .hasSize(groups.size())
                .doesNotHaveDuplicates();
        assertThat(folds).allSatisfy(fold -> {
            assertThat(fold.heldOut()).allMatch(i -> groups.get(i).equals(fold.group()));
            assertThat(fold.training()).noneMatch(i -> groups.get(i).equals(fold.group()));
            assertThat(fold.training().size() + fold.heldOut().size()).isEqualTo(groups.size());
        });
    }

    /** Sites a (1, 3), b (5), c (9): means of the others are 7, 13/3 and 3. */
    @Test
    void meanBaselineByHand() {
        double[] observed = {1, 5, 3, 9};
        List<Fold> folds = Fold.leaveOneGroupOut(List.of("a", "b", "a", "c"));
        HeldOutSkill skill = HeldOutSkill.of(Predictor.mean(observed), folds, observed);

        assertThat(skill.predicted()).containsExactly(new double[] {7, 13.0 / 3.0, 7, 3}, ROUNDING);
        assertThat(skill.byGroup().keySet()).containsExactly("a", "b", "c");
        assertThat(skill.byGroup().get("a").bias()).isCloseTo(5.0, ROUNDING);
        assertThat(skill.overall().bias()).isCloseTo((6.0 - 2.0 / 3.0 + 4.0 - 6.0) / 4.0, ROUNDING);
    }

    @Test
    void regressionBaselineFollowsALineAndFallsBackOnTheMean() {
        double[] rain = {100, 200, 300, 400, 500};
        double[] yield = Arrays.stream(rain).map(x -> 4.0 + 0.02 * x).toArray();
        List<Fold> folds = Fold.leaveOneGroupOut(List.of("2001", "2002", "2003", "2004", "2005"));
        HeldOutSkill line = HeldOutSkill.of(Predictor.regression(yield, rain), folds, yield);
        HeldOutSkill mean = HeldOutSkill.of(Predictor.mean(yield), folds, yield);

        assertThat(line.predicted()).containsExactly(yield, within(1.0e-9));
        assertThat(line.gainOver(mean)).isCloseTo(1.0, within(1.0e-9));
        assertThat(mean.overall().efficiency()).isNegative();
        assertThat(HeldOutSkill.of(Predictor.regression(yield, new double[5]), folds, yield)
                        .predicted())
                .isEqualTo(mean.predicted());
    }
}
