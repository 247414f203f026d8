package org.thirstline.validation.observed;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;

/** What happens when: emergence, canopy, water use, drying, winter losses; and the facts of the trade. */
final class SeasonStudy {

    private static final SoilProfile GOOD = Fields.soil(1.8, 170.0);
    private static final SoilProfile POOR = Fields.soil(0.9, 120.0);

    /** A loam over sandy outwash, the soil of the Michigan trial in words. */
    private static final SoilProfile OUTWASH = Fields.soil(1.5, 120.0);

    private final Map<String, Double> results;

    private SeasonStudy(Map<String, Double> results) {
        this.results = results;
    }

    static void run(Map<String, Double> results) {
        SeasonStudy study = new SeasonStudy(results);
        DailyDrivers champaign = Stations.champaign();
        study.canopy(champaign);
        study.waterUse(champaign);
        study.cool();
        study.moisture();
        study.trade(champaign);
        DroughtSlope.run(champaign, results);
    }

    private static double mean(StandResult run, ToDoubleFunction<SeasonRecord> value) {
        return run.completeSeasons().stream()
                .filter(season -> season.standAge() >= 3)
                .mapToDouble(value)
                .average()
                .orElse(Double.NaN);
    }

    private static double mean(StandResult run, SeasonVariable variable) {
        return mean(run, season -> season.value(variable));
    }

    private static double emergence(StandResult run) {
        return mean(run, season -> {
            LocalDate date = season.dates().emergence();
            return date == null ? Double.NaN : date.getDayOfYear();
        });
    }

    /** Mean of a daily column on a date, over the years a stand is full-grown. */
    static double onDate(StandResult run, DailyVariable variable, MonthDay date, int fromYear) {
        return run.daily().start().getYear() > fromYear
                ? Double.NaN
                : java.util.stream.IntStream.range(0, run.daily().days())
                        .filter(day -> run.daily().date(day).getYear() >= fromYear)
                        .filter(day -> MonthDay.from(run.daily().date(day)).equals(date))
                        .mapToDouble(day -> run.daily().at(variable, day))
                        .filter(Double::isFinite)
                        .average()
                        .orElse(Double.NaN);
    }

    private static double at(StandResult run, DailyVariable variable, LocalDate date) {
        return run.daily()
                .at(variable, (int) (date.toEpochDay() - run.daily().start().toEpochDay()));
    }

    private static double highest(StandResult run, DailyVariable variable, LocalDate from, LocalDate to) {
        double highest = 0.0;
        for (LocalDate date = from; !date.isAfter(to); date = date.plusDays(1)) {
            highest = Math.max(highest, at(run, variable, date));
        }
        return highest;
    }

    private void canopy(DailyDrivers champaign) {
        FieldConditions field = Fields.of(Fields.MISCANTHUS, 2008, GOOD, MonthDay.of(2, 15), 1.0);
        StandResult run = PairedRuns.simulate(champaign, field, 400);
        results.put("season/urbana-lai-june", at(run, DailyVariable.LEAF_AREA_INDEX, LocalDate.of(2020, 6, 28)));
        results.put(
                "season/urbana-lai-peak",
                highest(run, DailyVariable.LEAF_AREA_INDEX, LocalDate.of(2020, 5, 1), LocalDate.of(2020, 9, 30)));
        results.put("season/urbana-lai-september", at(run, DailyVariable.LEAF_AREA_INDEX, LocalDate.of(2020, 9, 27)));
        results.put("season/urbana-height", at(run, DailyVariable.HEIGHT, LocalDate.of(2020, 9, 1)));
    }

    private void waterUse(DailyDrivers champaign) {
        FieldConditions mxg = michigan();
        FieldConditions swg = Fields.of(Fields.SWITCHGRASS, 2005, OUTWASH, MonthDay.of(11, 1), 1.0);
        StandResult run = PairedRuns.simulate(champaign, mxg, 30);
        results.put("water-use/mxg-et", mean(run, SeasonStudy::evapotranspiration));
        results.put("water-use/mxg-efficiency", mean(run, SeasonStudy::efficiency));
        run.seasons().stream()
                .filter(season -> season.growthYear() == 2012)
                .forEach(season -> results.put("water-use/mxg-efficiency-2012", efficiency(season)));
        StandResult other = PairedRuns.simulate(champaign, swg, 30);
        results.put("water-use/swg-et", mean(other, SeasonStudy::evapotranspiration));
        FieldConditions deep = Fields.of(Fields.MISCANTHUS, 2002, GOOD, MonthDay.of(2, 15), 1.0);
        PairedRuns.simulate(champaign, deep, 400).seasons().stream()
                .filter(season -> season.growthYear() == 2007)
                .forEach(season -> results.put("water-use/mxg-et-illinois-2007", evapotranspiration(season)));
    }

    /** The stand of the Michigan trial. */
    static FieldConditions michigan() {
        return Fields.of(Fields.MISCANTHUS, 2005, OUTWASH, MonthDay.of(11, 1), 1.0);
    }

    /** Mean evapotranspiration of a season at Champaign, where the Michigan trial is simulated [mm]. */
    static double seasonWaterUse(FieldConditions field) {
        return mean(PairedRuns.simulate(Stations.champaign(), field, 30), SeasonStudy::evapotranspiration);
    }

    private static double evapotranspiration(SeasonRecord season) {
        return season.value(SeasonVariable.TRANSPIRATION)
                + season.value(SeasonVariable.SOIL_EVAPORATION)
                + season.value(SeasonVariable.INTERCEPTION);
    }

    /** Standing above-ground dry matter in autumn per water used [g/kg]. */
    private static double efficiency(SeasonRecord season) {
        return 100.0 * season.value(SeasonVariable.STANDING_AT_HARVEST) / evapotranspiration(season);
    }

    private void cool() {
        FieldConditions winter = Fields.of(Fields.MISCANTHUS, 1980, Fields.soil(1.5, 150.0), MonthDay.of(3, 15), 1.0);
        StandResult deBilt = PairedRuns.simulate(Stations.deBilt(), winter, 30);
        StandResult dublin = PairedRuns.simulate(Stations.dublin(1980), winter, 30);
        results.put("season/de-bilt-emergence", emergence(deBilt));
        results.put("season/dublin-emergence", emergence(dublin));
        deBilt.seasons().stream()
                .filter(season -> season.standAge() == 3)
                .forEach(season ->
                        results.put("season/cool-intercepted-par", season.value(SeasonVariable.INTERCEPTED_PAR)));
        results.put("winter/de-bilt-loss", mean(deBilt, SeasonStudy::lossPct));
        results.put("winter/dublin-loss", mean(dublin, SeasonStudy::lossPct));
        results.put("winter/de-bilt-march-moisture", mean(deBilt, SeasonVariable.HARVEST_MOISTURE));
        List<SeasonRecord> young = deBilt.completeSeasons().stream()
                .filter(season -> season.standAge() <= 3)
                .toList();
        double third = young.get(2).value(SeasonVariable.PEAK_BIOMASS);
        results.put("season/build-up-first", young.get(0).value(SeasonVariable.PEAK_BIOMASS) / third);
        results.put("season/build-up-second", young.get(1).value(SeasonVariable.PEAK_BIOMASS) / third);
    }

    private static double lossPct(SeasonRecord season) {
        double peak = season.value(SeasonVariable.PEAK_BIOMASS);
        return 100.0 * (peak - season.value(SeasonVariable.STANDING_AT_HARVEST)) / peak;
    }

    private void moisture() {
        DailyDrivers wisconsin = Stations.necedah();
        FieldConditions mxg = Fields.of(Fields.MISCANTHUS, 2008, GOOD, MonthDay.of(4, 10), 1.0);
        StandResult run = PairedRuns.simulate(wisconsin, mxg, 400);
        results.put("moisture/mxg-1022", onDate(run, DailyVariable.MOISTURE, MonthDay.of(10, 22), 2010));
        results.put("moisture/mxg-1108", onDate(run, DailyVariable.MOISTURE, MonthDay.of(11, 8), 2010));
        results.put("moisture/mxg-1208", onDate(run, DailyVariable.MOISTURE, MonthDay.of(12, 8), 2010));
        results.put("moisture/mxg-0315", onDate(run, DailyVariable.MOISTURE, MonthDay.of(3, 15), 2011));
        FieldConditions swg = Fields.of(Fields.SWITCHGRASS, 2008, GOOD, MonthDay.of(4, 20), 1.0);
        StandResult other = PairedRuns.simulate(wisconsin, swg, 400);
        results.put("moisture/swg-1008", onDate(other, DailyVariable.MOISTURE, MonthDay.of(10, 8), 2010));
        results.put("moisture/swg-1022", onDate(other, DailyVariable.MOISTURE, MonthDay.of(10, 22), 2010));
        results.put("moisture/swg-1108", onDate(other, DailyVariable.MOISTURE, MonthDay.of(11, 8), 2010));
        results.put("moisture/swg-1208", onDate(other, DailyVariable.MOISTURE, MonthDay.of(12, 8), 2010));
        results.put("moisture/swg-0410", onDate(other, DailyVariable.MOISTURE, MonthDay.of(4, 10), 2011));
        results.put("winter/wisconsin-swg-loss", mean(other, SeasonStudy::lossPct));
    }

    private void trade(DailyDrivers champaign) {
        StandResult good =
                PairedRuns.simulate(champaign, Fields.of(Fields.MISCANTHUS, 2004, GOOD, MonthDay.of(3, 1), 0.85), 30);
        StandResult poor =
                PairedRuns.simulate(champaign, Fields.of(Fields.MISCANTHUS, 2004, POOR, MonthDay.of(3, 1), 0.85), 30);
        results.put("trade/good-land", mean(good, SeasonVariable.HARVESTED));
        results.put("trade/poor-land", mean(poor, SeasonVariable.HARVESTED));
        results.put("trade/height", mean(good, SeasonVariable.HEIGHT));
        results.put("trade/late-winter-moisture", mean(good, SeasonVariable.HARVEST_MOISTURE));
        good.seasons().forEach(season -> {
            double perPlant = season.value(SeasonVariable.SHOOTS) / season.value(SeasonVariable.PLANTS);
            if (season.standAge() <= 2) {
                results.put("trade/shoots-year-" + season.standAge(), perPlant);
            }
            if (season.growthYear() == 2012) {
                results.put("trade/severe-drought", season.value(SeasonVariable.HARVESTED));
            }
        });
        List<SeasonRecord> first = good.completeSeasons();
        double mature = mean(good, SeasonVariable.HARVESTED);
        first.stream()
                .filter(season -> season.standAge() == 3)
                .forEach(season ->
                        results.put("trade/third-year-share", season.value(SeasonVariable.HARVESTED) / mature));
    }
}
