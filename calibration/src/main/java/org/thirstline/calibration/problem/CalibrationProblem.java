package org.thirstline.calibration.problem;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.LongAdder;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.calibration.fit.ResidualModel;
import org.thirstline.calibration.posterior.SampledParameter;
import org.thirstline.calibration.posterior.SamplingProblem;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.tables.Sha256;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.engine.WatchedRun;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;

/**
 * Measured values, the stands that simulate them, the parameters that may change, and how far off the values may be. Everything that does
 * not depend on the parameters is prepared once; a point costs one run of each distinct stand, up to its last observed year. Immutable
 * and thread-safe: any number of points can be asked for at once.
 */
public final class CalibrationProblem implements ResidualModel {

    private final List<StudySource> sources;
    private final CropParameters crop;
    private final List<CalibratedParameter> parameters;
    private final List<Observation> observations;
    private final Map<PlotVariable, ErrorModel> errors;
    private final List<SimulatedStand> stands;
    private final ErrorModel[] errorOf;
    private final LongAdder evaluations;

    /**
     * Sets up a problem.
     *
     * @param sources the sites with their weather
     * @param parameters what may change
     * @param observations what was measured, each at a site, in a zone and in a year that its source has
     * @param errors an error model for every variable among the observations
     */
    public CalibrationProblem(
            List<StudySource> sources,
            List<CalibratedParameter> parameters,
            List<Observation> observations,
            List<ErrorModel> errors) {
        this(sources, parameters, observations, errors, standsOf(sources, observations), new LongAdder());
    }

    private CalibrationProblem(
            List<StudySource> sources,
            List<CalibratedParameter> parameters,
            List<Observation> observations,
            List<ErrorModel> errors,
            List<SimulatedStand> stands,
            LongAdder evaluations) {
        if (observations.isEmpty()) {
            throw new InputException(CalibrationError.NO_OBSERVATIONS);
        }
        this.sources = List.copyOf(sources);
        this.parameters = List.copyOf(parameters);
        this.observations = List.copyOf(observations);
        this.stands = stands;
        this.evaluations = evaluations;
        crop = sources.get(0).study().crop().parameters();
        Map<PlotVariable, ErrorModel> byVariable = new LinkedHashMap<>();
        errors.forEach(error -> byVariable.put(error.variable(), error));
        this.errors = byVariable;
        errorOf = observations.stream()
                .map(observation -> errorOf(observation.variable()))
                .toArray(ErrorModel[]::new);
    }

    private static List<SimulatedStand> standsOf(List<StudySource> sources, List<Observation> observations) {
        Map<Observation.StandKey, List<Integer>> places = new LinkedHashMap<>();
        for (int i = 0; i < observations.size(); i++) {
            places.computeIfAbsent(observations.get(i).stand(), key -> new ArrayList<>())
                    .add(i);
        }
        List<SimulatedStand> stands = new ArrayList<>();
        places.forEach((key, indices) -> {
            StudySource source = sources.stream()
                    .filter(candidate -> candidate.site().equals(key.site()))
                    .findFirst()
                    .orElseThrow(() -> new InputException(CalibrationError.SITE_WITHOUT_WEATHER, key.site()));
            stands.add(new SimulatedStand(
                    source,
                    key,
                    indices.stream().map(observations::get).toList(),
                    indices.stream().mapToInt(Integer::intValue).toArray()));
        });
        return List.copyOf(stands);
    }

    private ErrorModel errorOf(PlotVariable variable) {
        return Optional.ofNullable(errors.get(variable)).orElseThrow();
    }

    /** Returns the sites. */
    public List<StudySource> sources() {
        return sources;
    }

    /** Returns the parameters that may change. */
    public List<CalibratedParameter> parameters() {
        return parameters;
    }

    /** Returns what was measured. */
    public List<Observation> observations() {
        return observations;
    }

    /** Returns the error models, one for each variable. */
    public List<ErrorModel> errors() {
        return List.copyOf(errors.values());
    }

    /**
     * Returns the error model of a variable.
     *
     * @param variable one that was measured
     */
    public ErrorModel error(PlotVariable variable) {
        return errorOf(variable);
    }

    /** Returns the number of distinct stands, each of which is run once for a point. */
    public int distinctStands() {
        return stands.size();
    }

    /** Returns the crop before the calibration. */
    public CropParameters crop() {
        return crop;
    }

    /** Returns a copy of the point the calibration starts from. */
    public double[] start() {
        return parameters.stream().mapToDouble(CalibratedParameter::start).toArray();
    }

    /** Returns the parameters as least squares take them. */
    public List<FitParameter> fitParameters() {
        return parameters.stream().map(CalibratedParameter::forFit).toList();
    }

    /** Returns the parameters as the sampler takes them. */
    public List<SampledParameter> sampledParameters() {
        return parameters.stream().map(CalibratedParameter::forSampling).toList();
    }

    /** Returns whether the size of any error is estimated. */
    public boolean estimatesErrors() {
        return errors.values().stream().anyMatch(ErrorModel::estimated);
    }

    /** Returns how many points have been simulated, of this problem and of those made from it. */
    public long evaluations() {
        return evaluations.sum();
    }

    /**
     * Simulates what was measured.
     *
     * @param point a value for every parameter; not modified
     * @return simulated values in the order of the observations; all NaN where the engine refuses the point, NaN where a stand has no such
     *     value
     */
    public double[] simulate(double[] point) {
        evaluations.increment();
        double[] simulated = new double[observations.size()];
        try {
            CropParameters changed = SimulatedStand.crop(crop, parameters, point);
            for (SimulatedStand stand : stands) {
                stand.fill(stand.run(parameters, point, changed), simulated);
            }
        } catch (InputException refused) {
            Arrays.fill(simulated, Double.NaN);
        }
        return simulated;
    }

    /**
     * Returns the season of each observation.
     *
     * @param point a value for every parameter; not modified
     * @return seasons in the order of the observations, null where the stand has none in that year
     */
    public List<@Nullable SeasonRecord> seasons(double[] point) {
        CropParameters changed = SimulatedStand.crop(crop, parameters, point);
        Map<Observation.StandKey, WatchedRun> runs = new LinkedHashMap<>();
        stands.forEach(stand -> runs.put(stand.key(), stand.run(parameters, point, changed)));
        List<@Nullable SeasonRecord> seasons = new ArrayList<>();
        for (Observation observation : observations) {
            WatchedRun run = Optional.ofNullable(runs.get(observation.stand())).orElseThrow();
            seasons.add(SimulatedStand.season(run, observation.growthYear()));
        }
        return seasons;
    }

    /** Returns measured minus simulated in units of the errors, see {@link ErrorModel}; not finite where the engine gives no value. */
    @Override
    public double[] residuals(double[] point) {
        return standardised(simulate(point));
    }

    /**
     * Returns what simulated values leave over, in units of the errors.
     *
     * @param simulated in the order of the observations
     */
    public double[] standardised(double[] simulated) {
        double[] residuals = new double[simulated.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = errorOf[i].difference(observations.get(i), simulated[i]) / errorOf[i].size();
        }
        return residuals;
    }

    /**
     * Returns the log likelihood of a point up to a constant: normal errors, independent; the size of errors that are estimated is
     * integrated out with a prior that is flat in its logarithm. NaN where the engine gives no value.
     *
     * @param point a value for every parameter; not modified
     */
    public double logLikelihood(double[] point) {
        double[] residuals = residuals(point);
        double sum = 0.0;
        for (ErrorModel error : errors.values()) {
            double square = 0.0;
            int count = 0;
            for (int i = 0; i < residuals.length; i++) {
                if (errorOf[i] == error) {
                    square += residuals[i] * residuals[i];
                    count++;
                }
            }
            if (count > 0) {
                sum += error.estimated() ? -0.5 * count * Math.log(square) : -0.5 * square;
            }
        }
        return sum;
    }

    /**
     * Returns the root mean square of what a point leaves over, in what the error model compares.
     *
     * @param variable one that was measured
     * @param residuals in units of the errors, in the order of the observations
     */
    public double rootMeanSquare(PlotVariable variable, double[] residuals) {
        double square = 0.0;
        int count = 0;
        for (int i = 0; i < residuals.length; i++) {
            if (observations.get(i).variable() == variable) {
                square += residuals[i] * residuals[i];
                count++;
            }
        }
        return errorOf(variable).size() * Math.sqrt(square / count);
    }

    /** Returns this problem as the sampler takes it. */
    public SamplingProblem sampling() {
        return new SamplingProblem(sampledParameters(), this::logLikelihood, fingerprint());
    }

    /** Returns one line that differs between problems that differ in data, weather, studies, crop or errors. */
    public String fingerprint() {
        StringBuilder text = new StringBuilder();
        observations.forEach(observation -> text.append(observation).append('\n'));
        errors.values().forEach(error -> text.append(error.estimated() ? error.withSize(1.0) : error)
                .append('\n'));
        for (StudySource source : sources) {
            source.study().inputFiles().forEach(file -> text.append(Sha256.of(file))
                    .append('\n'));
        }
        return "sha256 " + Sha256.of(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    /** Returns this problem with other error models. */
    public CalibrationProblem withErrors(List<ErrorModel> others) {
        return new CalibrationProblem(sources, parameters, observations, others, stands, evaluations);
    }

    /** Returns this problem with other parameters; those that are left out keep their starting values. */
    public CalibrationProblem withParameters(List<CalibratedParameter> others) {
        return new CalibrationProblem(sources, others, observations, errors(), stands, evaluations);
    }

    /**
     * Returns this problem with only some of its observations.
     *
     * @param indices which to keep
     */
    public CalibrationProblem withObservations(List<Integer> indices) {
        List<Observation> kept = indices.stream().map(observations::get).toList();
        List<ErrorModel> needed = errors.values().stream()
                .filter(error -> kept.stream().anyMatch(observation -> observation.variable() == error.variable()))
                .toList();
        return new CalibrationProblem(sources, parameters, kept, needed, standsOf(sources, kept), evaluations);
    }

    /**
     * Returns this problem with other measured values of the same plots, such as synthetic ones.
     *
     * @param values a value for every observation
     */
    public CalibrationProblem withValues(double[] values) {
        List<Observation> changed = IntStream.range(0, values.length)
                .mapToObj(i -> {
                    Observation o = observations.get(i);
                    return new Observation(
                            o.site(),
                            o.zone(),
                            o.plot(),
                            o.plantingYear(),
                            o.growthYear(),
                            o.variable(),
                            o.date(),
                            o.depthM(),
                            values[i],
                            o.statedError(),
                            o.file(),
                            o.line());
                })
                .toList();
        return new CalibrationProblem(sources, parameters, changed, errors(), stands, evaluations);
    }
}
