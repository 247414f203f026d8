package org.thirstline.model.engine;

import org.thirstline.model.crop.DryDown;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.weather.DailyDrivers;

/** Copies a day into columns, outside the step. Stateless and thread-safe. */
final class DayRecorder {

    private DayRecorder() {}

    static void record(
            int day,
            DailyDrivers drivers,
            CropWeather weather,
            StandState s,
            FieldStand stand,
            FieldWater water,
            DailyResults to) {
        to.set(DailyVariable.TMIN, day, drivers.tmin(day));
        to.set(DailyVariable.TMAX, day, drivers.tmax(day));
        to.set(DailyVariable.RAIN, day, drivers.rain(day));
        to.set(DailyVariable.SOLAR, day, drivers.solar(day));
        to.set(DailyVariable.ET0, day, drivers.et0(day));
        to.set(DailyVariable.RHIZOME_TEMPERATURE, day, weather.rhizomeTemperature[day]);
        to.set(DailyVariable.SNOW, day, weather.snowWater[day]);
        to.set(DailyVariable.TEMPERATURE_FACTOR, day, weather.temperatureFactor[day]);
        recordStand(day, s, stand, to);
        recordWater(day, s, water, to);
    }

    private static void recordStand(int day, StandState s, FieldStand stand, DailyResults to) {
        boolean present = s.phase != StandState.Phase.BARE;
        to.set(DailyVariable.LEAF_AREA_INDEX, day, s.leafAreaIndex);
        to.set(DailyVariable.INTERCEPTED_FRACTION, day, s.interceptedFraction);
        to.set(DailyVariable.HEIGHT, day, s.height);
        to.set(DailyVariable.GREEN_LEAF, day, s.leafAreaIndex * stand.gramsPerLeafArea());
        to.set(DailyVariable.DEAD_LEAF, day, s.deadLeaf);
        to.set(DailyVariable.STEM, day, s.stem);
        to.set(DailyVariable.STANDING, day, stand.standing(s));
        to.set(DailyVariable.RESERVE, day, s.reserve);
        to.set(DailyVariable.LITTER, day, s.litter);
        to.set(DailyVariable.GROWTH, day, s.todayGrowth);
        to.set(DailyVariable.MOISTURE, day, present ? DryDown.wetBasisPct(s.moisture) : Double.NaN);
    }

    private static void recordWater(int day, StandState s, FieldWater water, DailyResults to) {
        to.set(DailyVariable.IRRIGATION, day, s.irrigation);
        to.set(DailyVariable.INTERCEPTION, day, s.interception);
        to.set(DailyVariable.RUNOFF, day, s.runoff);
        to.set(DailyVariable.DRAINAGE, day, s.drainage);
        to.set(DailyVariable.SOIL_EVAPORATION, day, s.soilEvaporation);
        to.set(DailyVariable.POTENTIAL_TRANSPIRATION, day, s.potentialTranspiration);
        to.set(DailyVariable.TRANSPIRATION, day, s.transpiration);
        to.set(DailyVariable.GROUNDWATER, day, s.groundwater);
        to.set(DailyVariable.WATER_FACTOR, day, s.waterFactor);
        to.set(DailyVariable.LEAF_WATER_FACTOR, day, s.leafWaterFactor);
        to.set(DailyVariable.AERATION_FACTOR, day, s.aerationFactor);
        to.set(DailyVariable.SOIL_WATER, day, water.storage().total(s.soilWater));
        to.set(
                DailyVariable.ROOT_ZONE_DEPLETION,
                day,
                water.storage().depletionMm(s.soilWater, water.roots().depthM()));
        to.setSoilWater(day, s.soilWater);
    }
}
