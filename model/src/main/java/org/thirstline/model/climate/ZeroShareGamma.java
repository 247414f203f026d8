package org.thirstline.model.climate;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Rain totals that may be zero: H(x) = q + (1 - q) G(x) (Edwards and McKee 1997). Immutable and thread-safe.
 *
 * @param zeroShare q, share of totals that are zero [-]
 * @param positive G, distribution of the others
 */
record ZeroShareGamma(double zeroShare, GammaFit positive) {

    /** Relative spread of the totals below which they count as the same, so that a fit has no meaning. */
    private static final double LEAST_SPREAD = 1.0e-4;

    /** Fits totals; null if too few are positive or if they do not differ. */
    static @Nullable ZeroShareGamma fit(double[] totals, GammaFit.Method method) {
        double[] positive = Arrays.stream(totals).filter(total -> total > 0.0).toArray();
        if (positive.length < StandardizedPrecipitation.MINIMUM_POSITIVE_TOTALS) {
            return null;
        }
        double smallest = Arrays.stream(positive).min().orElseThrow();
        double largest = Arrays.stream(positive).max().orElseThrow();
        if (largest - smallest < LEAST_SPREAD * largest) {
            return null;
        }
        double zeroShare = (double) (totals.length - positive.length) / totals.length;
        return new ZeroShareGamma(zeroShare, GammaFit.of(positive, method));
    }

    double cumulativeProbability(double total) {
        return zeroShare + (1.0 - zeroShare) * positive.cumulativeProbability(total);
    }
}
