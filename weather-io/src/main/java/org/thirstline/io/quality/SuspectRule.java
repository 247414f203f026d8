package org.thirstline.io.quality;

/** What happens to values that are hard to believe. */
public enum SuspectRule {
    /** Kept and reported. */
    KEEP,
    /** Taken as missing, filled like any gap, and reported. */
    BLANK,
    /** The record is refused. */
    STOP
}
