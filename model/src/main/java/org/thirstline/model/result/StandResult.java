package org.thirstline.model.result;

import java.util.List;

/**
 * What one stand on one soil did in one weather series. Immutable and thread-safe once built.
 *
 * @param seasons one record for each growth year with a planted stand, in order
 * @param ledgers one ledger for each complete season, in order
 * @param daily every day of the run on the soil's own water
 */
public record StandResult(List<SeasonRecord> seasons, List<YieldLedger> ledgers, DailyResults daily) {

    /** Copies the lists. */
    public StandResult {
        seasons = List.copyOf(seasons);
        ledgers = List.copyOf(ledgers);
    }

    /** Returns the seasons whose yields can be compared. */
    public List<SeasonRecord> completeSeasons() {
        return seasons.stream().filter(SeasonRecord::isComplete).toList();
    }
}
