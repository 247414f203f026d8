package org.thirstline.calibration.fit;

/** What is fitted: residuals, each already divided by its error where errors differ. Calls must not disturb one another. */
@FunctionalInterface
public interface ResidualModel {

    /**
     * Returns the residuals at a point; a point that the model cannot serve gives values that are not finite.
     *
     * @param parameters the point; not modified
     * @return residuals, always as many
     */
    double[] residuals(double[] parameters);
}
