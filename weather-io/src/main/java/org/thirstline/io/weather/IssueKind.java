package org.thirstline.io.weather;

/** What is the matter with weather values. */
public enum IssueKind {
    /** The file says nothing about these days. */
    ABSENT_DATE("absent date"),
    /** The source itself marks the value as failed in its checks; taken as missing. */
    FAILED_AT_SOURCE("failed at source"),
    /** The value cannot be; taken as missing. */
    IMPOSSIBLE("impossible"),
    /** The value is hard to believe; kept. */
    SUSPECT("suspect"),
    /** The file does not say, and something was assumed. */
    ASSUMED("assumed"),
    /** Days before the first or after the last temperature; left out. */
    CUT_OFF("cut off"),
    /** Derived from other variables of the day. */
    ESTIMATED("estimated"),
    /** Interpolated between neighbouring days. */
    INTERPOLATED("interpolated"),
    /** Filled with what is usual at that time of year. */
    CLIMATOLOGY("climatology"),
    /** Taken from a second station, brought to the level of this one. */
    SECOND_STATION("second station"),
    /** Which of several sources the values came from. */
    SOURCE("source");

    private final String text;

    IssueKind(String text) {
        this.text = text;
    }

    /** Returns the kind as reports print it. */
    public String text() {
        return text;
    }
}
