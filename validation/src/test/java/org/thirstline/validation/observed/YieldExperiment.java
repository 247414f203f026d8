package org.thirstline.validation.observed;

import java.time.MonthDay;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.validation.observed.Experiment.Item;

/**
 * Yields of giant miscanthus at the places the page compares, and at five more in Illinois for which the nearest station stands in. Soils as in
 * {@link YieldStudy}: one for all of Illinois and Nebraska.
 */
final class YieldExperiment {

    static final List<CropParameter> PARAMETERS = List.of(
            CropParameter.RADIATION_USE_EFFICIENCY,
            CropParameter.MAX_LEAF_AREA_INDEX,
            CropParameter.BASAL_CROP_COEFFICIENT_FULL);

    private static final SoilProfile PRAIRIE = Fields.soil(1.8, 170.0);
    private static final SoilProfile LOAM = Fields.soil(1.5, 150.0);
    private static final MonthDay EARLY_WINTER = MonthDay.of(12, 15);

    /** Kilometres from the trial to the station of Champaign; one farther than 210 km is left out. */
    private static final Map<String, Integer> ILLINOIS_KM = Map.of(
            "Urbana South Farms",
            15,
            "Havana",
            133,
            "Brownstown",
            139,
            "Fairfield",
            183,
            "DeKalb",
            200,
            "Orr Center",
            209);

    private final List<Item> items = new ArrayList<>();

    private YieldExperiment() {}

    static Experiment of(Facts facts) {
        YieldExperiment made = new YieldExperiment();
        made.illinois();
        made.others(facts);
        return new Experiment(
                "yield of giant miscanthus", "Mg/ha", made.items, parameters(Fields.MISCANTHUS, PARAMETERS));
    }

    /** Parameters of a crop file, with the bounds published there. */
    static List<FitParameter> parameters(String crop, List<CropParameter> which) {
        return which.stream()
                .map(parameter -> {
                    var entry = Fields.published(crop, parameter);
                    return FitParameter.between(parameter.key(), entry.value(), entry.low(), entry.high());
                })
                .toList();
    }

    /** Where a trial lies, coarsely. */
    static String region(Item item) {
        return ILLINOIS_KM.containsKey(item.place()) ? "Illinois" : item.place();
    }

    private void illinois() {
        Map<String, Map<Integer, List<Double>>> bySite = new LinkedHashMap<>();
        Map<String, Integer> planted = new HashMap<>();
        RealData.ownRows("published/illinois-stand-age.csv").forEach(cells -> {
            planted.put(cells[0], Integer.parseInt(cells[1]));
            bySite.computeIfAbsent(cells[0], key -> new LinkedHashMap<>())
                    .computeIfAbsent(Integer.parseInt(cells[2]), key -> new ArrayList<>())
                    .add(Double.parseDouble(cells[4]));
        });
        DailyDrivers champaign = Stations.champaign();
        Map<Integer, Runs> byPlanting = new HashMap<>();
        bySite.forEach((site, years) -> {
            if (ILLINOIS_KM.containsKey(site)) {
                Runs runs = byPlanting.computeIfAbsent(
                        planted.get(site),
                        year -> new Runs(
                                champaign, Fields.of(Fields.MISCANTHUS, year, PRAIRIE, EARLY_WINTER, 1.0), 400));
                years.forEach((year, rates) -> items.add(new Item(
                        site,
                        site,
                        rates.stream()
                                .mapToDouble(Double::doubleValue)
                                .average()
                                .orElseThrow(),
                        point -> runs.harvested(point, year))));
            }
        });
    }

    private void others(Facts facts) {
        Runs mead = new Runs(Stations.lincoln(), Fields.of(Fields.MISCANTHUS, 2008, PRAIRIE, EARLY_WINTER, 1.0), 400);
        add(facts, "yields/mead-mxg-2009", "Mead", point -> mead.harvested(point, 2009));
        add(facts, "yields/mead-mxg-2010", "Mead", point -> mead.harvested(point, 2010));
        Runs deBilt = runs(Stations.deBilt(), 1980, MonthDay.of(2, 15));
        add(facts, "yields/de-bilt-winter", "England", point -> deBilt.mean(point, 3));
        Runs autumn = runs(Stations.dublin(1976), 1990, MonthDay.of(11, 1));
        Runs spring = runs(Stations.dublin(1976), 1990, MonthDay.of(3, 15));
        add(facts, "yields/dublin-autumn", "southern Ireland", point -> autumn.mean(point, 2));
        add(facts, "yields/dublin-spring", "southern Ireland", point -> spring.mean(point, 2));
    }

    private static Runs runs(DailyDrivers drivers, int planted, MonthDay cut) {
        return new Runs(drivers, Fields.of(Fields.MISCANTHUS, planted, LOAM, cut, 1.0), 30);
    }

    private void add(Facts facts, String key, String place, ToDoubleFunction<double[]> simulate) {
        items.add(new Item(place, place, facts.expected(key), simulate));
    }

    /** Runs of one stand, the last point kept. Confined to one thread. */
    private static final class Runs {

        private final SeasonRuns runs;
        private final FieldConditions field;
        private double[] last = {};
        private List<SeasonRecord> seasons = List.of();

        Runs(DailyDrivers drivers, FieldConditions field, int maxFilledDays) {
            this.field = field;
            runs = new SeasonRuns(drivers, field, maxFilledDays);
        }

        private List<SeasonRecord> at(double[] point) {
            if (!java.util.Arrays.equals(point, last)) {
                seasons = runs.simulate(Fields.with(field, PARAMETERS, point));
                last = point.clone();
            }
            return seasons;
        }

        double harvested(double[] point, int year) {
            return at(point).stream()
                    .filter(season -> season.growthYear() == year)
                    .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                    .findFirst()
                    .orElse(Double.NaN);
        }

        double mean(double[] point, int fromAge) {
            return at(point).stream()
                    .filter(season -> season.isComplete() && season.standAge() >= fromAge && season.standAge() <= 16)
                    .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                    .average()
                    .orElse(Double.NaN);
        }
    }
}
