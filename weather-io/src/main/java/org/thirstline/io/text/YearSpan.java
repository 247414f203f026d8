package org.thirstline.io.text;

/**
 * Years from first to last, both included. Immutable and thread-safe.
 *
 * @param first first year
 * @param last last year, not before the first
 */
public record YearSpan(int first, int last) {

    /** Refuses spans that end before they start. */
    public YearSpan {
        if (last < first) {
            throw new IllegalArgumentException(first + " is after " + last);
        }
    }

    /** Returns whether a year lies in the span. */
    public boolean contains(int year) {
        return first <= year && year <= last;
    }
}
