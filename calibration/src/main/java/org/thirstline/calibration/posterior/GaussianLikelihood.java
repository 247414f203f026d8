package org.thirstline.calibration.posterior;

import java.util.Arrays;
import org.thirstline.calibration.fit.ResidualModel;

/** Log likelihoods of residuals that scatter normally and independently. */
public final class GaussianLikelihood {

    private GaussianLikelihood() {}

    /**
     * Returns the likelihood of residuals already divided by errors that are known.
     *
     * @param model residuals in units of their error
     */
    public static LogDensity ofKnownErrors(ResidualModel model) {
        return parameters -> -0.5 * sumOfSquares(model.residuals(parameters));
    }

    /**
     * Returns the likelihood of residuals whose errors are known but for one common factor, which is integrated out with a prior
     * that is flat in its logarithm.
     *
     * @param model residuals in units of the stated error
     */
    public static LogDensity ofUnknownScale(ResidualModel model) {
        return parameters -> {
            double[] residuals = model.residuals(parameters);
            return -0.5 * residuals.length * Math.log(sumOfSquares(residuals));
        };
    }

    /**
     * Returns the likelihood of residuals whose errors are known but for one common factor, which is sampled as the last parameter.
     *
     * @param model takes all parameters but the last; residuals in units of the stated error
     */
    public static LogDensity ofSampledScale(ResidualModel model) {
        return parameters -> {
            int last = parameters.length - 1;
            double scale = parameters[last];
            double[] residuals = model.residuals(Arrays.copyOf(parameters, last));
            return -residuals.length * Math.log(scale) - 0.5 * sumOfSquares(residuals) / (scale * scale);
        };
    }

    private static double sumOfSquares(double[] residuals) {
        double sum = 0.0;
        for (double residual : residuals) {
            sum += residual * residual;
        }
        return sum;
    }
}
