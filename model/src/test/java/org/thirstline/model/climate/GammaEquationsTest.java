package org.thirstline.model.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.YearMonth;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.model.climate.GammaFit.Method;

/**
 * The gamma fit at points where its equations have exact solutions: digamma is minus Euler's constant at 1, 2 ln 2 less at one half, and grows by
 * 1/x from x to x + 1 (Abramowitz and Stegun 6.3.2, 6.3.3 and 6.3.5).
 */
class GammaEquationsTest {

    private static final double EULER = 0.5772156649015329;
    private static final Offset<Double> EXACT = within(1.0e-9);

    /**
     * The likelihood is highest where ln α - ψ(α) is the logarithm of the mean minus the mean logarithm. The library promises its digamma to 1e-8, and
     * the equation is as flat as 0.06 at shape 3: 1.6e-7 in shape.
     */
    @ParameterizedTest
    @CsvSource({"0.5", "1.0", "2.0", "3.0"})
    void theLikelihoodEquationIsSolved(double shape) {
        double digamma = shape == 0.5
                ? -EULER - 2.0 * Math.log(2.0)
                : shape == 1.0 ? -EULER : shape == 2.0 ? 1.0 - EULER : 1.5 - EULER;
        GammaFit fit = GammaFit.ofMeans(30.0, Math.log(shape) - digamma, Method.MAXIMUM_LIKELIHOOD);
        assertThat(fit.shape()).isCloseTo(shape, within(2.0e-7));
        assertThat(fit.scale() * fit.shape()).isCloseTo(30.0, EXACT);
    }

    /** Thom (1958): α = (1 + √(1 + 4A/3)) / 4A. */
    @Test
    void thomsEstimate() {
        assertThat(GammaFit.ofMeans(1.0, 0.75, Method.THOM).shape()).isCloseTo((1.0 + Math.sqrt(2.0)) / 3.0, EXACT);
        assertThat(GammaFit.ofMeans(1.0, 2.25, Method.THOM).shape()).isCloseTo(3.0 / 9.0, EXACT);
    }

    /** With shape 1 the gamma distribution is the exponential one. */
    @Test
    void shapeOneIsExponential() {
        GammaFit exponential = new GammaFit(1.0, 20.0);
        assertThat(exponential.cumulativeProbability(20.0)).isCloseTo(1.0 - Math.exp(-1.0), EXACT);
        assertThat(exponential.cumulativeProbability(0.0)).isZero();
    }

    /** WMO-No. 1090: the share q of months without rain counts before the distribution of the others, H = q + (1 - q) G. */
    @Test
    void dryMonthsCountBeforeTheDistribution() {
        double[] totals = {0.0, 0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0};
        ZeroShareGamma fit = ZeroShareGamma.fit(totals, Method.THOM);
        assertThat(fit).isNotNull();
        assertThat(fit.zeroShare()).isEqualTo(2.0 / 12.0);
        double g = fit.positive().cumulativeProbability(35.0);
        assertThat(fit.cumulativeProbability(35.0)).isCloseTo(1.0 / 6.0 + 5.0 / 6.0 * g, EXACT);
    }

    /** A month before or after the record has no index, its first and last have. */
    @Test
    void theIndexCoversTheRecordAndNoMore() {
        YearMonth first = YearMonth.of(1950, 3);
        double[] rain = new double[40 * 12];
        for (int month = 0; month < rain.length; month++) {
            rain[month] = 20.0 + 13.0 * ((7 * month + month / 12 * 5) % 17);
        }
        StandardizedPrecipitation index =
                StandardizedPrecipitation.of(MonthlyRain.ofTotals(first, rain), 1, Method.MAXIMUM_LIKELIHOOD);
        assertThat(index.scaleMonths()).isEqualTo(1);
        assertThat(index.at(first.minusMonths(1))).isNaN();
        assertThat(index.at(first)).isFinite().isEqualTo(index.values()[0]);
        assertThat(index.at(first.plusMonths(rain.length - 1))).isFinite().isEqualTo(index.values()[rain.length - 1]);
        assertThat(index.at(first.plusMonths(rain.length))).isNaN();
        assertThat(index.notice()).isEmpty();
    }
}
