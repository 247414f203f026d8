package org.thirstline.validation.catalogue;

/** How a check came out. */
public enum Verdict {
    /** Inside the tolerance or the published range. */
    PASS("pass"),
    /** Outside it. */
    MISS("miss"),
    /** The publication states no error: the two numbers stand side by side. */
    SHOWN("shown"),
    /** The engine does not calculate this. */
    NOT_MODELLED("not modelled");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** Returns the word of tables. */
    public String words() {
        return words;
    }
}
