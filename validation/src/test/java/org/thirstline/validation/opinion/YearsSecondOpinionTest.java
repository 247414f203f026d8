package org.thirstline.validation.opinion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.interval.ClopperPearsonInterval;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.calibration.response.BrokenLine;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.YieldRisk.YearYield;

/**
 * Risk and broken line recomputed with Apache Commons Math: the interval of a share by its F distribution instead of the beta distribution, the
 * broken line by matrix regression at every threshold of a fine grid.
 */
class YearsSecondOpinionTest {

    private static final Offset<Double> AGREEMENT = within(1.0e-9);
    private static final int THRESHOLDS = 2000;

    static IntStream seeds() {
        return IntStream.range(0, 40);
    }

    private static RandomGenerator random(int seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theIntervalOfAShareIsThatOfTheFDistribution(int seed) {
        RandomGenerator random = random(seed);
        int n = random.nextInt(3, 60);
        List<YearYield> years = IntStream.range(0, n)
                .mapToObj(year -> new YearYield(1950 + year, 20.0 * random.nextDouble()))
                .toList();
        YieldRisk risk = new YieldRisk(years);
        double target = 20.0 * random.nextDouble();
        int reached =
                (int) years.stream().filter(y -> y.harvestedMgHa() >= target).count();
        Interval ours = risk.probabilityInterval(target);
        assertThat(risk.reached(target)).isEqualTo(reached);
        // The other library's form is not defined where no year or every year reached the target.
        if (reached > 0 && reached < n) {
            ConfidenceInterval theirs = new ClopperPearsonInterval().createInterval(n, reached, 0.95);
            assertThat(ours.lower()).isCloseTo(theirs.getLowerBound(), AGREEMENT);
            assertThat(ours.upper()).isCloseTo(theirs.getUpperBound(), AGREEMENT);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void noThresholdFitsBetterThanTheBrokenLinesOwn(int seed) {
        RandomGenerator random = random(seed);
        int n = random.nextInt(12, 40);
        double[] x = random.doubles(n, -250.0, 350.0).toArray();
        double[] y = Arrays.stream(x)
                .map(value -> 1.0 + 0.05 * Math.max(0.0, value - 60.0) + 0.5 * random.nextGaussian())
                .toArray();
        Optional<BrokenLine> found = DroughtResponse.fit(
                        x, y, IntStream.range(1900, 1900 + n).toArray())
                .brokenLine();
        assertThat(found).isPresent();
        BrokenLine line = found.get();
        assertThat(sumOfSquares(x, y, line.threshold())).isCloseTo(line.residualSumOfSquares(), AGREEMENT);
        double[] sorted = Arrays.stream(x).sorted().toArray();
        double low = sorted[1];
        double high = sorted[n - 3];
        for (int i = 0; i <= THRESHOLDS; i++) {
            double threshold = low + (high - low) * i / THRESHOLDS;
            assertThat(sumOfSquares(x, y, threshold)).isGreaterThanOrEqualTo(line.residualSumOfSquares() - 1.0e-9);
        }
    }

    private static double sumOfSquares(double[] x, double[] y, double threshold) {
        double[][] design = Arrays.stream(x)
                .mapToObj(v -> new double[] {Math.max(0.0, v - threshold)})
                .toArray(double[][]::new);
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(y, design);
        return regression.calculateResidualSumOfSquares();
    }
}
