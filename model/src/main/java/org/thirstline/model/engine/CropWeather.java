package org.thirstline.model.engine;

import org.thirstline.model.crop.BiomassGrowth;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.DryDown;
import org.thirstline.model.crop.RhizomeZone;
import org.thirstline.model.crop.ThermalTime;
import org.thirstline.model.soil.Snowpack;
import org.thirstline.model.weather.DailyDrivers;

/**
 * What follows from weather and the crop's temperature limits alone: computed once and shared by every run with the same limits. Immutable and
 * thread-safe.
 */
final class CropWeather {

    final double[] liquidRain;
    final double[] melt;
    final double[] snowWater;
    final double[] rhizomeTemperature;
    final double[] emergenceThermalTime;
    final double[] leafThermalTime;
    final double[] temperatureFactor;
    final double[] par;
    final double[] equilibriumMoisture;
    final boolean[] daysShorten;

    CropWeather(DailyDrivers drivers, CropParameters crop) {
        int days = drivers.days();
        liquidRain = new double[days];
        melt = new double[days];
        snowWater = new double[days];
        rhizomeTemperature = new double[days];
        emergenceThermalTime = new double[days];
        leafThermalTime = new double[days];
        temperatureFactor = new double[days];
        par = new double[days];
        equilibriumMoisture = new double[days];
        daysShorten = new boolean[days];
        fillGround(drivers, crop.get(CropParameter.EMERGENCE_BASE));
        fillAir(drivers, crop);
    }

    private void fillGround(DailyDrivers drivers, double emergenceBaseC) {
        double snow = 0.0;
        double rhizome = startTemperature(drivers);
        for (int day = 0; day < drivers.days(); day++) {
            double mean = drivers.tmean(day);
            double snowfall = Snowpack.snowfall(drivers.rain(day), mean);
            liquidRain[day] = drivers.rain(day) - snowfall;
            snow += snowfall;
            melt[day] = Snowpack.melt(snow, mean);
            snow -= melt[day];
            snowWater[day] = snow;
            rhizome = RhizomeZone.temperature(rhizome, mean, snow);
            rhizomeTemperature[day] = rhizome;
            emergenceThermalTime[day] = Math.max(0.0, rhizome - emergenceBaseC);
        }
    }

    /** Mean of the first ten days, the best guess of a running mean that began before the record. */
    private static double startTemperature(DailyDrivers drivers) {
        int days = Math.min(10, drivers.days());
        double sum = 0.0;
        for (int day = 0; day < days; day++) {
            sum += Math.max(0.0, drivers.tmean(day));
        }
        return sum / days;
    }

    private void fillAir(DailyDrivers drivers, CropParameters crop) {
        BiomassGrowth growth = new BiomassGrowth(crop, crop.get(CropParameter.CO2_REFERENCE));
        double base = crop.get(CropParameter.LEAF_BASE);
        double upper = crop.get(CropParameter.LEAF_UPPER);
        for (int day = 0; day < drivers.days(); day++) {
            double tmin = drivers.tmin(day);
            double tmax = drivers.tmax(day);
            leafThermalTime[day] = ThermalTime.singleSine(tmin, tmax, base, upper);
            temperatureFactor[day] = growth.temperatureFactor(BiomassGrowth.daytimeTemperature(tmin, tmax));
            par[day] = growth.par(drivers.solar(day));
            equilibriumMoisture[day] = DryDown.equilibrium(drivers.tmean(day), drivers.relativeHumidity(day));
            int before = Math.max(0, day - 1);
            daysShorten[day] = drivers.dayLength(day) < drivers.dayLength(before);
        }
        if (drivers.days() > 1) {
            daysShorten[0] = daysShorten[1];
        }
    }
}
