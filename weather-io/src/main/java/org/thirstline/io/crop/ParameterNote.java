package org.thirstline.io.crop;

import org.jspecify.annotations.Nullable;

/**
 * What is known about one crop parameter. Immutable and thread-safe.
 *
 * @param low lower end of the published range, NaN if there is none
 * @param high upper end of the published range, NaN if there is none
 * @param noRange why there is no published range; null if there is one
 * @param source where the number comes from
 * @param basis what the number is on
 * @param status how it is known
 */
public record ParameterNote(
        double low, double high, @Nullable String noRange, String source, String basis, Evidence status) {

    /** Returns whether a range has been published. */
    public boolean hasRange() {
        return !Double.isNaN(low) && !Double.isNaN(high);
    }
}
