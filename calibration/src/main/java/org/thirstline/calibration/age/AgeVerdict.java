package org.thirstline.calibration.age;

/** The three answers to age or weather. */
public enum AgeVerdict {
    /** Yield fell with age by more than the weather of those years explains. */
    DECLINE_BEYOND_WEATHER("decline beyond weather"),
    /** The weather explains the fall, or a decline worth the name is ruled out. */
    WEATHER_EXPLAINS_IT("weather explains it"),
    /** The years at hand cannot tell. */
    CANNOT_TELL_YET("can't tell yet");

    private final String words;

    AgeVerdict(String words) {
        this.words = words;
    }

    /** Returns the words for reports. */
    public String words() {
        return words;
    }
}
