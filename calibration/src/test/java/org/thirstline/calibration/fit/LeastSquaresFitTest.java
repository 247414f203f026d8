package org.thirstline.calibration.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.fit.FitOptions.Differences;
import org.thirstline.model.error.InputException;

class LeastSquaresFitTest {

    /** Saturating growth a (1 - exp(-b t)) at t = 1 to 20 with noise. */
    private static ResidualModel saturating(double scatter, long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        double[] noise =
                random.doubles(20).map(value -> scatter * (value - 0.5)).toArray();
        return parameters -> {
            double[] residuals = new double[20];
            for (int i = 0; i < 20; i++) {
                double truth = 12.0 * (1.0 - Math.exp(-0.3 * (i + 1)));
                double fitted = parameters[0] * (1.0 - Math.exp(-parameters[1] * (i + 1)));
                residuals[i] = fitted - truth - noise[i];
            }
            return residuals;
        };
    }

    private static List<FitParameter> wide() {
        return List.of(FitParameter.between("a", 3.0, 0.0, 50.0), FitParameter.between("b", 2.0, 0.0, 5.0));
    }

    @Test
    void knownParametersAreRecovered() {
        FitResult fit = LeastSquaresFit.fit(saturating(0.0, 1), wide(), FitOptions.smooth());

        assertThat(fit.value(0)).isCloseTo(12.0, within(1e-8));
        assertThat(fit.value(1)).isCloseTo(0.3, within(1e-9));
        assertThat(fit.residualSumOfSquares()).isLessThan(1e-14);
        assertThat(fit.degreesOfFreedom()).isEqualTo(18);
        assertThat(fit.isAtBound(0)).isFalse();
    }

    @Test
    void forwardDifferencesFindTheSameMinimum() {
        FitResult central = LeastSquaresFit.fit(saturating(1.0, 2), wide(), FitOptions.smooth());
        FitResult forward = LeastSquaresFit.fit(
                saturating(1.0, 2), wide(), FitOptions.smooth().withJacobian(1e-7, Differences.FORWARD));

        assertThat(central.converged()).isTrue();
        assertThat(forward.value(0)).isCloseTo(central.value(0), within(1e-5));
        assertThat(forward.standardError(1)).isCloseTo(central.standardError(1), within(1e-5));
    }

    @Test
    void minimumOutsideTheBoundsEndsOnTheBoundWithTheOthersAtTheirBest() {
        List<FitParameter> tight =
                List.of(FitParameter.between("a", 3.0, 0.0, 10.0), FitParameter.between("b", 2.0, 0.0, 5.0));
        FitResult fit = LeastSquaresFit.fit(saturating(0.5, 3), tight, FitOptions.smooth());
        FitResult conditional = LeastSquaresFit.fit(
                parameters -> saturating(0.5, 3).residuals(new double[] {10.0, parameters[0]}),
                List.of(FitParameter.between("b", 2.0, 0.0, 5.0)),
                FitOptions.smooth());

        assertThat(fit.value(0)).isEqualTo(10.0);
        assertThat(fit.isAtBound(0)).isTrue();
        assertThat(fit.standardError(0)).isNaN();
        assertThat(fit.standardError(1)).isPositive();
        // A sum of squares resolves a parameter to the square root of the rounding unit, counted in standard errors.
        assertThat(fit.value(1)).isCloseTo(conditional.value(0), within(1e-6 * fit.standardError(1)));
        assertThat(fit.converged()).isTrue();
    }

    @Test
    void startOnABoundIsLeftWhenTheMinimumIsInside() {
        List<FitParameter> cornered =
                List.of(FitParameter.between("a", 50.0, 0.0, 50.0), FitParameter.between("b", 0.1, 0.1, 5.0));
        FitResult fit = LeastSquaresFit.fit(saturating(0.0, 4), cornered, FitOptions.smooth());

        assertThat(fit.value(0)).isCloseTo(12.0, within(1e-8));
        assertThat(fit.value(1)).isCloseTo(0.3, within(1e-9));
    }

    @Test
    void boundsAreNeverCrossed() {
        List<FitParameter> tight =
                List.of(FitParameter.between("a", 3.0, 2.0, 10.0), FitParameter.between("b", 2.0, 0.5, 5.0));
        ResidualModel guarded = parameters -> {
            assertThat(parameters[0]).isBetween(2.0, 10.0);
            assertThat(parameters[1]).isBetween(0.5, 5.0);
            return saturating(1.0, 5).residuals(parameters);
        };

        assertThat(LeastSquaresFit.fit(guarded, tight, FitOptions.smooth().withStarts(8, 11L))
                        .converged())
                .isTrue();
    }

    @Test
    void scaleOfAParameterDoesNotMatter() {
        ResidualModel small =
                parameters -> saturating(1.0, 6).residuals(new double[] {1e6 * parameters[0], 1e-6 * parameters[1]});
        FitResult plain = LeastSquaresFit.fit(saturating(1.0, 6), wide(), FitOptions.smooth());
        FitResult scaled = LeastSquaresFit.fit(
                small,
                List.of(FitParameter.between("a", 3e-6, 0.0, 50e-6), FitParameter.between("b", 2e6, 0.0, 5e6)),
                FitOptions.smooth());

        assertThat(1e6 * scaled.value(0)).isCloseTo(plain.value(0), within(1e-6));
        assertThat(1e6 * scaled.standardError(0)).isCloseTo(plain.standardError(0), within(1e-6));
        assertThat(scaled.correlation(0, 1)).isCloseTo(plain.correlation(0, 1), within(1e-5));
        assertThat(scaled.conditionNumber()).isCloseTo(plain.conditionNumber(), within(1e-4));
    }

    @Test
    void severalStartsFindTheDeeperOfTwoMinima() {
        // (x² - 1)² + 0.1 (x - 1)²: minima near -1 and at 1
        ResidualModel twoValleys = p -> new double[] {p[0] * p[0] - 1.0, Math.sqrt(0.1) * (p[0] - 1.0)};
        List<FitParameter> start = List.of(FitParameter.between("x", -1.5, -2.0, 2.0));

        FitResult one = LeastSquaresFit.fit(twoValleys, start, FitOptions.smooth());
        FitResult many =
                LeastSquaresFit.fit(twoValleys, start, FitOptions.smooth().withStarts(10, 3L));
        FitResult again =
                LeastSquaresFit.fit(twoValleys, start, FitOptions.smooth().withStarts(10, 3L));

        assertThat(one.value(0)).isNegative();
        assertThat(many.value(0)).isCloseTo(1.0, within(1e-6));
        assertThat(many.searches()).hasSize(10);
        assertThat(many.values()).containsExactly(again.values(), within(0.0));
    }

    @Test
    void parametersThatTheDataCannotTellApartHaveNoStandardError() {
        ResidualModel sumOnly = p -> new double[] {p[0] + p[1] - 1.0, p[0] + p[1] - 2.0, p[0] + p[1] - 4.0};
        FitResult fit = LeastSquaresFit.fit(
                sumOnly, List.of(FitParameter.free("x", 1.0), FitParameter.free("y", 1.0)), FitOptions.smooth());

        assertThat(fit.value(0) + fit.value(1)).isCloseTo(7.0 / 3.0, within(1e-8));
        assertThat(fit.conditionNumber()).isGreaterThan(1e6);
        assertThat(Double.isNaN(fit.standardError(0)) || fit.standardError(0) > 1e4)
                .isTrue();
    }

    @Test
    void straightLineHasTheErrorsOfTextbookRegression() {
        double[] x = {1, 2, 3, 4, 5};
        double[] y = {1.1, 1.9, 3.2, 3.8, 5.3};
        ResidualModel line = p -> {
            double[] residuals = new double[5];
            for (int i = 0; i < 5; i++) {
                residuals[i] = p[0] + p[1] * x[i] - y[i];
            }
            return residuals;
        };
        FitResult fit = LeastSquaresFit.fit(
                line, List.of(FitParameter.free("a", 1.0), FitParameter.free("b", 0.0)), FitOptions.smooth());

        // Sxx = 10, Sxy = 10.3; variances s²/Sxx and s² (1/n + mean²/Sxx), covariance -s² mean/Sxx
        double variance = fit.residualSumOfSquares() / 3.0;
        assertThat(fit.value(1)).isCloseTo(1.03, within(1e-9));
        assertThat(fit.standardError(1)).isCloseTo(Math.sqrt(variance / 10.0), within(1e-9));
        assertThat(fit.standardError(0)).isCloseTo(Math.sqrt(variance * 1.1), within(1e-9));
        assertThat(fit.covariance(0, 1)).isCloseTo(-variance * 0.3, within(1e-9));
        assertThat(fit.residualDeviation()).isCloseTo(Math.sqrt(variance), within(1e-12));
    }

    @Test
    void modelThatFailsInPartsOfTheSpaceIsStillFitted() {
        ResidualModel failing =
                p -> p[0] > 20.0 ? new double[] {Double.NaN, 0.0} : new double[] {p[0] - 15.0, 0.1 * p[0]};
        FitResult fit = LeastSquaresFit.fit(
                failing,
                List.of(FitParameter.between("x", 1.0, 0.0, 100.0)),
                FitOptions.smooth().withStarts(5, 1L));

        assertThat(fit.value(0)).isCloseTo(15.0 / 1.01, within(1e-7));
        assertThat(fit.searchesAgreeing()).isPositive();
    }

    @Test
    void unusableProblemsAreRefused() {
        assertThatThrownBy(() -> FitParameter.between("x", 3.0, 0.0, 2.0))
                .isInstanceOfSatisfying(InputException.class, error -> assertThat(error.code())
                        .isEqualTo(CalibrationError.START_OUTSIDE_BOUNDS));
        assertThatThrownBy(() -> LeastSquaresFit.fit(
                        p -> new double[] {Double.NaN}, List.of(FitParameter.free("x", 1.0)), FitOptions.smooth()))
                .isInstanceOfSatisfying(InputException.class, error -> assertThat(error.code())
                        .isEqualTo(CalibrationError.NO_FINITE_START));
        assertThatThrownBy(() -> LeastSquaresFit.fit(
                        p -> new double[] {p[0] + p[1]},
                        List.of(FitParameter.free("x", 1.0), FitParameter.free("y", 1.0)),
                        FitOptions.smooth()))
                .isInstanceOfSatisfying(InputException.class, error -> assertThat(error.code())
                        .isEqualTo(CalibrationError.TOO_FEW_RESIDUALS));
    }
}
