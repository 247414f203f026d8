package org.thirstline.charts;

import java.util.List;

/**
 * Seasons side by side. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param seasons two or more, all of one run
 */
public record CompareView(String zone, List<SeasonView> seasons) {

    /** Copies the list. */
    public CompareView {
        seasons = List.copyOf(seasons);
    }
}
