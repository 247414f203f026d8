package org.thirstline.validation.observed;

import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Relative yield lost for relative evapotranspiration lost, FAO-56 eq. 102 (FAO-33): K_y. The watered twin is irrigated by 20 mm whenever
 * 30 % of the root zone's water is gone.
 */
final class DroughtSlope {

    private DroughtSlope() {}

    static void run(DailyDrivers champaign, Map<String, Double> results) {
        DailyDrivers stillwater = Stations.uscrn("OK_Stillwater_2_W", 36.12, 272.0);
        results.put("drought-slope/champaign-mxg", slope(champaign, Fields.MISCANTHUS, 0.6, 100.0));
        results.put("drought-slope/stillwater-mxg", slope(stillwater, Fields.MISCANTHUS, 0.9, 120.0));
        results.put("drought-slope/stillwater-swg", slope(stillwater, Fields.SWITCHGRASS, 0.9, 120.0));
    }

    private static double slope(DailyDrivers drivers, String crop, double depthM, double availableMmPerM) {
        FieldConditions dry = Fields.of(crop, 2004, Fields.soil(depthM, availableMmPerM), MonthDay.of(11, 15), 1.0);
        Map<Integer, SeasonRecord> watered = complete(drivers, Fields.irrigated(dry)).stream()
                .collect(Collectors.toMap(SeasonRecord::growthYear, season -> season));
        Pairs losses = new Pairs();
        for (SeasonRecord season : complete(drivers, dry)) {
            SeasonRecord twin = watered.get(season.growthYear());
            if (twin != null) {
                losses.add(
                        1.0 - evapotranspiration(season) / evapotranspiration(twin),
                        1.0 - autumnMass(season) / autumnMass(twin));
            }
        }
        return losses.slopeThroughOrigin();
    }

    private static List<SeasonRecord> complete(DailyDrivers drivers, FieldConditions field) {
        return PairedRuns.simulateActual(drivers, field, 30).stream()
                .filter(season -> season.isComplete() && season.standAge() >= 3)
                .toList();
    }

    private static double autumnMass(SeasonRecord season) {
        return season.value(SeasonVariable.STANDING_AT_HARVEST);
    }

    private static double evapotranspiration(SeasonRecord season) {
        return season.value(SeasonVariable.TRANSPIRATION)
                + season.value(SeasonVariable.SOIL_EVAPORATION)
                + season.value(SeasonVariable.INTERCEPTION);
    }
}
