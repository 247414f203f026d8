package org.thirstline.calibration.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.posterior.Prior.Shape;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class PriorTest {

    static Stream<Prior> priors() {
        return Stream.of(
                Prior.uniform(-2.0, 5.0),
                Prior.normal(3.0, 1.0, 2.0, 10.0),
                Prior.normal(0.0, 5.0, -1.0, 1.0),
                Prior.lognormal(2.5, 0.4, 1.0, 6.0),
                Prior.triangular(0.0, 1.0, 4.0, 0.0, 4.0),
                Prior.triangular(0.0, 1.0, 4.0, 0.5, 3.0),
                Prior.normal(0.0, 1.0, 4.0, 6.0));
    }

    /** Midpoint sums over 20 000 steps: exact to the square of the step but for the triangle's kink and cut edges. */
    @ParameterizedTest
    @MethodSource("priors")
    void densityIntegratesToOneAndToTheCumulative(Prior prior) {
        int steps = 20_000;
        double width = (prior.upper() - prior.lower()) / steps;
        double sum = 0.0;
        for (int i = 0; i < steps; i++) {
            double middle = prior.lower() + (i + 0.5) * width;
            sum += width * Math.exp(prior.logDensity(middle));
            if (i % 997 == 0) {
                assertThat(prior.cumulative(prior.lower() + (i + 1) * width)).isCloseTo(sum, within(1.0e-6));
            }
        }
        assertThat(sum).isCloseTo(1.0, within(1.0e-6));
    }

    @ParameterizedTest
    @MethodSource("priors")
    void quantileUndoesTheCumulative(Prior prior) {
        for (double probability = 0.0; probability <= 1.0; probability += 0.0625) {
            double value = prior.quantile(probability);
            assertThat(value).isBetween(prior.lower(), prior.upper());
            assertThat(prior.cumulative(value)).isCloseTo(probability, within(1.0e-7));
        }
        assertThat(prior.quantile(0.0)).isCloseTo(prior.lower(), within(1.0e-6));
        assertThat(prior.quantile(1.0)).isCloseTo(prior.upper(), within(1.0e-4));
    }

    @ParameterizedTest
    @MethodSource("priors")
    void nothingLiesOutsideTheBounds(Prior prior) {
        assertThat(prior.logDensity(Math.nextDown(prior.lower()))).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(prior.logDensity(Math.nextUp(prior.upper()))).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(prior.logDensity(Double.NaN)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(prior.cumulative(prior.lower() - 1.0)).isZero();
        assertThat(prior.cumulative(prior.upper() + 1.0)).isEqualTo(1.0);
    }

    @Test
    void publishedRangeHolds95PercentOfANormalAndALognormal() {
        Prior normal = Prior.ofPublishedRange(Shape.NORMAL, 2.0, 2.5, 4.0, -100.0, 100.0);
        Prior lognormal = Prior.ofPublishedRange(Shape.LOGNORMAL, 1.0, 2.0, 9.0, 1.0e-6, 1.0e6);

        assertThat(normal.cumulative(2.0)).isCloseTo(0.025, within(1.0e-9));
        assertThat(normal.cumulative(4.0)).isCloseTo(0.975, within(1.0e-9));
        assertThat(lognormal.cumulative(1.0)).isCloseTo(0.025, within(1.0e-9));
        assertThat(lognormal.quantile(0.5)).isCloseTo(3.0, within(1.0e-9));
    }

    @Test
    void publishedRangeEndsAUniformAndATriangle() {
        Prior uniform = Prior.ofPublishedRange(Shape.UNIFORM, 2.0, 2.5, 4.0, 0.0, 3.5);
        Prior triangle = Prior.ofPublishedRange(Shape.TRIANGULAR, 2.0, 2.5, 4.0, 2.0, 4.0);

        assertThat(uniform.lower()).isEqualTo(2.0);
        assertThat(uniform.upper()).isEqualTo(3.5);
        // The peak of a triangle of width 2 and area 1.
        assertThat(Math.exp(triangle.logDensity(2.5))).isCloseTo(1.0, within(1.0e-12));
    }

    @Test
    void impossiblePriorsAreRefused() {
        refused(() -> Prior.normal(0.0, 1.0, 40.0, 50.0), CalibrationError.PRIOR_WITHOUT_MASS);
        refused(() -> Prior.uniform(2.0, 2.0), ModelError.VALUES_OUT_OF_ORDER);
        refused(() -> Prior.normal(0.0, 0.0, -1.0, 1.0), ModelError.VALUE_OUT_OF_RANGE);
        refused(() -> Prior.normal(0.0, 1.0, Double.NEGATIVE_INFINITY, 1.0), ModelError.VALUE_OUT_OF_RANGE);
        refused(() -> Prior.triangular(0.0, 5.0, 4.0, 0.0, 4.0), ModelError.VALUE_OUT_OF_RANGE);
        refused(() -> Prior.ofPublishedRange(Shape.LOGNORMAL, 0.0, 1.0, 2.0, 0.0, 2.0), ModelError.VALUE_OUT_OF_RANGE);
    }

    private static void refused(Runnable prior, Object code) {
        assertThatThrownBy(prior::run).isInstanceOfSatisfying(InputException.class, e -> assertThat(e.code())
                .isEqualTo(code));
    }
}
