package org.thirstline.validation.opinion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TriangularDistribution;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.calibration.skill.Fold;
import org.thirstline.calibration.skill.IntervalCoverage;
import org.thirstline.calibration.skill.Predictor;
import org.thirstline.calibration.skill.SkillScores;

/** Skill scores, coverage, baselines and cut priors recomputed with Apache Commons Math: norms of vectors instead of sums. */
class SkillSecondOpinionTest {

    private static final Offset<Double> AGREEMENT = within(1.0e-9);

    static IntStream seeds() {
        return IntStream.range(0, 50);
    }

    private static RandomGenerator random(int seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void scoresAgreeWithVectorNorms(int seed) {
        RandomGenerator random = random(seed);
        int n = random.nextInt(2, 60);
        RealVector observed = new ArrayRealVector(random.doubles(n, 5.0, 30.0).toArray());
        double noise = random.nextDouble(0.1, 40.0);
        RealVector difference = new ArrayRealVector(
                random.doubles(n).map(value -> noise * (value - 0.3)).toArray());
        SkillScores scores =
                SkillScores.of(observed.toArray(), observed.add(difference).toArray());
        RealVector deviation = observed.mapSubtract(observed.dotProduct(new ArrayRealVector(n, 1.0)) / n);
        double errors = difference.getL1Norm();
        double reference = 2.0 * deviation.getL1Norm();

        assertThat(scores.rootMeanSquareError()).isCloseTo(difference.getNorm() / Math.sqrt(n), AGREEMENT);
        assertThat(scores.bias()).isCloseTo(difference.dotProduct(new ArrayRealVector(n, 1.0)) / n, AGREEMENT);
        assertThat(scores.efficiency())
                .isCloseTo(1.0 - Math.pow(difference.getNorm() / deviation.getNorm(), 2), within(1.0e-6));
        assertThat(scores.refinedIndex())
                .isCloseTo(errors <= reference ? 1.0 - errors / reference : reference / errors - 1.0, AGREEMENT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void coverageIntervalAgreesWithWilson(int seed) {
        RandomGenerator random = random(seed);
        int n = random.nextInt(1, 200);
        int inside = random.nextInt(0, n + 1);
        IntervalCoverage coverage = new IntervalCoverage(n, inside, 0.9);
        var wilson = new WilsonScoreInterval().createInterval(n, inside, 0.95);

        assertThat(coverage.shareInterval().lower()).isCloseTo(Math.max(0.0, wilson.getLowerBound()), AGREEMENT);
        assertThat(coverage.shareInterval().upper()).isCloseTo(Math.min(1.0, wilson.getUpperBound()), AGREEMENT);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void regressionBaselineAgreesWithSimpleRegression(int seed) {
        RandomGenerator random = random(seed);
        double[] rain = random.doubles(24, 100.0, 900.0).toArray();
        double[] observed = Arrays.stream(rain)
                .map(x -> 5.0 + 0.02 * x + random.nextGaussian())
                .toArray();
        List<String> groups =
                IntStream.range(0, 24).mapToObj(i -> "site " + i % 4).toList();
        for (Fold fold : Fold.leaveOneGroupOut(groups)) {
            SimpleRegression regression = new SimpleRegression();
            fold.training().forEach(i -> regression.addData(rain[i], observed[i]));
            double[] expected = fold.heldOut().stream()
                    .mapToDouble(i -> regression.predict(rain[i]))
                    .toArray();

            assertThat(Predictor.regression(observed, rain).predict(fold)).containsExactly(expected, AGREEMENT);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void cutPriorsAgreeWithTheRatioOfProbabilities(int seed) {
        RandomGenerator random = random(seed);
        double centre = random.nextDouble(1.0, 5.0);
        double spread = random.nextDouble(0.1, 1.0);
        double lower = centre - spread * random.nextDouble(0.1, 2.0);
        double upper = centre + spread * random.nextDouble(0.1, 2.0);
        double value = lower + random.nextDouble() * (upper - lower);

        assertCut(new NormalDistribution(centre, spread), Prior.normal(centre, spread, lower, upper), value);
        assertCut(
                new LogNormalDistribution(Math.log(centre), spread),
                Prior.lognormal(centre, spread, Math.max(lower, 0.01), upper),
                Math.max(value, 0.02));
        assertCut(
                new TriangularDistribution(centre - 3.0, centre, centre + 2.5),
                Prior.triangular(centre - 3.0, centre, centre + 2.5, lower, upper),
                value);
    }

    private static void assertCut(RealDistribution uncut, Prior prior, double value) {
        double mass = uncut.cumulativeProbability(prior.upper()) - uncut.cumulativeProbability(prior.lower());
        double below = uncut.cumulativeProbability(value) - uncut.cumulativeProbability(prior.lower());

        assertThat(Math.exp(prior.logDensity(value))).isCloseTo(uncut.density(value) / mass, AGREEMENT);
        assertThat(prior.cumulative(value)).isCloseTo(below / mass, AGREEMENT);
        assertThat(prior.quantile(below / mass)).isCloseTo(value, within(1.0e-6));
    }
}
