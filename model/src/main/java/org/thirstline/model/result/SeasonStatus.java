package org.thirstline.model.result;

/** Whether a growth year's yield can be compared with others. */
public enum SeasonStatus {
    /** Grown and harvested on a whole year of weather. */
    COMPLETE("complete"),
    /** The weather starts after the growth year did. */
    STARTS_LATE("weather starts after the growth year did"),
    /** The weather ends before the harvest. */
    ENDS_EARLY("weather ends before the harvest"),
    /** Too much of the year's rain or temperature is filled in, not measured. */
    WEATHER_GAPS("too many gaps in the weather"),
    /** The stand died in the winter before. */
    WINTER_KILLED("no living plants left after the winter"),
    /** The canopy never emerged. */
    NO_CANOPY("no canopy emerged");

    private final String words;

    SeasonStatus(String words) {
        this.words = words;
    }

    /** Returns the status in plain words. */
    public String words() {
        return words;
    }
}
