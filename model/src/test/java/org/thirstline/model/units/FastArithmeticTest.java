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
        assertThat(Rise.of(Double.POSITIVE_INFINITY)).isEqualTo(1.0);
        assertThat(Rise.of(-1.0)).isEqualTo(1.0 - Math.exp(1.0));
    }

    @Test
    void aFixedPowerIsThatOfTheJdkOverAllItsRange() {
        Random random = new Random(2);
        for (double exponent : new double[] {0.3, -1.0, 1.0, 0.5, 0.0}) {
            FixedPower power = new FixedPower(exponent);
            for (int i = 0; i < 100_000; i++) {
                double x = Math.scalb(1.0 + random.nextDouble(), random.nextInt(-1022, 1024));
                double expected = StrictMath.pow(x, exponent);
                double apart = Math.abs(power.of(x) - expected);
                assertThat(apart).as("%s to the %s", x, exponent).isLessThanOrEqualTo(3.0 * Math.ulp(expected));
            }
        }
    }

    @Test
    void aFixedPowerLeavesWhatIsNoOrdinaryNumberToTheJdk() {
        FixedPower power = new FixedPower(0.3);
        assertThat(power.of(0.0)).isZero();
        assertThat(power.of(Double.MIN_VALUE)).isEqualTo(Math.pow(Double.MIN_VALUE, 0.3));
        assertThat(power.of(Double.POSITIVE_INFINITY)).isInfinite();
        assertThat(power.of(-1.0)).isNaN();
        assertThat(power.of(Double.NaN)).isNaN();
    }

    /** The table has a seam at every 2.7 thousandths; none is to be felt, and none to lie below what came before. */
    @Test
    void theRiseNeverFalls() {
        double before = 0.0;
        for (int i = 1; i < 2_000_000; i++) {
            double x = i * 2e-5;
            double risen = Rise.of(x);
            assertThat(risen >= before).as("at %s", x).isTrue();
            before = risen;
        }
    }

    @Test
    void theRiseIsExactToTheLastPlaceOverAllItsRange() {
        for (int i = 0; i < 100_000; i++) {
            double x = 700.0 * Math.pow(i / 100_000.0, 8);
            double apart = Math.abs(Rise.of(x) + StrictMath.expm1(-x));
            assertThat(apart).as("at %s", x).isLessThanOrEqualTo(Math.ulp(1.0));
        }
    }
}
