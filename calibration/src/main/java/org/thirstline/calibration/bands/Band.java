package org.thirstline.calibration.bands;

import java.util.Arrays;
import org.thirstline.calibration.posterior.SampleQuantiles;

/**
 * How a value spreads over draws. Immutable and thread-safe.
 *
 * @param draws draws that have the value; NaN below if none has
 * @param low quantile at 5 %
 * @param lowerQuarter quantile at 25 %
 * @param median quantile at 50 %
 * @param upperQuarter quantile at 75 %
 * @param high quantile at 95 %
 */
public record Band(int draws, double low, double lowerQuarter, double median, double upperQuarter, double high) {

    /** Probabilities of the quantiles, in order. */
    static final double[] PROBABILITIES = {0.05, 0.25, 0.50, 0.75, 0.95};

    private static final Band NONE = new Band(0, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    /**
     * Returns the band of a sample, its quantiles interpolated between order statistics (type 7 of Hyndman and Fan 1996).
     *
     * @param values the sample; NaN for draws that do not have the value; not modified
     */
    public static Band of(double[] values) {
        double[] known =
                Arrays.stream(values).filter(value -> !Double.isNaN(value)).toArray();
        if (known.length == 0) {
            return NONE;
        }
        SampleQuantiles quantiles = SampleQuantiles.of(known);
        return of(known.length, Arrays.stream(PROBABILITIES).map(quantiles::at).toArray());
    }

    static Band of(int draws, double[] quantiles) {
        return new Band(draws, quantiles[0], quantiles[1], quantiles[2], quantiles[3], quantiles[4]);
    }

    /** Returns whether any draw has the value. */
    public boolean isKnown() {
        return draws > 0;
    }

    /** Returns a copy of the quantiles, from 5 to 95 %. */
    public double[] quantiles() {
        return new double[] {low, lowerQuarter, median, upperQuarter, high};
    }
}
