package org.thirstline.model.result;

/** What ended the green canopy. */
public enum CanopyEnd {
    /** A killing frost. */
    KILLING_FROST("killing frost"),
    /** Autumn senescence ran its course. */
    SENESCENCE("senescence"),
    /** Drought shed the last leaf before autumn. */
    DROUGHT("drought"),
    /** The next growth year began with the canopy still green. */
    YEAR_END("end of the growth year"),
    /** The stand was cut while green. */
    CUT("cut while green");

    private final String words;

    CanopyEnd(String words) {
        this.words = words;
    }

    /** Returns the cause in plain words. */
    public String words() {
        return words;
    }
}
