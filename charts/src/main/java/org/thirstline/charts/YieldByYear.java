package org.thirstline.charts;

import java.util.List;
import java.util.Map;
import org.thirstline.calibration.bands.Band;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * Seasons of one zone, for charts with a bar for every year. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param seasons in order
 * @param classes how wet each year was, as far as known
 * @param bands what a calibration leaves possible of each year's harvest [Mg/ha]; may be empty
 */
public record YieldByYear(
        String zone, List<SeasonRecord> seasons, Map<Integer, SeasonClass> classes, Map<Integer, Band> bands) {

    /** Copies the collections. */
    public YieldByYear {
        seasons = List.copyOf(seasons);
        classes = Map.copyOf(classes);
        bands = Map.copyOf(bands);
    }

    /** Takes seasons without bands. */
    public YieldByYear(String zone, List<SeasonRecord> seasons, Map<Integer, SeasonClass> classes) {
        this(zone, seasons, classes, Map.of());
    }

    List<SeasonRecord> complete() {
        return seasons.stream()
                .filter(SeasonRecord::isComplete)
                .filter(season -> Double.isFinite(season.value(SeasonVariable.HARVESTED)))
                .toList();
    }

    /** Returns the top of everything drawn for a season [Mg/ha]. */
    double top(SeasonRecord season) {
        double bar = season.value(SeasonVariable.HARVESTED) + lost(season);
        Band band = bands.get(season.growthYear());
        return band == null || !band.isKnown() ? bar : Math.max(bar, band.high());
    }

    /** Returns what drought took, at least nothing: less than rounding, or a gain, is no loss. */
    static double lost(SeasonRecord season) {
        double penalty = season.value(SeasonVariable.DROUGHT_PENALTY);
        return penalty > 0.0 ? penalty : 0.0;
    }
}
