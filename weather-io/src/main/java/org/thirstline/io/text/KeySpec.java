package org.thirstline.io.text;

import java.util.List;

/**
 * One key of a section.
 *
 * @param name the plain key
 * @param kind what stands behind it
 * @param required whether a section without it is refused
 * @param meaning what it means, for messages, schema and documentation
 * @param example a value
 */
public record KeySpec(String name, ValueKind kind, boolean required, String meaning, String example) {

    /** Returns the ways the key can be spelt: as it is, and with the unit at its end where it has one. */
    public List<String> spellings() {
        return kind instanceof ValueKind.Measure measure ? List.of(name, suffixed(measure)) : List.of(name);
    }

    private String suffixed(ValueKind.Measure measure) {
        return name + "_" + measure.dimension().suffix();
    }

    /** Returns the key and its example value as one would write them. */
    public String exampleLine() {
        return name + ": " + example;
    }
}
