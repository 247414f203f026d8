package org.thirstline.calibration.posterior;

import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.model.error.Check;

/** What is sampled: parameters with priors, and the likelihood of the data. Immutable; as thread-safe as the likelihood. */
public final class SamplingProblem {

    private final List<SampledParameter> parameters;
    private final Prior[] priors;
    private final LogDensity logLikelihood;
    private final String data;

    /**
     * Sets up a problem.
     *
     * @param parameters at least one
     * @param logLikelihood log density of the data given the parameters, up to a constant
     * @param data one line that changes when the data or the model change, such as a checksum: a run is only continued on the same
     */
    public SamplingProblem(List<SampledParameter> parameters, LogDensity logLikelihood, String data) {
        Check.range("number of sampled parameters", parameters.size(), "", 1.0, 1000.0);
        this.parameters = List.copyOf(parameters);
        priors = parameters.stream().map(SampledParameter::prior).toArray(Prior[]::new);
        this.logLikelihood = logLikelihood;
        this.data = data.replaceAll("\\R", " ");
    }

    /** Returns the parameters. */
    public List<SampledParameter> parameters() {
        return parameters;
    }

    /** Returns the parameters' names. */
    public List<String> names() {
        return parameters.stream().map(SampledParameter::name).toList();
    }

    /** Returns the number of parameters. */
    public int dimension() {
        return priors.length;
    }

    /**
     * Returns the log posterior density up to a constant; minus infinity outside the bounds, where the likelihood is not asked.
     *
     * @param point parameters; not modified
     */
    public double logPosterior(double[] point) {
        double density = logPrior(point);
        if (density == Double.NEGATIVE_INFINITY) {
            return density;
        }
        density += logLikelihood.at(point);
        return Double.isNaN(density) ? Double.NEGATIVE_INFINITY : density;
    }

    double logPrior(double[] point) {
        double density = 0.0;
        for (int i = 0; i < priors.length; i++) {
            density += priors[i].logDensity(point[i]);
        }
        return density;
    }

    double lower(int index) {
        return priors[index].lower();
    }

    double upper(int index) {
        return priors[index].upper();
    }

    double priorQuantile(int index, double probability) {
        return priors[index].quantile(probability);
    }

    /** Returns one line that differs between problems that differ. */
    String fingerprint() {
        return parameters.stream().map(p -> p.name() + ": " + p.prior()).collect(Collectors.joining("; "))
                + "; data: "
                + data;
    }
}
