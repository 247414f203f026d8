package org.thirstline.model.engine;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.result.SeasonRecord;

/** A run of {@link SeasonRuns} with its seasons, and its stand and soil on the evening of each watched day. Immutable and thread-safe. */
public final class WatchedRun {

    private final List<SeasonRecord> seasons;
    private final @Nullable WatchedDays watched;

    WatchedRun(List<SeasonRecord> seasons, @Nullable WatchedDays watched) {
        this.seasons = List.copyOf(seasons);
        this.watched = watched;
    }

    /** Returns the seasons; what only twin runs can tell is NaN. */
    public List<SeasonRecord> seasons() {
        return seasons;
    }

    /**
     * Returns green leaf area index on a watched day [m²/m²].
     *
     * @param watchedDay position among the watched days
     */
    public double leafAreaIndex(int watchedDay) {
        return watched().leafAreaIndex[watchedDay];
    }

    /**
     * Returns the share of PAR intercepted on a watched day [1].
     *
     * @param watchedDay position among the watched days
     */
    public double interceptedFraction(int watchedDay) {
        return watched().interceptedFraction[watchedDay];
    }

    /**
     * Returns standing above-ground dry matter on a watched day [Mg/ha].
     *
     * @param watchedDay position among the watched days
     */
    public double standingMgHa(int watchedDay) {
        return watched().standingMgHa[watchedDay];
    }

    /**
     * Returns the water of the soil down to a depth on a watched day [mm]; a layer that the depth cuts counts by its part above.
     *
     * @param watchedDay position among the watched days
     * @param depthM depth [m]; NaN for the whole profile
     */
    public double soilWaterMm(int watchedDay, double depthM) {
        return watched().soilWaterMm(watchedDay, depthM);
    }

    private WatchedDays watched() {
        if (watched == null) {
            throw new IllegalStateException("no day was watched");
        }
        return watched;
    }
}
