package org.thirstline.calibration.bands;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.thirstline.io.crop.CropCalibration;
import org.thirstline.io.plots.PlotVariable;

/**
 * What a calibration left over between simulated and measured yields of single plots: years that the engine gets wrong, differences between
 * plots, errors of weighing. Immutable and thread-safe.
 *
 * @param relative whether it is a share of the yield (its size then is on logarithms) rather than in Mg/ha
 * @param size its standard deviation
 */
public record PlotError(boolean relative, double size) {

    /** Halvings of the search for a quantile: of 200 Mg/ha these leave less than a thousandth of a kilogram per hectare. */
    private static final int HALVINGS = 28;

    private static final double TAILS = 8.0;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    /** Returns the error that a calibration has for yields; absent where there is none that holds for a plot not yet measured. */
    public static Optional<PlotError> of(CropCalibration calibration) {
        return calibration.errors().stream()
                .filter(error -> error.variable().equals(PlotVariable.YIELD.key()))
                .filter(error -> error.size() > 0.0 && !error.kind().equals("stated"))
                .map(error -> new PlotError(error.kind().equals("cv"), error.size()))
                .findFirst();
    }

    /**
     * Returns where the yield of a single plot would be measured: quantiles of the mixture of normal (or lognormal) distributions about the
     * simulated yields. They are worked out, not drawn. A yield is never less than nothing.
     *
     * @param simulated simulated yield under each draw [Mg/ha], NaN where there is none; not modified
     */
    public Band measured(double[] simulated) {
        double[] known =
                Arrays.stream(simulated).filter(value -> !Double.isNaN(value)).toArray();
        if (known.length == 0) {
            return Band.of(known);
        }
        double most = Arrays.stream(known).max().orElseThrow();
        double top = relative ? most * Math.exp(TAILS * size) : most + TAILS * size;
        double[] quantiles = Arrays.stream(Band.PROBABILITIES)
                .map(probability -> quantile(known, probability, top))
                .toArray();
        return Band.of(known.length, quantiles);
    }

    private double quantile(double[] simulated, double probability, double top) {
        double low = 0.0;
        double high = top;
        if (share(simulated, 0.0) >= probability) {
            return 0.0;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (low + high);
            if (share(simulated, middle) < probability) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /** Returns the probability of measuring at most so much. */
    private double share(double[] simulated, double measured) {
        double sum = 0.0;
        for (double value : simulated) {
            double off = relative ? Math.log(measured / value) : measured - value;
            sum += Double.isNaN(off) ? 1.0 : NORMAL.cumulativeProbability(off / size);
        }
        return sum / simulated.length;
    }
}
