package org.thirstline.calibration.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

class IdentifiabilityTest {

    private static final FitOptions SMOOTH = FitOptions.smooth();

    private static Identifiability of(ResidualModel model, List<FitParameter> parameters) {
        return new Identifiability(model, LeastSquaresFit.fit(model, parameters, SMOOTH), SMOOTH, false);
    }

    private static List<FitParameter> three() {
        return List.of(
                FitParameter.between("a", 0.5, 0.0, 2.0),
                FitParameter.between("b", 0.5, 0.0, 2.0),
                FitParameter.between("c", 0.5, 0.0, 2.0));
    }

    /** Residuals linear in the parameters, with noise that no parameter follows. */
    private static ResidualModel linear(double[]... rows) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(1);
        double[] noise = random.doubles(rows.length, -0.1, 0.1).toArray();
        return parameters -> {
            double[] residuals = new double[rows.length];
            for (int i = 0; i < rows.length; i++) {
                residuals[i] = noise[i];
                for (int j = 0; j < parameters.length; j++) {
                    residuals[i] += rows[i][j] * (parameters[j] - 1.0);
                }
            }
            return residuals;
        };
    }

    /** Columns of unit length at a cosine of 0.96 have eigenvalues 1.96 and 0.04: the index is 1 / 0.2. */
    @Test
    void collinearityOfTwoColumnsByHand() {
        Identifiability two = of(
                linear(new double[] {1.0, 0.96}, new double[] {0.0, 0.28}, new double[] {0.0, 0.0}),
                three().subList(0, 2));

        assertThat(two.collinearity(0, 1)).isCloseTo(5.0, within(1.0e-6));
        assertThat(two.collinearity(0)).isCloseTo(1.0, within(1.0e-9));
        // Columns of length 1 over 3 residuals, for a typical size of 0.2.
        assertThat(two.sensitivity(0)).isCloseTo(0.2 / Math.sqrt(3.0), within(1.0e-9));
    }

    @Test
    void parametersThatMoveTheDataApartAreAllKept() {
        Identifiability apart = of(
                linear(
                        new double[] {1, 0, 0},
                        new double[] {0, 1, 0},
                        new double[] {0, 0, 1},
                        new double[] {0, 0, 0},
                        new double[] {0, 0, 0}),
                three());

        assertThat(apart.advice(List.of())).isEmpty();
        assertThat(apart.words(List.of()))
                .containsExactly("The data tell all 3 parameters apart (collinearity index 1.0, limit 10).");
    }

    @Test
    void theLessInfluentialOfTwoThatActAlikeIsToBeFixed() {
        Identifiability alike = of(
                linear(
                        new double[] {2, 1.01, 0},
                        new double[] {4, 2.0, 0},
                        new double[] {6, 3.0, 1},
                        new double[] {1, 0.5, 3},
                        new double[] {3, 1.5, -2}),
                three());

        assertThat(alike.advice(List.of())).singleElement().satisfies(advice -> {
            assertThat(advice.name()).isEqualTo("b");
            assertThat(advice.reason()).isEqualTo(FixAdvice.Reason.COLLINEAR);
            assertThat(advice.partners()).containsExactly("a");
            assertThat(advice.number()).isGreaterThan(Identifiability.COLLINEARITY_LIMIT);
        });
        assertThat(alike.words(List.of()).get(0)).startsWith("Fix b, or a instead: the data can't tell them apart");
    }

    /** The third column is the sum of the others, and no two of the three are alike. */
    @Test
    void threeThatCanOnlyTogetherNotBeToldApartAreAllNamed() {
        Identifiability together = of(
                linear(
                        new double[] {1, 0, 1},
                        new double[] {0, 1, 1},
                        new double[] {2, 1, 3},
                        new double[] {1, -1, 0},
                        new double[] {0, 3, 3}),
                three());

        assertThat(together.collinearity(0, 1, 2)).isGreaterThan(1.0e6);
        assertThat(together.advice(List.of())).singleElement().satisfies(advice -> {
            assertThat(advice.reason()).isEqualTo(FixAdvice.Reason.COLLINEAR);
            assertThat(advice.partners()).hasSize(2);
            assertThat(advice.words()).contains("above 10000");
        });
    }

    @Test
    void aParameterThatHardlyMovesTheDataIsToBeFixed() {
        Identifiability idle = of(
                linear(
                        new double[] {1, 0, 1.0e-3},
                        new double[] {0, 1, 0},
                        new double[] {1, 1, 0},
                        new double[] {1, -1, 0},
                        new double[] {0, 3, 1.0e-3}),
                three());

        assertThat(idle.advice(List.of())).singleElement().satisfies(advice -> {
            assertThat(advice.name()).isEqualTo("c");
            assertThat(advice.reason()).isEqualTo(FixAdvice.Reason.UNRESPONSIVE);
            assertThat(advice.number()).isEqualTo(idle.response(2)).isLessThan(1.0);
            assertThat(advice.words()).startsWith("Fix c: over its whole range the simulated data move by only");
        });
    }

    @Test
    void aParameterWithoutAnyEffectIsToBeFixedEvenInAPerfectFit() {
        ResidualModel perfect = parameters -> new double[] {parameters[0] - 1.0, parameters[0] - 1.0, 0.0};

        assertThat(of(perfect, three().subList(0, 2)).advice(List.of()))
                .extracting(FixAdvice::name)
                .containsExactly("b");
    }

    @Test
    void aFlatProfileCountsUnlessItIsExplainedAlready() {
        Identifiability apart = of(
                linear(new double[] {1, 0}, new double[] {0, 1}, new double[] {1, 1}, new double[] {1, -2}),
                three().subList(0, 2));
        Profile flat = new Profile("b", 1.0, List.of(), 2.0, 0.0, 2.0, true, true);
        Profile closed = new Profile("a", 1.0, List.of(), 2.0, 0.5, 1.5, false, false);

        assertThat(apart.advice(List.of(closed, flat))).singleElement().satisfies(advice -> {
            assertThat(advice.reason()).isEqualTo(FixAdvice.Reason.FLAT_PROFILE);
            assertThat(advice.words()).startsWith("Fix b: every value in its range");
        });
        Identifiability alike = of(
                linear(new double[] {2, 1}, new double[] {4, 2}, new double[] {6, 3}, new double[] {0, 0}),
                three().subList(0, 2));
        assertThat(alike.advice(List.of(flat))).hasSize(1);
    }
}
