package org.thirstline.charts;

import java.util.List;
import java.util.Map;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * Seasons of one zone, for charts with a bar for every year. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param seasons in order
 * @param classes how wet each year was, as far as known
 */
public record YieldByYear(String zone, List<SeasonRecord> seasons, Map<Integer, SeasonClass> classes) {

    /** Copies the collections. */
    public YieldByYear {
        seasons = List.copyOf(seasons);
        classes = Map.copyOf(classes);
    }

    List<SeasonRecord> complete() {
        return seasons.stream()
                .filter(SeasonRecord::isComplete)
                .filter(season -> Double.isFinite(season.value(SeasonVariable.HARVESTED)))
                .toList();
    }

    /** Returns what drought took, at least nothing: less than rounding, or a gain, is no loss. */
    static double lost(SeasonRecord season) {
        double penalty = season.value(SeasonVariable.DROUGHT_PENALTY);
        return penalty > 0.0 ? penalty : 0.0;
    }
}
