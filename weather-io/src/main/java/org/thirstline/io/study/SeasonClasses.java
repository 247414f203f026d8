package org.thirstline.io.study;

import java.util.List;

/**
 * Growth years the user calls dry or wet; empty lists leave it to the rain. Immutable and thread-safe.
 *
 * @param dry dry years
 * @param wet wet years
 */
public record SeasonClasses(List<Integer> dry, List<Integer> wet) {

    /** Copies the lists. */
    public SeasonClasses {
        dry = List.copyOf(dry);
        wet = List.copyOf(wet);
    }

    /** Returns whether the study names any year. */
    public boolean isGiven() {
        return !dry.isEmpty() || !wet.isEmpty();
    }
}
