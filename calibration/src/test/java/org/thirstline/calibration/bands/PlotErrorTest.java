package org.thirstline.calibration.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.hipparchus.random.Well19937c;
import org.junit.jupiter.api.Test;

/** Quantiles of draws, and of what would be measured on a plot. */
class PlotErrorTest {

    /** Quantile of the normal distribution at 95 % to three decimals, as any table of it has; from memory. */
    private static final double NORMAL_95 = 1.645;

    private static final Offset<Double> HALF_LAST_PRINTED_DIGIT = within(0.0005);

    @Test
    void withoutDoubtInTheParametersOnlyTheErrorIsLeft() {
        Band sd = new PlotError(false, 1.0).measured(new double[] {12.0, 12.0, Double.NaN});
        assertThat(sd.draws()).isEqualTo(2);
        assertThat(sd.low()).isCloseTo(12.0 - NORMAL_95, HALF_LAST_PRINTED_DIGIT);
        assertThat(sd.median()).isCloseTo(12.0, HALF_LAST_PRINTED_DIGIT);
        assertThat(sd.high()).isCloseTo(12.0 + NORMAL_95, HALF_LAST_PRINTED_DIGIT);
        Band share = new PlotError(true, 1.0).measured(new double[] {12.0});
        assertThat(Math.log(share.high() / 12.0)).isCloseTo(NORMAL_95, HALF_LAST_PRINTED_DIGIT);
        assertThat(Math.log(share.low() / 12.0)).isCloseTo(-NORMAL_95, HALF_LAST_PRINTED_DIGIT);
    }

    @Test
    void noYieldIsLessThanNothing() {
        Band band = new PlotError(false, 4.0).measured(new double[] {1.0, 0.0});
        assertThat(band.low()).isZero();
        assertThat(band.high()).isPositive();
        assertThat(new PlotError(true, 0.2).measured(new double[] {0.0}).high()).isZero();
        assertThat(new PlotError(false, 4.0).measured(new double[] {Double.NaN}).isKnown())
                .isFalse();
    }

    /** Independent route: the error drawn, half a million times; tolerance of four standard errors of such a quantile. */
    @Test
    void quantilesAreThoseOfDrawnErrors() {
        double[] simulated = {9.0, 10.0, 10.5, 14.0};
        Well19937c random = new Well19937c(5);
        double[] drawn = IntStream.range(0, 500_000)
                .mapToDouble(i -> simulated[i % 4] + 0.8 * random.nextGaussian())
                .toArray();
        double[] exact = new PlotError(false, 0.8).measured(simulated).quantiles();
        double[] sampled = Band.of(drawn).quantiles();
        for (int i = 0; i < exact.length; i++) {
            assertThat(exact[i]).isCloseTo(sampled[i], within(0.03));
        }
    }

    @Test
    void quantilesOfOneToTwentyOne() {
        double[] values = new double[23];
        Arrays.setAll(values, i -> i < 21 ? 21.0 - i : Double.NaN);
        assertThat(Band.of(values)).isEqualTo(new Band(21, 2.0, 6.0, 11.0, 16.0, 20.0));
        assertThat(Band.of(new double[0]).isKnown()).isFalse();
    }
}
