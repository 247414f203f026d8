package org.thirstline.charts;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** What a comparison of seasons is about, and what it finds. */
enum CompareTopic {
    /** Everything in small. */
    ALL("compare", "the seasons %s day by day"),
    /** What came and what was asked for. */
    WATER("water-so-far", "rain and demand added up through the seasons %s, and in the mean of all years"),
    /** Dry matter. */
    GROWTH("growth", "standing dry matter through the seasons %s"),
    /** Leaves and light. */
    CANOPY("canopy", "leaf area and the light it catches through the seasons %s");

    private final String id;
    private final String subtitle;

    CompareTopic(String id, String subtitle) {
        this.id = id;
        this.subtitle = subtitle;
    }

    String id() {
        return id;
    }

    String subtitle(CompareView view) {
        String years = view.seasons().stream()
                .map(season -> season.season().growthYear()
                        + (season.seasonClass() == null
                                ? ""
                                : " (" + season.seasonClass().word() + ")"))
                .collect(Collectors.joining(", "));
        return Subtitles.sentence(view.zone(), subtitle.formatted(years));
    }

    String title(CompareView view, UnitSystem units) {
        List<SeasonRecord> whole = view.seasons().stream()
                .map(SeasonView::season)
                .filter(SeasonRecord::isComplete)
                .sorted(Comparator.comparingDouble(season -> season.value(SeasonVariable.HARVESTED)))
                .toList();
        if (whole.size() < 2) {
            return "Seasons side by side";
        }
        SeasonRecord low = whole.get(0);
        SeasonRecord high = whole.get(whole.size() - 1);
        return switch (this) {
            case ALL -> yielded(low, high, units) + onRain(low, high, units);
            case WATER -> water(low, high, units);
            case GROWTH -> grown(low, high, units);
            case CANOPY ->
                "Leaf area reached " + leaves(low) + " in " + low.growthYear() + " and " + leaves(high) + " in "
                        + high.growthYear();
        };
    }

    private static String leaves(SeasonRecord season) {
        return Numbers.fixed(season.value(SeasonVariable.MAX_LEAF_AREA_INDEX), 1);
    }

    private static String yielded(SeasonRecord low, SeasonRecord high, UnitSystem units) {
        double difference = high.value(SeasonVariable.HARVESTED) - low.value(SeasonVariable.HARVESTED);
        return low.growthYear() + " yielded " + units.yieldText(difference) + " less than " + high.growthYear();
    }

    private static String onRain(SeasonRecord low, SeasonRecord high, UnitSystem units) {
        double rain = high.value(SeasonVariable.SEASON_RAIN) - low.value(SeasonVariable.SEASON_RAIN);
        return Double.isNaN(rain)
                ? ""
                : " on " + units.waterText(Math.abs(rain)) + (rain >= 0.0 ? " less rain" : " more rain");
    }

    private static String water(SeasonRecord low, SeasonRecord high, UnitSystem units) {
        double less = low.value(SeasonVariable.SEASON_RAIN);
        double more = high.value(SeasonVariable.SEASON_RAIN);
        if (Double.isNaN(less) || Double.isNaN(more)) {
            return "Rain and demand side by side";
        }
        return "The season of " + low.growthYear() + " brought " + units.waterText(less) + " of rain, that of "
                + high.growthYear() + " " + units.waterText(more);
    }

    private static String grown(SeasonRecord low, SeasonRecord high, UnitSystem units) {
        double poor = low.value(SeasonVariable.PEAK_BIOMASS);
        double good = high.value(SeasonVariable.PEAK_BIOMASS);
        return "The stand of " + low.growthYear() + " peaked at " + units.yieldText(poor) + ", that of "
                + high.growthYear() + " at " + Numbers.fixed(units.dryMatter(good), 1);
    }
}
