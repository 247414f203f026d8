package org.thirstline.validation.recovery;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.thirstline.calibration.calibrate.CalibrationFit;
import org.thirstline.calibration.calibrate.CalibrationSettings;
import org.thirstline.calibration.calibrate.CalibrationSettings.Unclear;
import org.thirstline.calibration.calibrate.LeastSquaresCalibration;
import org.thirstline.calibration.calibrate.StartSpread;
import org.thirstline.calibration.fit.Parallel;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.fit.ProfilePoint;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.posterior.PosteriorSampler;
import org.thirstline.calibration.posterior.SamplerOptions;
import org.thirstline.calibration.posterior.SamplingListener;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.validation.recovery.SyntheticTrial.Errors;

/** Measures one trial again and again with other errors, calibrates each time and counts the intervals that hold the truth. */
final class RecoveryStudy {

    /** Radiation-use efficiency, largest leaf area, depletion fraction, factor on the available water of the soils. */
    static final double[] TRUTH = {2.8, 6.0, 0.5, 0.9};

    /** Standard deviation of the errors of every value, as a share. */
    static final double ERROR = 0.1;

    /** Share of the truths that the intervals are to hold. */
    static final double STATED = 0.9;

    private static final double UPPER = 0.5 + 0.5 * STATED;

    /** Share of each chain that is left out: chains start around the fit, and settle within that. */
    private static final double DISCARDED = 0.25;

    private final CalibrationProblem problem;
    private final double[] simulated;

    /**
     * Prepares.
     *
     * @param problem of a trial
     */
    RecoveryStudy(CalibrationProblem problem) {
        this.problem = problem;
        simulated = problem.simulate(TRUTH);
    }

    /** Kinds of interval. */
    enum Interval {
        /** Linear theory: standard error and Student's t. */
        LINEAR,
        /** Profile likelihood. */
        PROFILE,
        /** Quantiles of the posterior. */
        POSTERIOR
    }

    /**
     * Intervals of one replicate.
     *
     * @param lower by kind and parameter; NaN where there is no interval
     * @param upper by kind and parameter
     */
    record Intervals(double[][] lower, double[][] upper) {

        boolean holds(Interval kind, int parameter) {
            return lower[kind.ordinal()][parameter] <= TRUTH[parameter]
                    && TRUTH[parameter] <= upper[kind.ordinal()][parameter];
        }

        private void set(Interval kind, int parameter, double from, double to) {
            lower[kind.ordinal()][parameter] = from;
            upper[kind.ordinal()][parameter] = to;
        }
    }

    /**
     * Runs replicates; the first ones of many are those of fewer.
     *
     * @param replicates how many
     * @param errors how errors are drawn
     * @param generations of each chain of the posterior; 0 for no posterior
     * @param seed of the errors
     * @param progress is told each replicate as it is done
     */
    List<Intervals> run(int replicates, Errors errors, int generations, long seed, Consumer<Intervals> progress) {
        RandomGenerator random = SyntheticTrial.random(seed);
        List<CalibrationProblem> measured = new ArrayList<>();
        for (int i = 0; i < replicates; i++) {
            measured.add(SyntheticTrial.measured(problem, simulated, ERROR, errors, random));
        }
        return Parallel.map(measured, 2, each -> {
            Intervals intervals = intervals(each, generations);
            progress.accept(intervals);
            return intervals;
        });
    }

    private static Intervals intervals(CalibrationProblem measured, int generations) {
        CalibrationSettings settings = new CalibrationSettings(1, 1, 1, false, Unclear.KEEP, 0, false);
        CalibrationFit fit = new LeastSquaresCalibration(settings, text -> {}).fit(measured, true);
        int kinds = Interval.values().length;
        Intervals intervals = new Intervals(new double[kinds][TRUTH.length], new double[kinds][TRUTH.length]);
        double quantile = new TDistribution(fit.result().degreesOfFreedom()).inverseCumulativeProbability(UPPER);
        for (int i = 0; i < TRUTH.length; i++) {
            double reach = quantile * fit.standardError(i);
            intervals.set(Interval.LINEAR, i, fit.point()[i] - reach, fit.point()[i] + reach);
            Profile profile = fit.profiles().get(i);
            intervals.set(Interval.PROFILE, i, where(profile, -quantile), where(profile, quantile));
        }
        if (generations > 0) {
            sample(fit, generations, intervals);
        }
        return intervals;
    }

    /** Where the signed root of a profile takes a value, on straight lines between its points; its end if it never does. */
    private static double where(Profile profile, double root) {
        List<ProfilePoint> points = profile.points().stream()
                .filter(point -> Double.isFinite(point.signedRoot()))
                .toList();
        int inner = root < 0.0 ? points.size() - 1 : 0;
        int step = root < 0.0 ? -1 : 1;
        for (int i = inner; i + step >= 0 && i + step < points.size(); i += step) {
            ProfilePoint before = points.get(i);
            ProfilePoint after = points.get(i + step);
            if (before.value() != after.value()
                    && Math.abs(after.signedRoot()) >= Math.abs(root)
                    && after.signedRoot() * root > 0.0) {
                double share = (root - before.signedRoot()) / (after.signedRoot() - before.signedRoot());
                return before.value() + share * (after.value() - before.value());
            }
        }
        return root < 0.0 ? profile.lower() : profile.upper();
    }

    private static void sample(CalibrationFit fit, int generations, Intervals intervals) {
        PosteriorSampler sampler = new PosteriorSampler(fit.problem().sampling(), SamplerOptions.standard(1));
        List<ParameterSummary> summaries = sampler.advance(
                        sampler.startFrom(StartSpread.of(fit, 1)), generations, 1, SamplingListener.NONE)
                .draws(DISCARDED)
                .summaries();
        for (int i = 0; i < TRUTH.length; i++) {
            intervals.set(
                    Interval.POSTERIOR,
                    i,
                    summaries.get(i).lower5(),
                    summaries.get(i).upper95());
        }
    }

    /** Returns how many of the first replicates' intervals hold the true value of a parameter. */
    static long held(List<Intervals> replicates, int first, Interval kind, int parameter) {
        return IntStream.range(0, first)
                .filter(i -> replicates.get(i).holds(kind, parameter))
                .count();
    }
}
