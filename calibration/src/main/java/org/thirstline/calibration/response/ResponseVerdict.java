package org.thirstline.calibration.response;

/** What the years can say about drought response. */
public enum ResponseVerdict {
    /** Fewer than five years. */
    TOO_FEW_YEARS("too few years"),
    /** All years had the same deficit. */
    NO_SPREAD("deficit does not vary"),
    /** The interval of the slope holds zero. */
    NOT_DISTINGUISHABLE("response not distinguishable from zero"),
    /** The penalty grows with the deficit. */
    LOSS_GROWS("loss grows with rainfall deficit"),
    /** The penalty shrinks as the deficit grows. */
    LOSS_SHRINKS("loss shrinks as rainfall deficit grows");

    private final String words;

    ResponseVerdict(String words) {
        this.words = words;
    }

    /** Returns the words for reports. */
    public String words() {
        return words;
    }
}
