package org.thirstline.calibration.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.thirstline.calibration.calibrate.CalibrationFit.Fixed;
import org.thirstline.calibration.calibrate.CalibrationSettings.Unclear;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.fit.FitOptions;
import org.thirstline.calibration.fit.FitOptions.Differences;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.fit.FixAdvice;
import org.thirstline.calibration.fit.GlobalSearch;
import org.thirstline.calibration.fit.Identifiability;
import org.thirstline.calibration.fit.LeastSquaresFit;
import org.thirstline.calibration.fit.Parallel;
import org.thirstline.calibration.fit.Profile;
import org.thirstline.calibration.fit.ProfileLikelihood;
import org.thirstline.calibration.fit.SearchResult;
import org.thirstline.calibration.problem.CalibratedParameter;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.calibration.problem.ErrorModel;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.model.error.InputException;

/** Fits a problem by least squares and finds out what its data can tell. Confined to one calibration. */
public final class LeastSquaresCalibration {

    /** Steps of the slopes: small beside a parameter's range, large beside the jumps that whole days make (our choice). */
    private static final double STEP = 5.0e-3;

    /** Simulated dates are whole days, so that smaller steps would often see none of them move. */
    private static final double STEP_WITH_DATES = 5.0e-2;

    private static final double QUICK_TOLERANCE = 1.0e-3;
    private static final double THOROUGH_TOLERANCE = 1.0e-8;
    private static final int QUICK_EVALUATIONS = 25;
    private static final int THOROUGH_EVALUATIONS = 100;
    private static final int GLOBAL_GENERATIONS = 60;
    private static final int GLOBAL_ENDS = 4;
    private static final int PROFILE_POINTS = 15;
    private static final double CONFIDENCE = 0.95;

    /** Sizes of errors are estimated and the fit repeated with them until they change by less than this. */
    private static final double SIZE_TOLERANCE = 1.0e-3;

    private static final int MOST_REWEIGHTINGS = 10;

    private final CalibrationSettings settings;
    private final Consumer<String> progress;

    /**
     * Prepares a fit.
     *
     * @param settings how to search
     * @param progress is told what is being done
     */
    public LeastSquaresCalibration(CalibrationSettings settings, Consumer<String> progress) {
        this.settings = settings;
        this.progress = progress;
    }

    /**
     * Fits.
     *
     * @param problem what to fit
     * @param chosen whether somebody chose the parameters, so that they are not fixed unasked
     * @throws InputException if the data cannot tell parameters that somebody chose, or any at all
     */
    public CalibrationFit fit(CalibrationProblem problem, boolean chosen) {
        CalibrationProblem asked = problem;
        List<Fixed> fixed = new ArrayList<>();
        progress.accept("Searching from " + settings.starts() + " starts");
        FitResult searched = search(asked);
        while (true) {
            Weighted weighted = weigh(asked, searched);
            boolean known = weighted.problem.errors().stream().anyMatch(error -> !error.estimated());
            Identifiability told =
                    new Identifiability(weighted.problem, weighted.result, thorough(weighted.problem), known);
            List<FixAdvice> advice = told.advice(List.of());
            List<Profile> profiles = List.of();
            if (advice.isEmpty() || settings.unclear() == Unclear.KEEP) {
                progress.accept("Profiling each parameter");
                profiles = profiles(weighted, known);
                advice = told.advice(profiles);
            }
            if (advice.isEmpty() || settings.unclear() == Unclear.KEEP) {
                return new CalibrationFit(
                        weighted.problem, weighted.result, searched.searches(), told, profiles, fixed, advice);
            }
            CalibrationProblem fewer = without(asked, advice, chosen, fixed);
            progress.accept("Fitting again without "
                    + fixed.get(fixed.size() - 1).parameter().name());
            searched = searchAgain(asked, fewer, searched);
            asked = fewer;
        }
    }

    /** Starts where the searches ended that had one parameter more. */
    private FitResult searchAgain(CalibrationProblem before, CalibrationProblem fewer, FitResult searched) {
        List<double[]> starts = new ArrayList<>();
        starts.add(fewer.start());
        searched.searches().stream()
                .map(SearchResult::end)
                .forEach(end -> starts.add(IntStream.range(0, end.length)
                        .filter(i ->
                                fewer.parameters().contains(before.parameters().get(i)))
                        .mapToDouble(i -> end[i])
                        .toArray()));
        return LeastSquaresFit.fitFrom(
                starts, fewer, fewer.fitParameters(), quick(fewer), thorough(fewer), settings.threads());
    }

    private CalibrationProblem without(
            CalibrationProblem problem, List<FixAdvice> advice, boolean chosen, List<Fixed> fixed) {
        // One at a time: what is hard to tell beside one parameter may be easy without it.
        FixAdvice worst =
                advice.stream().min(LeastSquaresCalibration::worstFirst).orElseThrow();
        List<CalibratedParameter> kept = problem.parameters().stream()
                .filter(parameter -> !worst.name().equals(parameter.name()))
                .toList();
        if ((chosen && settings.unclear() == Unclear.REFUSE) || kept.isEmpty()) {
            throw new InputException(
                    CalibrationError.NOT_TOLD,
                    advice.stream().map(FixAdvice::words).collect(Collectors.joining(" ")));
        }
        problem.parameters().stream()
                .filter(parameter -> worst.name().equals(parameter.name()))
                .forEach(parameter -> fixed.add(new Fixed(parameter, worst)));
        return problem.withParameters(kept);
    }

    /** What does not move the data first, of these the least moving; then the most collinear; then flat profiles. */
    private static int worstFirst(FixAdvice a, FixAdvice b) {
        int kinds = Integer.compare(a.reason().ordinal(), b.reason().ordinal());
        if (kinds != 0) {
            return kinds;
        }
        return a.reason() == FixAdvice.Reason.UNRESPONSIVE
                ? Double.compare(a.number(), b.number())
                : Double.compare(b.number(), a.number());
    }

    private FitResult search(CalibrationProblem problem) {
        FitOptions quick = quick(problem);
        if (!settings.global()) {
            return LeastSquaresFit.fit(problem, problem.fitParameters(), quick, thorough(problem), settings.threads());
        }
        List<double[]> starts = new ArrayList<>();
        starts.add(problem.start());
        starts.addAll(new GlobalSearch(problem, problem.fitParameters(), GLOBAL_GENERATIONS, settings.seed())
                .run(settings.threads(), GLOBAL_ENDS));
        return LeastSquaresFit.fitFrom(
                starts, problem, problem.fitParameters(), quick, thorough(problem), settings.threads());
    }

    /** Returns quick searches for a problem. */
    FitOptions quick(CalibrationProblem problem) {
        return new FitOptions(
                settings.starts(),
                settings.seed(),
                QUICK_EVALUATIONS,
                step(problem),
                Differences.FORWARD,
                QUICK_TOLERANCE);
    }

    static FitOptions thorough(CalibrationProblem problem) {
        return new FitOptions(1, 1, THOROUGH_EVALUATIONS, step(problem), Differences.CENTRAL, THOROUGH_TOLERANCE);
    }

    private static double step(CalibrationProblem problem) {
        boolean dates =
                problem.errors().stream().anyMatch(error -> error.variable().timing() == PlotVariable.Timing.DATE);
        return dates ? STEP_WITH_DATES : STEP;
    }

    /**
     * A fit with the errors it leaves over.
     *
     * @param problem with errors of that size
     * @param result residuals in units of them
     */
    record Weighted(CalibrationProblem problem, FitResult result) {}

    /** Gives the errors the size that the fit leaves over; with several of them the fit is repeated, as their weights have changed. */
    static Weighted weigh(CalibrationProblem problem, FitResult searched) {
        CalibrationProblem weighted = problem;
        FitResult result = searched;
        for (int round = 0; round < MOST_REWEIGHTINGS; round++) {
            CalibrationProblem next = weighted.withErrors(sizes(weighted, result));
            boolean settled = settled(weighted, next);
            weighted = next;
            if (settled || next.errors().size() == 1) {
                break;
            }
            result = refit(next, List.of(result.values()));
        }
        FitOptions thorough = thorough(weighted);
        result = LeastSquaresFit.fitFrom(
                List.of(result.values()), weighted, weighted.fitParameters(), thorough, thorough, 1);
        return new Weighted(weighted, result);
    }

    private static List<ErrorModel> sizes(CalibrationProblem problem, FitResult result) {
        double[] residuals = result.residuals();
        double spent = Math.sqrt(residuals.length / (double) Math.max(1, result.degreesOfFreedom()));
        return problem.errors().stream()
                .map(error -> error.estimated()
                        ? error.withSize(Math.max(
                                Double.MIN_NORMAL, spent * problem.rootMeanSquare(error.variable(), residuals)))
                        : error)
                .toList();
    }

    private static boolean settled(CalibrationProblem before, CalibrationProblem after) {
        return IntStream.range(0, before.errors().size())
                .allMatch(i -> Math.abs(after.errors().get(i).size()
                                        / before.errors().get(i).size()
                                - 1.0)
                        < SIZE_TOLERANCE);
    }

    private List<Profile> profiles(Weighted weighted, boolean known) {
        FitOptions refit = thorough(weighted.problem)
                .withJacobian(step(weighted.problem), Differences.FORWARD)
                .withTolerance(QUICK_TOLERANCE)
                .withMaximumEvaluations(QUICK_EVALUATIONS);
        ProfileLikelihood likelihood = new ProfileLikelihood(
                weighted.problem,
                weighted.result,
                refit,
                new ProfileLikelihood.Options(CONFIDENCE, PROFILE_POINTS, known));
        List<Integer> indices =
                IntStream.range(0, weighted.problem.parameters().size()).boxed().toList();
        return Parallel.map(indices, settings.threads(), likelihood::of);
    }

    /** Fits quickly from given points; {@link #weigh} goes on from there. */
    static FitResult refit(CalibrationProblem problem, List<double[]> starts) {
        FitOptions quick = new FitOptions(1, 1, QUICK_EVALUATIONS, step(problem), Differences.FORWARD, QUICK_TOLERANCE);
        return LeastSquaresFit.fitFrom(starts, problem, problem.fitParameters(), quick, quick, 1);
    }
}
