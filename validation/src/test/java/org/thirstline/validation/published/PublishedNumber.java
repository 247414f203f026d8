package org.thirstline.validation.published;

/**
 * One number of a publication.
 *
 * @param id identifier inside its file
 * @param what what it is, in words; may be empty
 * @param quantity key of the calculation
 * @param inputs what it is calculated from
 * @param expected the published text of the number
 * @param tolerance allowed difference, or {@value #SKIP}
 * @param reason why this tolerance, or why skipped
 * @param source publication with table, example or equation
 * @param seen read, read in part, or from memory
 */
record PublishedNumber(
        String id,
        String what,
        String quantity,
        Inputs inputs,
        String expected,
        String tolerance,
        String reason,
        String source,
        String seen) {

    private static final String SKIP = "skip";

    /** A difference of exactly half a printed unit is still a match. */
    private static final double REPRESENTATION = 1.0e-9;

    boolean isSkipped() {
        return tolerance.equals(SKIP);
    }

    /** What it is, or else the key of the calculation as words. */
    String words() {
        return what.isEmpty() ? quantity.replace('_', ' ') : what;
    }

    boolean accepts(double computed, double allowed) {
        return Math.abs(computed - Double.parseDouble(expected)) <= allowed + REPRESENTATION;
    }

    String name() {
        return id + (what.isEmpty() ? " " + quantity : " " + what) + (isSkipped() ? "" : " = " + expected);
    }

    void check(double computed) {
        double difference = Math.abs(computed - Double.parseDouble(expected));
        if (!accepts(computed, Double.parseDouble(tolerance))) {
            throw new AssertionError(
                    "%s: computed %s, published %s, difference %.3g, allowed %s (%s). Source: %s (%s). Inputs: %s"
                            .formatted(
                                    name(), computed, expected, difference, tolerance, reason, source, seen, inputs));
        }
    }
}
