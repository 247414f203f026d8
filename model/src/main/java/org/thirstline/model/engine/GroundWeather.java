package org.thirstline.model.engine;

import org.thirstline.model.crop.DryDown;
import org.thirstline.model.crop.RhizomeReserve;
import org.thirstline.model.crop.RhizomeZone;
import org.thirstline.model.soil.Snowpack;
import org.thirstline.model.weather.DailyDrivers;

/** What follows from weather whatever the crop: snow, temperature of the rhizome zone, dampness of the air. Immutable and thread-safe. */
final class GroundWeather {

    final double[] liquidRain;
    final double[] melt;
    final double[] snowWater;
    final double[] rhizomeTemperature;
    final double[] biologicalRate;
    final double[] equilibriumMoisture;
    final boolean[] daysShorten;

    GroundWeather(DailyDrivers drivers) {
        int days = drivers.days();
        liquidRain = new double[days];
        melt = new double[days];
        snowWater = new double[days];
        rhizomeTemperature = new double[days];
        biologicalRate = new double[days];
        equilibriumMoisture = new double[days];
        daysShorten = new boolean[days];
        fillGround(drivers);
        fillAir(drivers);
    }

    private void fillGround(DailyDrivers drivers) {
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
            biologicalRate[day] = RhizomeReserve.factorOfTemperature(rhizome);
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

    private void fillAir(DailyDrivers drivers) {
        for (int day = 0; day < drivers.days(); day++) {
            equilibriumMoisture[day] = DryDown.equilibrium(drivers.tmean(day), drivers.relativeHumidity(day));
            int before = Math.max(0, day - 1);
            daysShorten[day] = drivers.dayLength(day) < drivers.dayLength(before);
        }
        if (drivers.days() > 1) {
            daysShorten[0] = daysShorten[1];
        }
    }
}
