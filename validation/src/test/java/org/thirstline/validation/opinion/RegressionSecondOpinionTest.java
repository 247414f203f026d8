package org.thirstline.validation.opinion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.correlation.KendallsCorrelation;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.response.RobustLine;
import org.thirstline.calibration.response.StraightLine;

/**
 * The drought line recomputed with Apache Commons Math: matrix regression by QR instead of sums of squares, quantiles of its own, the
 * robust slope by brute force. The two libraries share ancestors, so matrix and brute-force forms are used rather than twin classes.
 */
class RegressionSecondOpinionTest {

    private static final Offset<Double> AGREEMENT = within(1.0e-9);

    private record Sample(double[] x, double[] y) {

        DroughtResponse fit() {
            return DroughtResponse.fit(
                    x, y, IntStream.range(1900, 1900 + x.length).toArray());
        }
    }

    static IntStream seeds() {
        return IntStream.range(0, 50);
    }

    private static Sample sample(int seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        int n = random.nextInt(5, 40);
        double[] x = random.doubles(n, -250.0, 350.0).toArray();
        double[] y = Arrays.stream(x)
                .map(value -> 3.0 + 0.02 * value + 2.0 * random.nextGaussian())
                .toArray();
        return new Sample(x, y);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void straightLineAgreesWithMatrixRegression(int seed) {
        Sample sample = sample(seed);
        StraightLine line = sample.fit().line().orElseThrow();
        OLSMultipleLinearRegression matrix = new OLSMultipleLinearRegression();
        double[][] design =
                Arrays.stream(sample.x).mapToObj(x -> new double[] {x}).toArray(double[][]::new);
        matrix.newSampleData(sample.y, design);
        double[] estimates = matrix.estimateRegressionParameters();
        double[] errors = matrix.estimateRegressionParametersStandardErrors();
        double quantile = new TDistribution(sample.x.length - 2.0).inverseCumulativeProbability(0.975);

        assertThat(line.intercept()).isCloseTo(estimates[0], AGREEMENT);
        assertThat(line.slope()).isCloseTo(estimates[1], AGREEMENT);
        assertThat(line.interceptError()).isCloseTo(errors[0], AGREEMENT);
        assertThat(line.slopeError()).isCloseTo(errors[1], AGREEMENT);
        assertThat(line.residualDeviation()).isCloseTo(matrix.estimateRegressionStandardError(), AGREEMENT);
        assertThat(line.rSquared()).isCloseTo(matrix.calculateRSquared(), AGREEMENT);
        assertThat(line.slopeInterval().lower()).isCloseTo(estimates[1] - quantile * errors[1], AGREEMENT);
        assertThat(line.slopeInterval().upper()).isCloseTo(estimates[1] + quantile * errors[1], AGREEMENT);
        assertThat(line.interceptInterval().lower()).isCloseTo(estimates[0] - quantile * errors[0], AGREEMENT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void bandsAgreeWithTheParameterCovariance(int seed) {
        Sample sample = sample(seed);
        StraightLine line = sample.fit().line().orElseThrow();
        OLSMultipleLinearRegression matrix = new OLSMultipleLinearRegression();
        double[][] design =
                Arrays.stream(sample.x).mapToObj(x -> new double[] {x}).toArray(double[][]::new);
        matrix.newSampleData(sample.y, design);
        double[][] unscaled = matrix.estimateRegressionParametersVariance();
        double variance = matrix.estimateErrorVariance();
        double quantile = new TDistribution(sample.x.length - 2.0).inverseCumulativeProbability(0.975);

        for (double x : new double[] {-400.0, 0.0, 123.4, 500.0}) {
            double spread = unscaled[0][0] + 2.0 * x * unscaled[0][1] + x * x * unscaled[1][1];
            double mean = matrix.estimateRegressionParameters()[0] + x * matrix.estimateRegressionParameters()[1];
            double confidence = quantile * Math.sqrt(variance * spread);
            double prediction = quantile * Math.sqrt(variance * (1.0 + spread));
            assertThat(line.confidenceBand(x).upper()).isCloseTo(mean + confidence, AGREEMENT);
            assertThat(line.predictionBand(x).lower()).isCloseTo(mean - prediction, AGREEMENT);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void robustSlopeIsTheMedianOfAllPairwiseSlopes(int seed) {
        Sample sample = sample(seed);
        int n = sample.x.length;
        double[] slopes = IntStream.range(0, n * n)
                .filter(k -> k / n < k % n)
                .mapToDouble(k -> (sample.y[k % n] - sample.y[k / n]) / (sample.x[k % n] - sample.x[k / n]))
                .toArray();
        RobustLine line = sample.fit().robustLine().orElseThrow();
        double slope = new Median().evaluate(slopes);
        double[] offsets = IntStream.range(0, n)
                .mapToDouble(i -> sample.y[i] - slope * sample.x[i])
                .toArray();

        assertThat(line.slope()).isCloseTo(slope, AGREEMENT);
        assertThat(line.intercept()).isCloseTo(new Median().evaluate(offsets), AGREEMENT);
        assertThat(line.slopeInterval().contains(slope)).isTrue();
    }

    /** The rank interval ends where Kendall's S of the residuals reaches its critical value, up to the interpolation of one rank. */
    @ParameterizedTest
    @MethodSource("seeds")
    void robustIntervalEndsWhereKendallsRankTestRejects(int seed) {
        Sample sample = sample(seed);
        int n = sample.x.length;
        double critical = 1.959963984540054 * Math.sqrt(n * (n - 1.0) * (2.0 * n + 5.0) / 18.0);
        if (critical > 0.5 * n * (n - 1.0) - 2.0) {
            return;
        }
        RobustLine line = sample.fit().robustLine().orElseThrow();

        assertThat(kendallSum(sample, line.slopeInterval().lower())).isCloseTo(critical, within(3.0));
        assertThat(kendallSum(sample, line.slopeInterval().upper())).isCloseTo(-critical, within(3.0));
    }

    private static double kendallSum(Sample sample, double slope) {
        int n = sample.x.length;
        double[] residuals = IntStream.range(0, n)
                .mapToDouble(i -> sample.y[i] - slope * sample.x[i])
                .toArray();
        return new KendallsCorrelation().correlation(sample.x, residuals) * 0.5 * n * (n - 1.0);
    }
}
