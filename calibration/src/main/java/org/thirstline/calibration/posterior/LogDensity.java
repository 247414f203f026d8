package org.thirstline.calibration.posterior;

/** A log density of parameters, up to a constant. Called from several threads at once; calls must not disturb one another. */
@FunctionalInterface
public interface LogDensity {

    /**
     * Returns the natural log of the density at a point; minus infinity or NaN where the point is impossible.
     *
     * @param parameters the point; not modified
     */
    double at(double[] parameters);
}
