package org.thirstline.charts;

import java.util.Comparator;
import java.util.List;
import org.thirstline.calibration.sensitivity.SobolIndex;

/**
 * How much of the spread of one output each parameter answers for. Immutable and thread-safe.
 *
 * @param output the output
 * @param where zone or site; may be empty
 * @param screened how many parameters there were before those that matter little were left out
 * @param shares of the parameters, in any order
 */
public record SobolView(Quantity output, String where, int screened, List<Share> shares) {

    /** Sorts the shares by total. */
    public SobolView {
        shares = shares.stream()
                .sorted(Comparator.comparingDouble(share -> Double.isFinite(share.total()) ? -share.total() : 1.0))
                .toList();
    }

    /**
     * The share of one parameter, of 1.
     *
     * @param name the parameter in words
     * @param first share due to it alone; NaN if the output does not vary
     * @param firstLow lower end of its interval
     * @param firstHigh upper end
     * @param total share due to it alone and together with others
     * @param totalLow lower end of its interval
     * @param totalHigh upper end
     */
    public record Share(
            String name,
            double first,
            double firstLow,
            double firstHigh,
            double total,
            double totalLow,
            double totalHigh) {

        /** Returns whether the parameter decides beyond doubt. */
        public boolean decides() {
            return totalLow > SobolIndex.DECIDES;
        }
    }

    /** Returns the parameters that decide, the strongest first. */
    public List<Share> deciding() {
        return shares.stream().filter(Share::decides).toList();
    }

    /** Returns the share that the deciding parameters make up each alone, together, at most 1. */
    public double decidedAlone() {
        return Math.min(1.0, deciding().stream().mapToDouble(Share::first).sum());
    }

    boolean varies() {
        return shares.stream().anyMatch(share -> Double.isFinite(share.total()));
    }
}
