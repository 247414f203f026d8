package org.thirstline.io.crop;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** How a number is known. */
public enum Evidence {
    /** Seen in the source. */
    READ("seen in the source"),
    /** Arithmetic on a source that was read. */
    DERIVED("arithmetic on a source that was read"),
    /** Quoted without the source at hand. */
    MEMORY("quoted from memory, source not seen"),
    /** No source states it. */
    JUDGEMENT("judgement, no source states it"),
    /** Estimated from plot data. */
    FITTED("fitted to plot data");

    private final String words;

    Evidence(String words) {
        this.words = words;
    }

    /** Returns what the status means. */
    public String words() {
        return words;
    }

    /** Returns the word in crop files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    static List<String> keys() {
        return Arrays.stream(values()).map(Evidence::key).toList();
    }
}
