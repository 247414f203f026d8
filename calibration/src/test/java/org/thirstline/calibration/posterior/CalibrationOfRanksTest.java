package org.thirstline.calibration.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Simulation-based calibration (Talts and others 2018) on a normal mean with a normal prior and known errors, and on the rank test
 * itself.
 */
class CalibrationOfRanksTest {

    private static final int REPLICATES = 400;
    private static final int DRAWS = 63;
    private static final int BINS = 16;
    private static final double REJECTED = 0.001;

    private static RandomGenerator generator(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    /** Rank of the true mean among thinned draws, when the sampler believes in errors of the given size and the data have 1. */
    private static int rank(int replicate, double believedError) {
        RandomGenerator random = generator(1000 + replicate);
        double truth = 0.5 + 0.8 * random.nextGaussian();
        double[] data =
                random.doubles(3).map(ignored -> truth + random.nextGaussian()).toArray();
        LogDensity likelihood = GaussianLikelihood.ofKnownErrors(point -> {
            double[] residuals = new double[data.length];
            for (int i = 0; i < data.length; i++) {
                residuals[i] = (data[i] - point[0]) / believedError;
            }
            return residuals;
        });
        Prior prior = Prior.normal(0.5, 0.8, -7.0, 8.0);
        SamplingProblem problem =
                new SamplingProblem(List.of(new SampledParameter("mean", prior)), likelihood, "replicate " + replicate);
        double[][] thinned = new PosteriorSampler(
                        problem, SamplerOptions.standard(replicate).withBlockLength(20))
                .sample(1600, 1, SamplingListener.NONE)
                .draws(0.5)
                .thinned(DRAWS);
        return RankUniformity.rank(
                truth, IntStream.range(0, DRAWS).mapToDouble(i -> thinned[i][0]).toArray());
    }

    @Test
    void ranksOfTheTruthAreUniform() {
        int[] ranks = IntStream.range(0, REPLICATES).map(i -> rank(i, 1.0)).toArray();

        assertThat(RankUniformity.probability(ranks, DRAWS, BINS)).isGreaterThan(REJECTED);
    }

    @Test
    void ranksUnderAWrongErrorAreFoundOut() {
        int[] ranks = IntStream.range(0, REPLICATES).map(i -> rank(i, 0.6)).toArray();

        assertThat(RankUniformity.probability(ranks, DRAWS, BINS)).isLessThan(REJECTED);
    }

    /** Four bins with 15, 5, 10 and 10 of 40: chi-square 5 with 3 degrees of freedom, upper tail 0.171797. */
    @Test
    void chiSquareByHand() {
        int[] counts = {15, 5, 10, 10};
        int[] ranks = IntStream.range(0, 4)
                .flatMap(bin -> IntStream.generate(() -> bin).limit(counts[bin]))
                .toArray();

        assertThat(RankUniformity.probability(ranks, 3, 4)).isCloseTo(0.171797, within(5.0e-7));
    }

    /** Sampling the scale and integrating it out are two ways to the same posterior of the mean. */
    @Test
    void anUnknownScaleIsIntegratedOutOrSampledAlike() {
        double[] data = {1.0, 2.0, 6.0, 4.0, 2.5};
        LogDensity integrated = GaussianLikelihood.ofUnknownScale(point -> residuals(data, point[0]));
        LogDensity sampled = GaussianLikelihood.ofSampledScale(point -> residuals(data, point[0]));

        // The integral over the scale with density 1/scale, by midpoint sums in the logarithm of the scale.
        for (double mean : new double[] {0.0, 2.0, 3.1, 8.0}) {
            assertThat(overScale(sampled, mean) - overScale(sampled, 3.0))
                    .isCloseTo(integrated.at(new double[] {mean}) - integrated.at(new double[] {3.0}), within(1.0e-9));
        }
    }

    private static double[] residuals(double[] data, double mean) {
        return IntStream.range(0, data.length).mapToDouble(i -> data[i] - mean).toArray();
    }

    private static double overScale(LogDensity density, double mean) {
        double sum = 0.0;
        for (double logScale = -5.0; logScale < 15.0; logScale += 0.01) {
            sum += Math.exp(density.at(new double[] {mean, Math.exp(logScale)}));
        }
        return Math.log(sum);
    }
}
