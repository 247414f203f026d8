package org.thirstline.charts;

import java.util.List;
import java.util.Map;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.YieldLedger;

/**
 * Yields by stand age. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param seasons in order
 * @param ledgers one for each complete season
 * @param classes how wet each year was, as far as known
 */
public record StandAgeView(
        String zone, List<SeasonRecord> seasons, List<YieldLedger> ledgers, Map<Integer, SeasonClass> classes) {

    /** Copies the collections. */
    public StandAgeView {
        seasons = List.copyOf(seasons);
        ledgers = List.copyOf(ledgers);
        classes = Map.copyOf(classes);
    }
}
