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

    /** Fits totals; null if too few are positive or if they do not differ. */
    static @Nullable ZeroShareGamma fit(double[] totals, GammaFit.Method method) {
        double[] positive = Arrays.stream(totals).filter(total -> total > 0.0).toArray();
        if (positive.length < StandardizedPrecipitation.MINIMUM_POSITIVE_TOTALS) {
            return null;
        }
        if (Arrays.stream(positive).min().orElseThrow()
                == Arrays.stream(positive).max().orElseThrow()) {
            return null;
        }
        double zeroShare = (double) (totals.length - positive.length) / totals.length;
        return new ZeroShareGamma(zeroShare, GammaFit.of(positive, method));
    }

    double cumulativeProbability(double total) {
        return zeroShare + (1.0 - zeroShare) * positive.cumulativeProbability(total);
    }
}
