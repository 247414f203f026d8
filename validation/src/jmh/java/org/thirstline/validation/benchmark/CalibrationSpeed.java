package org.thirstline.validation.benchmark;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationSettings;
import org.thirstline.calibration.calibrate.CalibrationSettings.Unclear;
import org.thirstline.calibration.calibrate.LeastSquaresCalibration;
import org.thirstline.calibration.calibrate.PosteriorCalibration;
import org.thirstline.calibration.calibrate.StartSpread;
import org.thirstline.calibration.fit.FitOptions;
import org.thirstline.calibration.fit.FitOptions.Differences;
import org.thirstline.calibration.fit.LeastSquaresFit;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.posterior.PosteriorSampler;
import org.thirstline.calibration.posterior.SamplerOptions;
import org.thirstline.calibration.posterior.SamplerState;
import org.thirstline.calibration.posterior.SamplingListener;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.validation.recovery.SyntheticTrial;
import org.thirstline.validation.recovery.SyntheticTrial.Beliefs;
import org.thirstline.validation.recovery.SyntheticTrial.Errors;

/**
 * How fast a calibration is: four parameters, sixty plot-years, two threads; once as six sites of ten years, every plot a stand of its own, once
 * as three sites of five years in four blocks, whose plots share a stand. Prints elapsed and processor time of least squares from 32
 * starts, of the same with profiles, and of posterior proposals, 100 000 unless another number is given, with and without screening.
 */
public final class CalibrationSpeed {

    private static final double NANO = 1.0e-9;
    private static final int THREADS = 2;
    private static final int STARTS = 32;
    private static final double[] TRUTH = {2.8, 6.0, 0.5, 0.9};

    private CalibrationSpeed() {}

    /**
     * Measures.
     *
     * @param arguments number of posterior proposals
     */
    public static void main(String[] arguments) throws IOException {
        long proposals = arguments.length > 0 ? Long.parseLong(arguments[0]) : 100_000L;
        System.out.println("6 sites, 10 years, every plot a stand of its own");
        measure(trial(6, 10, 1), proposals);
        System.out.println("3 sites, 5 years, 4 blocks that share a stand");
        measure(trial(3, 5, 4), proposals);
    }

    private static CalibrationProblem trial(int sites, int years, int blocks) throws IOException {
        CalibrationProblem block = SyntheticTrial.problem(
                Files.createTempDirectory("thirstline-speed"), sites, years, Beliefs.NONE, "estimated");
        int values = block.observations().size();
        CalibrationProblem trial = block.withObservations(
                IntStream.range(0, blocks * values).mapToObj(i -> i % values).toList());
        return SyntheticTrial.measured(
                trial, trial.simulate(TRUTH), 0.1, Errors.OF_LOGARITHM, SyntheticTrial.random(1));
    }

    private static void measure(CalibrationProblem problem, long proposals) {
        CalibrationSettings settings = new CalibrationSettings(STARTS, 1, THREADS, false, Unclear.KEEP, 0, false);
        FitOptions quick = new FitOptions(STARTS, 1, 25, 5.0e-3, Differences.FORWARD, 1.0e-3);
        FitOptions thorough = new FitOptions(1, 1, 100, 5.0e-3, Differences.CENTRAL, 1.0e-8);
        for (String warmth : new String[] {"cold", "warm"}) {
            timed(
                    "least squares, 32 starts, " + warmth,
                    problem,
                    () -> LeastSquaresFit.fit(problem, problem.fitParameters(), quick, thorough, THREADS));
        }
        CalibrationFit fit =
                timed("least squares, errors weighed, profiles", problem, () -> new LeastSquaresCalibration(
                                settings, text -> {})
                        .fit(problem, true));
        long generations = proposals / SamplerOptions.standard(1).chains();
        for (SamplerOptions options : new SamplerOptions[] {
            SamplerOptions.standard(1), SamplerOptions.standard(1).unscreened()
        }) {
            PosteriorSampler sampler = new PosteriorSampler(fit.problem().sampling(), options);
            SamplerState state = timed(
                    String.format(
                            Locale.ROOT,
                            "posterior, %,d proposals%s",
                            proposals,
                            options.screened() ? "" : ", none screened"),
                    problem,
                    () -> sampler.advance(
                            sampler.startFrom(StartSpread.of(fit, 1)), generations, THREADS, SamplingListener.NONE));
            double[] independent = state.draws(PosteriorCalibration.DISCARDED).summaries().stream()
                    .mapToDouble(ParameterSummary::bulkEffectiveDraws)
                    .toArray();
            System.out.printf(
                    Locale.ROOT,
                    "%-45s accepted %.3f, fewest effective draws %,.0f%n",
                    "",
                    state.acceptedShare(),
                    Arrays.stream(independent).min().orElseThrow());
        }
    }

    private static <T> T timed(String what, CalibrationProblem problem, Supplier<T> task) {
        long before = problem.evaluations();
        long start = System.nanoTime();
        double processor = processorSeconds();
        T result = task.get();
        double elapsed = NANO * (System.nanoTime() - start);
        processor = processorSeconds() - processor;
        long done = problem.evaluations() - before;
        System.out.printf(
                Locale.ROOT,
                "%-45s %,8d evaluations, %6.1f s elapsed, %6.1f s of processor: %,.0f a second, %,.0f a processor second%n",
                what,
                done,
                elapsed,
                processor,
                done / elapsed,
                done / processor);
        return result;
    }

    private static double processorSeconds() {
        OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        return NANO * system.getProcessCpuTime();
    }
}
