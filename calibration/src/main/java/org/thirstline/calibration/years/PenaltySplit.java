package org.thirstline.calibration.years;

import java.util.List;
import java.util.Map;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * Drought penalty of each year, parted into what the season itself cost and what earlier seasons left behind. Immutable and thread-safe.
 *
 * @param years the years, in order
 */
public record PenaltySplit(List<Year> years) {

    /** Copies the list. */
    public PenaltySplit {
        years = List.copyOf(years);
    }

    /**
     * One year.
     *
     * @param growthYear the growth year
     * @param thisSeasonMgHa lost in the season itself [Mg/ha]
     * @param carriedOverMgHa lost because earlier seasons had spent the reserve [Mg/ha]
     * @param afterDry whether the year before was a dry one
     */
    public record Year(int growthYear, double thisSeasonMgHa, double carriedOverMgHa, boolean afterDry) {}

    /**
     * Parts the penalties of the full-grown years of a zone.
     *
     * @param zone the zone
     * @param classes dry, middle or wet by growth year
     */
    public static PenaltySplit of(ZoneOutcome zone, Map<Integer, SeasonClass> classes) {
        return new PenaltySplit(FullGrown.seasons(zone).stream()
                .map((SeasonRecord season) -> new Year(
                        season.growthYear(),
                        season.value(SeasonVariable.PENALTY_THIS_SEASON),
                        season.value(SeasonVariable.PENALTY_CARRIED_OVER),
                        classes.get(season.growthYear() - 1) == SeasonClass.DRY))
                .toList());
    }

    /** Returns the mean of what the seasons themselves cost [Mg/ha]; NaN without years. */
    public double meanThisSeasonMgHa() {
        return years.stream().mapToDouble(Year::thisSeasonMgHa).average().orElse(Double.NaN);
    }

    /** Returns the mean of what was carried over [Mg/ha]; NaN without years. */
    public double meanCarriedOverMgHa() {
        return years.stream().mapToDouble(Year::carriedOverMgHa).average().orElse(Double.NaN);
    }

    /** Returns the mean of what was carried over into years after a dry one [Mg/ha]; NaN without such years. */
    public double meanAfterDryMgHa() {
        return years.stream()
                .filter(Year::afterDry)
                .mapToDouble(Year::carriedOverMgHa)
                .average()
                .orElse(Double.NaN);
    }
}
