package org.thirstline.model.engine;

import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;

/** Runs over the same weather that differ in one thing, so that each loss has its own number. Immutable and thread-safe. */
public final class PairedRuns {

    private PairedRuns() {}

    /**
     * Simulates a stand with and without lack of water and everything else the yield ledger tells apart.
     *
     * @param drivers site and weather
     * @param field crop, stand, soil and management
     * @return seasons, ledgers and the days of the run on the soil's own water
     */
    public static StandResult simulate(DailyDrivers drivers, FieldConditions field) {
        throw new UnsupportedOperationException("being written");
    }
}
