package org.thirstline.validation.catalogue;

/**
 * One published number beside ours. Numbers are NaN where there are none.
 *
 * @param id identifier inside its family
 * @param what what it is
 * @param expected the published number as text
 * @param low lowest accepted value
 * @param high highest accepted value
 * @param computed ours
 * @param reason why these limits, or what explains a miss
 * @param source publication with table, example or equation
 * @param seen whether the number was read or comes from memory
 * @param verdict how it came out
 */
public record CheckRow(
        String id,
        String what,
        String expected,
        double low,
        double high,
        double computed,
        String reason,
        String source,
        String seen,
        Verdict verdict) {

    /** Returns the middle of the accepted values. */
    public double middle() {
        return 0.5 * (low + high);
    }

    /** Returns computed minus the middle of what is accepted. */
    public double difference() {
        return computed - middle();
    }

    /** Returns the difference in half-widths of what is accepted: within -1 to 1 passes. */
    public double relativeDifference() {
        return difference() / (0.5 * (high - low));
    }

    /** Returns whether this row can be drawn. */
    public boolean isNumber() {
        return Double.isFinite(computed) && Double.isFinite(low) && Double.isFinite(high);
    }
}
