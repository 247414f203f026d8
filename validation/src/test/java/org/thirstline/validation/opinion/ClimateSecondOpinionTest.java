package org.thirstline.validation.opinion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.model.climate.GammaFit;
import org.thirstline.model.climate.GammaFit.Method;
import org.thirstline.model.climate.StandardizedPrecipitation;
import org.thirstline.model.climate.Terciles;

/** Distributions and quantiles of rain recomputed with Apache Commons Math. */
class ClimateSecondOpinionTest {

    private static final Offset<Double> AGREEMENT = within(1.0e-9);

    static IntStream seeds() {
        return IntStream.range(0, 50);
    }

    private static double[] totals(int seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        double shape = 0.4 + 6.0 * random.nextDouble();
        GammaDistribution truth = new GammaDistribution(shape, 40.0);
        return random.doubles(random.nextInt(15, 80))
                .map(probability -> truth.inverseCumulativeProbability(0.001 + 0.998 * probability))
                .toArray();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void gammaLikelihoodIsStationaryAtTheFit(int seed) {
        double[] totals = totals(seed);
        double gap = Math.log(StatUtils.mean(totals)) - StatUtils.sumLog(totals) / totals.length;
        double shape = new BrentSolver(1.0e-14, 1.0e-14)
                .solve(1000, value -> Math.log(value) - Gamma.digamma(value) - gap, 0.01, 1000.0);
        GammaFit fit = GammaFit.of(totals, Method.MAXIMUM_LIKELIHOOD);

        assertThat(fit.shape() / shape).isCloseTo(1.0, AGREEMENT);
        assertThat(fit.shape() * fit.scale() / StatUtils.mean(totals)).isCloseTo(1.0, AGREEMENT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void gammaProbabilitiesAgree(int seed) {
        double[] totals = totals(seed);
        GammaFit fit = GammaFit.of(totals, Method.THOM);
        GammaDistribution other = new GammaDistribution(fit.shape(), fit.scale());

        for (double total : totals) {
            assertThat(fit.cumulativeProbability(total)).isCloseTo(other.cumulativeProbability(total), AGREEMENT);
        }
        assertThat(fit.cumulativeProbability(0.0)).isZero();
    }

    @Test
    void normalQuantilesAgree() {
        NormalDistribution normal = new NormalDistribution();

        for (int i = 1; i < 2000; i++) {
            double probability = i / 2000.0;
            assertThat(StandardizedPrecipitation.index(probability))
                    .isCloseTo(normal.inverseCumulativeProbability(probability), AGREEMENT);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void tercilesAgree(int seed) {
        double[] totals = totals(seed);
        Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
        Terciles terciles = Terciles.of(totals);

        assertThat(terciles.lowerMm()).isCloseTo(percentile.evaluate(totals, 100.0 / 3.0), AGREEMENT);
        assertThat(terciles.upperMm()).isCloseTo(percentile.evaluate(totals, 200.0 / 3.0), AGREEMENT);
        assertThat(Arrays.stream(totals).filter(mm -> mm < terciles.lowerMm()).count())
                .isBetween((totals.length - 1) / 3L, (totals.length + 2) / 3L);
    }
}
