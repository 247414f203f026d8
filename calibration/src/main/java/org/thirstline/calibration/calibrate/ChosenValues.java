package org.thirstline.calibration.calibrate;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.thirstline.calibration.posterior.PosteriorDraws;

/**
 * The one set of values that stands for a calibration where only one can: in the crop file, and in what is simulated beside the data.
 * Immutable and thread-safe.
 *
 * @param values a value for each fitted parameter
 * @param basis where they come from
 */
public record ChosenValues(List<Double> values, Basis basis) {

    /** Where values come from. */
    public enum Basis {
        /** The best fit. */
        LEAST_SQUARES("fitted by least squares"),
        /** The median of each parameter's posterior. */
        MEDIANS("medians of the posterior"),
        /** The most probable of the draws. */
        MOST_PROBABLE("the most probable draw of the posterior");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        /** Returns the basis in words. */
        public String words() {
            return words;
        }
    }

    /** Copies the list. */
    public ChosenValues {
        values = List.copyOf(values);
    }

    /**
     * Chooses: least squares without a posterior. Else the medians, so that bands of the draws lie around them; they hardly move with the seed
     * once chains have settled. But medians of single parameters need not fit together where the posterior is bent. If together they are
     * less probable than half of the draws, the most probable draw is taken.
     *
     * @param leastSquares fitted values; not modified
     * @param draws the posterior, if it was sampled
     * @param posteriorDensity natural log of the density that was sampled, up to the same constant
     */
    public static ChosenValues of(
            double[] leastSquares, Optional<PosteriorDraws> draws, ToDoubleFunction<double[]> posteriorDensity) {
        if (draws.isEmpty()) {
            return of(leastSquares, Basis.LEAST_SQUARES);
        }
        PosteriorDraws posterior = draws.get();
        double[] medians = IntStream.range(0, leastSquares.length)
                .mapToDouble(i -> posterior.quantile(i, 0.5))
                .toArray();
        double together = posteriorDensity.applyAsDouble(medians);
        return together >= posterior.medianLogDensity()
                ? of(medians, Basis.MEDIANS)
                : of(posterior.mostProbable(), Basis.MOST_PROBABLE);
    }

    private static ChosenValues of(double[] values, Basis basis) {
        return new ChosenValues(Arrays.stream(values).boxed().toList(), basis);
    }

    /** Returns a copy as an array. */
    public double[] point() {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
