package org.thirstline.calibration.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

class PosteriorSamplerTest {

    /** Monte Carlo standard errors that an honest mean stays within: exceeded once in 16 000. */
    private static final double ERRORS = 4.0;

    private static final SamplingProblem BANANA = Targets.in(2, -20.0, 40.0, Targets::banana);

    /** Proposals are screened on it, as they are not on the banana. */
    private static final SamplingProblem NORMAL = Targets.in(2, -40.0, 40.0, Targets.correlatedNormal(0.9));

    private static PosteriorDraws draws(SamplingProblem problem, long generations, long seed) {
        SamplerOptions options = SamplerOptions.standard(seed);
        return new PosteriorSampler(problem, options)
                .sample(generations, 2, SamplingListener.NONE)
                .draws(0.25);
    }

    private static void assertMean(PosteriorDraws draws, ToDoubleFunction<double[]> function, double expected) {
        double[][] values = IntStream.range(0, draws.chains())
                .mapToObj(chain -> IntStream.range(0, draws.drawsPerChain())
                        .mapToDouble(draw -> function.applyAsDouble(draws.draw(chain, draw)))
                        .toArray())
                .toArray(double[][]::new);
        double[] pooled = Arrays.stream(values).flatMapToDouble(Arrays::stream).toArray();
        ParameterSummary summary = ParameterSummary.of("moment", values, pooled);

        assertThat(summary.mean()).isCloseTo(expected, within(ERRORS * summary.meanError()));
    }

    /** Means, standard deviations and correlation of two parameters through the means of powers and products. */
    private static void assertMoments(PosteriorDraws draws, double[] mean, double[] deviation, double correlation) {
        assertThat(draws.summaries()).allSatisfy(summary -> {
            assertThat(summary.rHat()).isLessThan(Convergence.R_HAT_LIMIT);
            assertThat(summary.bulkEffectiveDraws()).isGreaterThan(1000.0);
            assertThat(summary.converged()).isTrue();
        });
        for (int i = 0; i < 2; i++) {
            int parameter = i;
            assertMean(draws, draw -> draw[parameter], mean[i]);
            assertMean(draws, draw -> square(draw[parameter] - mean[parameter]), square(deviation[i]));
        }
        assertMean(
                draws, draw -> (draw[0] - mean[0]) * (draw[1] - mean[1]) / (deviation[0] * deviation[1]), correlation);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void momentsOfACorrelatedNormalAreRecovered(long seed) {
        PosteriorDraws draws = draws(Targets.in(2, -40.0, 40.0, Targets.correlatedNormal(0.9)), 40_000, seed);

        assertMoments(draws, new double[] {1.0, -2.0}, new double[] {1.0, 3.0}, 0.9);
        assertThat(draws.correlation(0, 1)).isCloseTo(0.9, within(0.02));
        assertThat(draws.mostProbable()[0]).isCloseTo(1.0, within(0.1));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void momentsOfABananaAreRecovered(long seed) {
        assertMoments(draws(BANANA, 80_000, seed), new double[] {0.0, 1.0}, new double[] {2.0, 1.5}, 0.0);
    }

    /**
     * A corner cuts off a normal of correlation 0.9 at x and y below 0: jumps reflected there give
     * means too small by an eighth.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aTargetPiledUpInACornerIsRecovered(long seed) {
        LogDensity corner = p -> -0.5 * (p[0] * p[0] - 1.8 * p[0] * p[1] + p[1] * p[1]) / 0.19;
        double[] moments = gridMoments(corner, 8.0, 2000);
        PosteriorDraws draws = draws(Targets.in(2, 0.0, 8.0, corner), 60_000, seed);

        assertMoments(draws, new double[] {moments[0], moments[0]}, new double[] {moments[1], moments[1]}, moments[2]);
    }

    /** Mean, standard deviation and correlation by midpoint sums over a square; the target is symmetric in both parameters. */
    private static double[] gridMoments(LogDensity target, double upper, int steps) {
        double mass = 0.0;
        double mean = 0.0;
        double square = 0.0;
        double product = 0.0;
        for (int i = 0; i < steps; i++) {
            for (int j = 0; j < steps; j++) {
                double x = (i + 0.5) * upper / steps;
                double y = (j + 0.5) * upper / steps;
                double density = Math.exp(target.at(new double[] {x, y}));
                mass += density;
                mean += density * x;
                square += density * x * x;
                product += density * x * y;
            }
        }
        mean /= mass;
        double variance = square / mass - mean * mean;
        return new double[] {mean, Math.sqrt(variance), (product / mass - mean * mean) / variance};
    }

    @Test
    void bothModesOfATargetAreVisitedInProportion() {
        LogDensity modes = p -> Math.log(0.25 * Math.exp(-0.5 * square(p[0] + 6.0) - 0.5 * square(p[1]))
                + 0.75 * Math.exp(-0.5 * square(p[0] - 6.0) - 0.5 * square(p[1])));
        ParameterSummary summary =
                draws(Targets.in(2, -20.0, 20.0, modes), 80_000, 5).summaries().get(0);

        assertThat(summary.mean()).isCloseTo(3.0, within(ERRORS * summary.meanError()));
        assertThat(summary.meanError()).isLessThan(0.5);
    }

    private static double square(double value) {
        return value * value;
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void threadsDoNotChangeASingleBit(boolean screened) {
        SamplingProblem target = screened ? NORMAL : BANANA;
        PosteriorSampler sampler =
                new PosteriorSampler(target, SamplerOptions.standard(7).withChains(5));
        List<String> alone = sampler.sample(3000, 1, SamplingListener.NONE).encode();

        for (int threads : new int[] {2, 3, 16}) {
            assertThat(sampler.sample(3000, threads, SamplingListener.NONE).encode())
                    .isEqualTo(alone);
        }
        assertThat(new PosteriorSampler(target, SamplerOptions.standard(8).withChains(5))
                        .sample(3000, 1, SamplingListener.NONE)
                        .encode())
                .isNotEqualTo(alone);
    }

    /** As if killed at any moment: whatever came after the last saved state is lost, and the rest is done again by a new sampler. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aRunContinuedFromItsLastSavedStateEndsLikeOneNeverStopped(boolean screened) {
        SamplingProblem target = screened ? NORMAL : BANANA;
        SamplerOptions options = SamplerOptions.standard(11);
        List<String> whole = new PosteriorSampler(target, options)
                .sample(2500, 2, SamplingListener.NONE)
                .encode();
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(12);
        for (int repeat = 0; repeat < 3; repeat++) {
            List<String> saved = new PosteriorSampler(target, options).start().encode();
            int runs = 0;
            boolean done = false;
            while (!done) {
                Killed run = new Killed(random.nextInt(1, 150), random.nextInt(1, 40));
                PosteriorSampler sampler = new PosteriorSampler(target, options);
                try {
                    saved = sampler.advance(SamplerState.decode(saved), 2500, random.nextInt(1, 4), run)
                            .encode();
                    done = true;
                } catch (IllegalStateException killed) {
                    saved = run.saved.isEmpty() ? saved : run.saved;
                }
                runs++;
            }
            assertThat(runs).isGreaterThan(1);
            assertThat(saved).isEqualTo(whole);
        }
    }

    /** Saves a state now and then and dies after some blocks. */
    private static final class Killed implements SamplingListener {

        private final int lifetime;
        private final int saveEvery;
        private int blocks;
        private List<String> saved = List.of();

        Killed(int lifetime, int saveEvery) {
            this.lifetime = lifetime;
            this.saveEvery = saveEvery;
        }

        @Override
        public boolean advanced(long done, long total, Supplier<SamplerState> state) {
            blocks++;
            if (blocks % saveEvery == 0) {
                saved = state.get().encode();
            }
            if (blocks >= lifetime) {
                throw new IllegalStateException("killed");
            }
            return true;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void theListenerSeesEveryBlockAndCanStop(int threads) {
        PosteriorSampler sampler = new PosteriorSampler(BANANA, SamplerOptions.standard(1));
        List<Long> seen = new ArrayList<>();
        SamplerState stopped = sampler.sample(95, threads, (done, total, state) -> {
            assertThat(total).isEqualTo(100);
            seen.add(done);
            return done < 50;
        });

        assertThat(seen).containsExactly(10L, 20L, 30L, 40L, 50L);
        assertThat(stopped.generations()).isEqualTo(50);
        assertThat(sampler.advance(stopped, 95, threads, SamplingListener.NONE).encode())
                .isEqualTo(sampler.sample(100, 1, SamplingListener.NONE).encode());
        assertThat(stopped.draws(0.0).drawsPerChain()).isEqualTo(5);
        assertThat(stopped.draws(0.4).drawsPerChain()).isEqualTo(3);
    }

    /**
     * The first of three chains to be asked is held until four more proposals were evaluated: two of its own block and, without it, two of
     * the next.
     */
    @Test
    void aSlowChainHoldsTheOthersNoEarlierThanABlockLater() {
        SamplerOptions options = new SamplerOptions(3, 1, 0.0, 10, false, 1);
        AtomicInteger asked = new AtomicInteger();
        CountDownLatch others = new CountDownLatch(4);
        AtomicBoolean overtaken = new AtomicBoolean();
        LogDensity slowOnce = point -> {
            int call = asked.incrementAndGet() - options.chains();
            if (call == 1) {
                overtaken.set(reached(others));
            } else if (call > 1) {
                others.countDown();
            }
            return 0.0;
        };
        Prior neverOutside = Prior.normal(0.0, 1.0, -1.0e6, 1.0e6);
        SamplingProblem problem =
                new SamplingProblem(List.of(new SampledParameter("a", neverOutside)), slowOnce, "none");
        new PosteriorSampler(problem, options).sample(20, 2, SamplingListener.NONE);

        assertThat(overtaken).isTrue();
    }

    private static boolean reached(CountDownLatch latch) {
        try {
            return latch.await(20, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    @Test
    void evaluationsAreCountedAndNoneIsSpentOutsideTheBounds() {
        long[] asked = {0};
        LogDensity counting = point -> {
            asked[0]++;
            boolean inside = Arrays.stream(point).allMatch(value -> value >= 0.0 && value <= 1.0);
            return inside ? 0.0 : fail("asked outside the bounds");
        };
        SamplerState state = new PosteriorSampler(Targets.in(3, 0.0, 1.0, counting), SamplerOptions.standard(3))
                .sample(2000, 1, SamplingListener.NONE);

        assertThat(state.evaluations()).isEqualTo(asked[0]).isLessThan(8004);
        assertThat(state.acceptedShare()).isBetween(0.1, 0.9);
    }

    @Test
    void savedStatesCutShortChangedOrForeignAreRefused() {
        PosteriorSampler sampler = new PosteriorSampler(BANANA, SamplerOptions.standard(1));
        SamplerState state = sampler.sample(100, 1, SamplingListener.NONE);
        List<String> lines = state.encode();
        List<String> changed = new ArrayList<>(lines);
        changed.set(20, changed.get(20).replace('1', '2'));

        for (int kept = 0; kept < lines.size(); kept++) {
            List<String> cut = lines.subList(0, kept);
            refused(() -> SamplerState.decode(cut), CalibrationError.SAMPLER_STATE_UNREADABLE);
        }
        refused(() -> SamplerState.decode(changed), CalibrationError.SAMPLER_STATE_UNREADABLE);
        PosteriorSampler otherSeed = new PosteriorSampler(BANANA, SamplerOptions.standard(2));
        PosteriorSampler otherBounds =
                new PosteriorSampler(Targets.in(2, -20.0, 41.0, Targets::banana), SamplerOptions.standard(1));
        for (PosteriorSampler other : List.of(otherSeed, otherBounds)) {
            refused(
                    () -> other.advance(state, 200, 1, SamplingListener.NONE),
                    CalibrationError.SAMPLER_STATE_OF_ANOTHER_PROBLEM);
        }
    }

    @Test
    void aPosteriorThatIsZeroEverywhereIsRefused() {
        SamplingProblem nowhere = Targets.in(1, 0.0, 1.0, point -> Double.NaN);

        refused(
                () -> new PosteriorSampler(nowhere, SamplerOptions.standard(1)).start(),
                CalibrationError.NO_FINITE_DENSITY);
    }

    @Test
    void whatTheLikelihoodThrowsReachesTheCallerFromAnyThread() {
        LogDensity failing = point -> {
            if (point[0] > 0.9) {
                throw new ArithmeticException("no model here");
            }
            return 10.0 * point[0];
        };
        PosteriorSampler sampler = new PosteriorSampler(Targets.in(1, 0.0, 1.0, failing), SamplerOptions.standard(9));

        assertThatThrownBy(() -> sampler.sample(5000, 4, SamplingListener.NONE))
                .isInstanceOf(ArithmeticException.class);
    }

    private static void refused(Runnable action, Object code) {
        assertThatThrownBy(action::run).isInstanceOfSatisfying(InputException.class, e -> assertThat(e.code())
                .isEqualTo(code));
    }
}
