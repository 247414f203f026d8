package org.thirstline.calibration.problem;

import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.ErrorKind;

/**
 * How far off the values of one variable are taken to be: {@code SD} compares values, {@code CV} their logarithms, {@code STATED} values
 * in units of their stated errors. Immutable and thread-safe.
 *
 * @param variable the variable
 * @param kind what is compared
 * @param size standard deviation of what is compared
 * @param estimated whether the size is estimated from what is left over, instead of known
 */
public record ErrorModel(PlotVariable variable, ErrorKind kind, double size, boolean estimated) {

    /** Returns this model with another size. */
    public ErrorModel withSize(double other) {
        return new ErrorModel(variable, kind, other, estimated);
    }

    /**
     * Returns the difference between measured and simulated before it is divided by {@link #size}; not finite where there is none.
     *
     * @param observation measured
     * @param simulated simulated value
     */
    public double difference(Observation observation, double simulated) {
        return switch (kind) {
            case SD -> observation.value() - simulated;
            case CV -> simulated > 0.0 ? Math.log(observation.value() / simulated) : Double.NaN;
            case STATED -> (observation.value() - simulated) / observation.statedError();
        };
    }

    /**
     * Returns what lies a number of standard deviations away from a simulated value.
     *
     * @param observation measured, for its stated error
     * @param simulated simulated value
     * @param deviations number of standard deviations, negative below
     */
    public double away(Observation observation, double simulated, double deviations) {
        return switch (kind) {
            case SD -> simulated + deviations * size;
            case CV -> simulated * Math.exp(deviations * size);
            case STATED -> simulated + deviations * size * observation.statedError();
        };
    }
}
