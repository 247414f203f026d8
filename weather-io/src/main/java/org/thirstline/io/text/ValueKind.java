package org.thirstline.io.text;

import java.util.List;
import java.util.function.Supplier;

/** What may stand behind a key. */
public sealed interface ValueKind {

    /** Any text; a number is taken as text. */
    record Text() implements ValueKind {}

    /** True or false. */
    record Flag() implements ValueKind {}

    /**
     * One of a few words.
     *
     * @param words the words
     */
    record Choice(List<String> words) implements ValueKind {}

    /**
     * A number without a unit.
     *
     * @param lowest smallest allowed
     * @param highest largest allowed
     */
    record Plain(double lowest, double highest) implements ValueKind {}

    /**
     * A value with a unit.
     *
     * @param dimension what it measures
     * @param lowest smallest allowed, in the unit of the dimension
     * @param highest largest allowed, in the unit of the dimension
     */
    record Measure(Dimension dimension, double lowest, double highest) implements ValueKind {}

    /** Two lengths, {@code 75 cm x 70 cm}. */
    record Spacing() implements ValueKind {}

    /** A date, {@code 2009-04-20}. */
    record Date() implements ValueKind {}

    /** A day of any year, {@code 03-01}. */
    record DayOfYear() implements ValueKind {}

    /** Two days of any year, {@code 02-01 to 04-15}. */
    record DayWindow() implements ValueKind {}

    /** A span of years, {@code 1991-2020}. */
    record Years() implements ValueKind {}

    /** A list of years. */
    record YearList() implements ValueKind {}

    /** A list of texts. */
    record TextList() implements ValueKind {}

    /**
     * A section.
     *
     * @param keys its keys; supplied late, so that sections can be declared in reading order
     */
    record Nested(Supplier<SectionKeys> keys) implements ValueKind {}

    /**
     * A list of sections.
     *
     * @param keys the keys of each
     */
    record NestedList(Supplier<SectionKeys> keys) implements ValueKind {}
}
