package org.thirstline.model.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The day loop's short forms against the JDK's. */
class FastArithmeticTest {

    private static final double[] EDGES = {-2.0, -1e-300, -0.0, 0.0, 1e-300, 0.5, 1.0, 1.0 + 1e-15, 3.0};

    @Test
    void boundsAreThoseOfTheJdk() {
        for (double a : EDGES) {
            assertThat(Bound.notNegative(a) + 0.0).isEqualTo(Math.max(0.0, a));
            assertThat(Bound.share(a) + 0.0).isEqualTo(Math.max(0.0, Math.min(1.0, a)));
            for (double b : EDGES) {
                assertThat(Bound.atMost(a, b) + 0.0).isEqualTo(Math.min(a, b) + 0.0);
                assertThat(Bound.atLeast(a, b) + 0.0).isEqualTo(Math.max(a, b) + 0.0);
            }
        }
    }

    @Test
    void whatIsNotANumberStaysSo() {
        assertThat(Bound.notNegative(Double.NaN)).isNaN();
        assertThat(Bound.share(Double.NaN)).isNaN();
        assertThat(Bound.atMost(Double.NaN, 1.0)).isNaN();
        assertThat(Bound.atLeast(Double.NaN, 1.0)).isNaN();
        assertThat(Rise.of(Double.NaN)).isNaN();
    }

    @Test
    void theRiseIsOneLessTheExponential() {
        Random random = new Random(1);
        for (int i = 0; i < 10_000; i++) {
            double x = 50.0 * Math.pow(random.nextDouble(), 4);
            assertThat(Rise.of(x)).isCloseTo(-Math.expm1(-x), within(3e-16));
        }
        assertThat(Rise.of(0.0)).isZero();
        assertThat(Rise.of(1000.0)).isEqualTo(1.0);
    }
}
