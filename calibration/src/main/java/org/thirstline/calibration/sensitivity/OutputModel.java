package org.thirstline.calibration.sensitivity;

/** A model with one or several outputs. Called from several threads at once; calls must not disturb one another. */
@FunctionalInterface
public interface OutputModel {

    /**
     * Returns the outputs at a point.
     *
     * @param inputs the point; not modified
     * @return finite outputs, always as many
     */
    double[] outputs(double[] inputs);
}
