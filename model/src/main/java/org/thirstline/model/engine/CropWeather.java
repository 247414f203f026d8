package org.thirstline.model.engine;

import org.jspecify.annotations.Nullable;
import org.thirstline.model.crop.BiomassGrowth;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.DryDown;
import org.thirstline.model.crop.ThermalTime;
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
    final double[] biologicalRate;
    final double[] equilibriumMoisture;
    final boolean[] daysShorten;
    final double[] emergenceThermalTime;
    final double[] leafThermalTime;
    final double[] temperatureFactor;
    final double[] par;
    final double[] dryingApproach;
    private final DailyDrivers drivers;
    private final CropParameters crop;
    private final GroundWeather ground;

    CropWeather(DailyDrivers drivers, CropParameters crop) {
        this(drivers, crop, new GroundWeather(drivers), null);
    }

    private CropWeather(
            DailyDrivers drivers, CropParameters crop, GroundWeather ground, @Nullable CropWeather relative) {
        this.drivers = drivers;
        this.crop = crop;
        this.ground = ground;
        liquidRain = ground.liquidRain;
        melt = ground.melt;
        snowWater = ground.snowWater;
        rhizomeTemperature = ground.rhizomeTemperature;
        biologicalRate = ground.biologicalRate;
        equilibriumMoisture = ground.equilibriumMoisture;
        daysShorten = ground.daysShorten;
        emergenceThermalTime = relative != null && relative.agrees(crop, CropParameter.EMERGENCE_BASE)
                ? relative.emergenceThermalTime
                : emergenceThermalTime();
        leafThermalTime = relative != null && relative.agrees(crop, CropParameter.LEAF_BASE, CropParameter.LEAF_UPPER)
                ? relative.leafThermalTime
                : leafThermalTime();
        boolean growsAlike = relative != null
                && relative.agrees(
                        crop,
                        CropParameter.PAR_FRACTION,
                        CropParameter.GROWTH_MIN,
                        CropParameter.GROWTH_OPTIMUM_LOW,
                        CropParameter.GROWTH_OPTIMUM_HIGH,
                        CropParameter.GROWTH_MAX);
        temperatureFactor = growsAlike && relative != null ? relative.temperatureFactor : temperatureFactor();
        par = growsAlike && relative != null ? relative.par : par();
        dryingApproach =
                relative != null && relative.agrees(crop, CropParameter.DRYING_RATE, CropParameter.DRYING_RATE_PER_ET0)
                        ? relative.dryingApproach
                        : dryingApproach();
    }

    /** The same weather for another crop, or the same crop with other values; shares every column that does not change. */
    CropWeather forCrop(CropParameters other) {
        return other == crop ? this : new CropWeather(drivers, other, ground, this);
    }

    private boolean agrees(CropParameters other, CropParameter... parameters) {
        for (CropParameter parameter : parameters) {
            if (crop.get(parameter) != other.get(parameter)) {
                return false;
            }
        }
        return true;
    }

    private double[] emergenceThermalTime() {
        double base = crop.get(CropParameter.EMERGENCE_BASE);
        double[] sums = new double[drivers.days()];
        for (int day = 0; day < sums.length; day++) {
            sums[day] = Math.max(0.0, rhizomeTemperature[day] - base);
        }
        return sums;
    }

    private double[] leafThermalTime() {
        double base = crop.get(CropParameter.LEAF_BASE);
        double upper = crop.get(CropParameter.LEAF_UPPER);
        double[] sums = new double[drivers.days()];
        for (int day = 0; day < sums.length; day++) {
            sums[day] = ThermalTime.singleSine(drivers.tmin(day), drivers.tmax(day), base, upper);
        }
        return sums;
    }

    private double[] temperatureFactor() {
        BiomassGrowth growth = new BiomassGrowth(crop, crop.get(CropParameter.CO2_REFERENCE));
        double[] factors = new double[drivers.days()];
        for (int day = 0; day < factors.length; day++) {
            factors[day] =
                    growth.temperatureFactor(BiomassGrowth.daytimeTemperature(drivers.tmin(day), drivers.tmax(day)));
        }
        return factors;
    }

    private double[] par() {
        BiomassGrowth growth = new BiomassGrowth(crop, crop.get(CropParameter.CO2_REFERENCE));
        double[] columns = new double[drivers.days()];
        for (int day = 0; day < columns.length; day++) {
            columns[day] = growth.par(drivers.solar(day));
        }
        return columns;
    }

    private double[] dryingApproach() {
        DryDown dryDown = new DryDown(crop);
        double[] shares = new double[drivers.days()];
        for (int day = 0; day < shares.length; day++) {
            shares[day] = dryDown.approach(drivers.et0(day));
        }
        return shares;
    }
}
