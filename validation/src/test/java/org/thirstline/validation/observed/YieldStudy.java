package org.thirstline.validation.observed;

import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;

/** Yields of trials with a weather station near them. Plots are cut by hand: all of what stands above the stubble is taken. */
final class YieldStudy {

    private static final String FAMILY = "yields";
    private static final double BY_HAND = 1.0;

    /** Deep prairie soil. */
    private static final SoilProfile PRAIRIE = Fields.soil(1.8, 170.0);

    /** Deep loam. */
    private static final SoilProfile LOAM = Fields.soil(1.5, 150.0);

    private static final MonthDay EARLY_WINTER = MonthDay.of(12, 15);
    private static final MonthDay LATE_WINTER = MonthDay.of(2, 15);
    private static final MonthDay FIRST_FROST = MonthDay.of(11, 1);
    private static final MonthDay SPRING = MonthDay.of(3, 15);

    private final Map<String, Double> results;

    private YieldStudy(Map<String, Double> results) {
        this.results = results;
    }

    static void run(Facts facts, Map<String, Double> results) {
        YieldStudy study = new YieldStudy(results);
        study.illinoisAndNebraska();
        study.northWestEurope();
        study.summarise(facts);
    }

    private void illinoisAndNebraska() {
        DailyDrivers champaign = Stations.champaign();
        years("urbana-mxg-", champaign, Fields.of(Fields.MISCANTHUS, 2002, PRAIRIE, EARLY_WINTER, BY_HAND), 2008, 2010);
        years(
                "urbana-swg-",
                champaign,
                Fields.of(Fields.SWITCHGRASS, 2001, PRAIRIE, EARLY_WINTER, BY_HAND),
                2004,
                2006);
        years(
                "urbana-swg2-",
                champaign,
                Fields.of(Fields.SWITCHGRASS, 2002, PRAIRIE, EARLY_WINTER, BY_HAND),
                2008,
                2010);
        DailyDrivers lincoln = Stations.lincoln();
        years("mead-mxg-", lincoln, Fields.of(Fields.MISCANTHUS, 2008, PRAIRIE, EARLY_WINTER, BY_HAND), 2009, 2010);
    }

    private void northWestEurope() {
        DailyDrivers deBilt = Stations.deBilt();
        mean("de-bilt-winter", deBilt, Fields.of(Fields.MISCANTHUS, 1980, LOAM, LATE_WINTER, BY_HAND), 3);
        mean("de-bilt-fourteen", deBilt, Fields.of(Fields.MISCANTHUS, 1993, LOAM, LATE_WINTER, BY_HAND), 1);
        DailyDrivers dublin = Stations.dublin(1976);
        mean("dublin-autumn", dublin, Fields.of(Fields.MISCANTHUS, 1990, LOAM, FIRST_FROST, BY_HAND), 2);
        mean("dublin-spring", dublin, Fields.of(Fields.MISCANTHUS, 1990, LOAM, SPRING, BY_HAND), 2);
    }

    private void years(String prefix, DailyDrivers drivers, FieldConditions field, int from, int to) {
        for (SeasonRecord season : PairedRuns.simulateActual(drivers, field, 400)) {
            if (season.growthYear() >= from && season.growthYear() <= to && season.isComplete()) {
                results.put(FAMILY + "/" + prefix + season.growthYear(), season.value(SeasonVariable.HARVESTED));
            }
        }
    }

    /** Mean over the first sixteen growth years of a stand, from an age on. */
    private void mean(String id, DailyDrivers drivers, FieldConditions field, int fromAge) {
        List<SeasonRecord> seasons = PairedRuns.simulateActual(drivers, field, 30).stream()
                .filter(season -> season.isComplete() && season.standAge() >= fromAge && season.standAge() <= 16)
                .toList();
        results.put(
                FAMILY + "/" + id,
                seasons.stream()
                        .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                        .average()
                        .orElse(Double.NaN));
    }

    private void summarise(Facts facts) {
        Pairs years = new Pairs();
        Pairs means = new Pairs();
        results.forEach((key, simulated) -> {
            if (key.startsWith(FAMILY + "/")) {
                boolean site = key.contains("urbana") || key.contains("mead");
                (site ? years : means).add(facts.expected(key), simulated);
            }
        });
        results.put(FAMILY + "/rmse-site-years", years.rmse());
        results.put(FAMILY + "/bias-site-years", years.bias());
        results.put(FAMILY + "/correlation-site-years", years.correlation());
        results.put(FAMILY + "/bias-long-term", means.bias());
    }
}
