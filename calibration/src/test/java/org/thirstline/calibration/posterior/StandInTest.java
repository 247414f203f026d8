package org.thirstline.calibration.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What screens proposals, and that it never changes what is sampled. */
class StandInTest {

    private static final int STATES = 600;

    private static RandomGenerator generator(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }

    private static Archive archive(int dimension, LogDensity density) {
        RandomGenerator random = generator(1);
        Archive archive = new Archive(dimension, new double[0], new double[0]);
        for (int i = 0; i < STATES; i++) {
            double[] point = random.doubles(dimension, -2.0, 2.0).toArray();
            archive.add(point, density.at(point));
        }
        return archive;
    }

    private static @Nullable StandIn fitted(int dimension, LogDensity density) {
        return StandIn.of(Targets.in(dimension, -50.0, 50.0, density), archive(dimension, density), 0, STATES);
    }

    @Test
    void aQuadraticLikelihoodUnderAnyPriorIsMatchedExactly() {
        Prior prior = Prior.lognormal(2.0, 0.7, 0.01, 60.0);
        LogDensity likelihood =
                p -> 3.0 - 2.0 * p[0] + 0.3 * p[1] - p[0] * p[0] + 0.8 * p[0] * p[1] - 0.5 * p[1] * p[1];
        SamplingProblem problem = new SamplingProblem(
                List.of(new SampledParameter("a", Prior.uniform(-50.0, 50.0)), new SampledParameter("b", prior)),
                likelihood,
                "none");
        Archive archive = new Archive(2, new double[0], new double[0]);
        RandomGenerator random = generator(2);
        for (int i = 0; i < STATES; i++) {
            double[] point = {random.nextDouble(-2.0, 2.0), random.nextDouble(0.5, 4.0)};
            archive.add(point, problem.logPosterior(point));
        }
        StandIn standIn = Objects.requireNonNull(StandIn.of(problem, archive, 0, STATES));

        for (double[] point : new double[][] {{0.0, 1.0}, {-1.0, 3.0}, {20.0, 40.0}}) {
            assertThat(standIn.at(point)).isCloseTo(problem.logPosterior(point), within(1e-8));
        }
    }

    @Test
    void whatNoQuadraticComesCloseToHasNoStandIn() {
        assertThat(fitted(2, Targets::banana)).isNull();
        assertThat(fitted(2, p -> Double.NaN)).isNull();
        assertThat(fitted(2, p -> -0.5 * p[0] * p[0])).isNotNull();
    }

    @Test
    void chainsThatNeverMovedGiveNoStandIn() {
        Archive still = new Archive(1, new double[0], new double[0]);
        for (int i = 0; i < STATES; i++) {
            still.add(new double[] {1.0}, -3.0);
        }
        assertThat(StandIn.of(Targets.in(1, -5.0, 5.0, p -> 0.0), still, 0, STATES))
                .isNull();
    }

    /** 15 coefficients of 4 parameters times 10; from there on it doubles. */
    @Test
    void theStatesItIsFittedToDouble() {
        List<Integer> states = new ArrayList<>();
        for (int sampled : new int[] {0, 149, 150, 299, 300, 1199, 1200}) {
            states.add(StandIn.states(sampled, 4));
        }
        assertThat(states).containsExactly(0, 0, 150, 150, 300, 600, 1200);
        assertThat(StandIn.of(Targets.in(1, 0.0, 1.0, p -> 0.0), archive(1, p -> 0.0), 0, 0))
                .isNull();
    }

    /**
     * A standard normal screened by one that is shifted and too narrow, the worse of the two ways to be wrong. By the whole acceptance the
     * chain has mean 0 and variance 1 all the same; without the second stage's correction it would have the mean of a product of the two.
     */
    @Test
    void aStandInThatIsWrongDoesNotChangeTheMoments() {
        LogDensity wrong = p -> -0.5 * (p[0] - 0.5) * (p[0] - 0.5) / 0.64;
        StandIn standIn = Objects.requireNonNull(fitted(1, wrong));
        SamplingProblem target = Targets.in(1, -50.0, 50.0, p -> -0.5 * p[0] * p[0]);
        SamplerOptions options = SamplerOptions.standard(4).withBlockLength(20);
        Archive past = archive(1, p -> 0.0);
        double[][] means = new double[4][5000];
        double[][] squares = new double[4][5000];
        for (int index = 0; index < means.length; index++) {
            Chain chain = new Chain(target, options, index);
            chain.start(new double[] {0.0});
            for (int block = 0; block < means[index].length; block++) {
                chain.runBlock(past, standIn, block + 1L);
                double value = chain.state().point()[0];
                means[index][block] = value;
                squares[index][block] = value * value;
            }
        }
        assertIs(0.0, means);
        assertIs(1.0, squares);
    }

    private static void assertIs(double expected, double[][] values) {
        double[] pooled = List.of(values).stream()
                .flatMapToDouble(java.util.Arrays::stream)
                .toArray();
        ParameterSummary summary = ParameterSummary.of("moment", values, pooled);
        assertThat(summary.bulkEffectiveDraws()).isGreaterThan(2000.0);
        assertThat(summary.mean()).isCloseTo(expected, within(4.0 * summary.meanError()));
    }

    @Test
    void halfTheEvaluationsOfANormalAreSpared() {
        SamplingProblem normal = Targets.in(4, -40.0, 40.0, p -> {
            double sum = 0.0;
            for (double value : p) {
                sum -= 0.5 * value * value;
            }
            return sum;
        });
        SamplerOptions options = SamplerOptions.standard(6);
        SamplerState screened = new PosteriorSampler(normal, options).sample(20_000, 1, SamplingListener.NONE);
        SamplerState all = new PosteriorSampler(normal, options.unscreened()).sample(20_000, 1, SamplingListener.NONE);

        assertThat(screened.evaluations()).isLessThan(all.evaluations() / 2);
        assertThat(screened.acceptedShare()).isCloseTo(all.acceptedShare(), within(0.02));
        assertThat(screened.draws(0.25).summaries())
                .allSatisfy(summary -> assertThat(summary.mean()).isCloseTo(0.0, within(4.0 * summary.meanError())));
    }
}
