package org.thirstline.calibration.skill;

import org.thirstline.calibration.response.Interval;
import org.thirstline.model.error.Check;

/**
 * How many observations their intervals caught. Immutable and thread-safe.
 *
 * @param count number of observations
 * @param inside how many lie inside, ends included
 * @param stated share that the intervals promise, such as 0.9
 */
public record IntervalCoverage(int count, int inside, double stated) {

    private static final double NORMAL_QUANTILE_975 = 1.959963984540054;

    /** Refuses counts that cannot be. */
    public IntervalCoverage {
        Check.range("number of observations", count, "", 1.0, Integer.MAX_VALUE);
        Check.range("observations inside", inside, "", 0.0, count);
        Check.range("stated share", stated, "", 0.0, 1.0);
    }

    /**
     * Counts.
     *
     * @param observed values; not modified
     * @param lower lower ends of their intervals; not modified
     * @param upper upper ends; not modified
     * @param stated share that the intervals promise
     */
    public static IntervalCoverage of(double[] observed, double[] lower, double[] upper, double stated) {
        Pairs.requireSameLength("observed", observed, "lower ends", lower);
        Pairs.requireSameLength("observed", observed, "upper ends", upper);
        int inside = 0;
        for (int i = 0; i < observed.length; i++) {
            inside += new Interval(lower[i], upper[i]).contains(observed[i]) ? 1 : 0;
        }
        return new IntervalCoverage(observed.length, inside, stated);
    }

    /** Returns the share caught. */
    public double share() {
        return (double) inside / count;
    }

    /**
     * Returns where the long-run share lies, with 95 % confidence (Wilson's score interval), if observations are independent; those of
     * one site or year are not, and then it is wider.
     */
    public Interval shareInterval() {
        double z = NORMAL_QUANTILE_975;
        double spread = z * Math.sqrt(share() * (1.0 - share()) / count + z * z / (4.0 * count * count));
        double centre = share() + z * z / (2.0 * count);
        double divisor = 1.0 + z * z / count;
        return new Interval(Math.max(0.0, (centre - spread) / divisor), Math.min(1.0, (centre + spread) / divisor));
    }

    /** Returns whether the stated share lies within {@link #shareInterval}. */
    public boolean asStated() {
        return shareInterval().contains(stated);
    }
}
