package org.thirstline.model.engine;

import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.soil.Aeration;
import org.thirstline.model.soil.CurveNumberRunoff;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.LayeredStorage;
import org.thirstline.model.soil.Litter;
import org.thirstline.model.soil.RootUptake;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.soil.SurfaceEvaporation;
import org.thirstline.model.soil.TopsoilWetness;
import org.thirstline.model.units.Bound;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherSeries;

/**
 * A day of water: interception, runoff, infiltration and drainage, perching, evaporation, transpiration, in this order. Confined to one
 * run.
 */
final class FieldWater {

    /** Depth whose wetness moves the curve number [m] (judgement). */
    private static final double RUNOFF_DEPTH_M = 0.3;

    private final DailyDrivers drivers;
    private final CropWeather cropWeather;
    private final Scenario scenario;
    private final LayeredStorage storage;
    private final CurveNumberRunoff runoff;
    private final TopsoilWetness topsoil;
    private final SurfaceEvaporation evaporation;
    private final RootUptake roots;
    private final Aeration aeration;
    private final Litter litter;
    private final double[] scheduledIrrigation;
    private final double irrigationTrigger;
    private final double irrigationDepth;
    private final double youngRootDepth;
    private final double interceptionPerLai;
    private final double fullCoverBasal;
    private final double depletionFraction;
    private final double leafDepletionFraction;

    FieldWater(DailyDrivers drivers, CropWeather cropWeather, FieldConditions field, Scenario scenario) {
        CropParameters crop = field.crop();
        SoilProfile soil = field.soil();
        this.drivers = drivers;
        this.cropWeather = cropWeather;
        this.scenario = scenario;
        storage = new LayeredStorage(soil);
        runoff = new CurveNumberRunoff(soil.curveNumber());
        topsoil = new TopsoilWetness(storage, RUNOFF_DEPTH_M);
        evaporation = new SurfaceEvaporation(soil);
        double decay = RootUptake.decayForShare(
                crop.get(CropParameter.ROOT_SHARE_TOP_30_CM), crop.get(CropParameter.ROOT_DEPTH_MATURE));
        roots = new RootUptake(storage, decay, crop.get(CropParameter.UPTAKE_COMPENSATION));
        youngRootDepth = crop.get(CropParameter.ROOT_DEPTH_YEAR_1);
        aeration = new Aeration(
                crop.get(CropParameter.AERATION_LIMIT),
                crop.get(CropParameter.AERATION_DELAY),
                crop.get(CropParameter.AERATION_SENSITIVITY));
        litter = new Litter(crop.get(CropParameter.LITTER_COVER_PER_G), crop.get(CropParameter.LITTER_DECAY));
        scheduledIrrigation = schedule(field.irrigation(), drivers.weather());
        irrigationTrigger = field.irrigation() instanceof Irrigation.OnDepletion rule ? 1.0 - rule.depletion() : -1.0;
        irrigationDepth = field.irrigation() instanceof Irrigation.OnDepletion rule ? rule.depthMm() : 0.0;
        interceptionPerLai = crop.get(CropParameter.INTERCEPTION_PER_LAI);
        fullCoverBasal = crop.get(CropParameter.BASAL_CROP_COEFFICIENT_FULL);
        depletionFraction = crop.get(CropParameter.DEPLETION_FRACTION);
        leafDepletionFraction = crop.get(CropParameter.LEAF_DEPLETION_FRACTION);
    }

    private static double[] schedule(Irrigation irrigation, WeatherSeries weather) {
        if (!(irrigation instanceof Irrigation.OnDates dates)) {
            return new double[0];
        }
        double[] depths = new double[weather.days()];
        dates.depthsMm().forEach((date, depth) -> {
            int day = weather.indexOf(date);
            if (day >= 0 && day < depths.length) {
                depths[day] += depth;
            }
        });
        return depths;
    }

    LayeredStorage storage() {
        return storage;
    }

    RootUptake roots() {
        return roots;
    }

    Litter litter() {
        return litter;
    }

    /** Fills the profile to field capacity, the state a winter leaves behind in most climates with a growing season. */
    void start(StandState state) {
        storage.fillToFieldCapacity(state.soilWater);
        roots.setDepth(youngRootDepth);
    }

    /** Moves a day's water. */
    void advance(int day, StandState s) {
        double et0 = drivers.et0(day);
        double climate = drivers.cropCoefficientClimate(day) * s.heightFactor;
        double basal = basal(climate, s);
        double maximum = SurfaceEvaporation.maximumCoefficient(basal, climate);
        s.interception = Bound.atMost(
                cropWeather.liquidRain[day], Bound.atMost(interceptionPerLai * s.leafAreaIndex, maximum * et0));
        // What evaporates from wet leaves has used its share of the day's energy.
        double et0Left = et0 - s.interception / maximum;
        takeIn(day, s);
        double exposed = 1.0 - s.interceptedFraction;
        s.soilEvaporation = evaporation.daily(s.soilWater[0], maximum, basal, exposed, litter.cover(s.litter), et0Left);
        s.soilWater[0] -= s.soilEvaporation;
        transpire(basal * et0Left, s);
        breathe(s);
    }

    /** K_cb of the green canopy over the ground it covers, FAO-56 eqs 70 and 97, zero without leaves. */
    private double basal(double climateAtHeight, StandState s) {
        if (s.leafAreaIndex <= 0.0 || s.groundCover <= 0.0) {
            return 0.0;
        }
        return s.groundCover
                * CropCoefficient.fromLeafArea(0.0, fullCoverBasal + climateAtHeight, s.leafAreaIndex / s.groundCover);
    }

    private void takeIn(int day, StandState s) {
        s.irrigation = irrigation(day, s);
        double arriving = cropWeather.liquidRain[day] - s.interception + cropWeather.melt[day];
        double storm = arriving > 0.0 ? runoff.daily(arriving, topsoil.of(s.soilWater)) : 0.0;
        s.drainage = storage.infiltrateAndDrain(arriving - storm + s.irrigation, s.soilWater);
        s.groundwater = storage.fillFromGroundwater(s.soilWater);
        s.runoff = storm + storage.perch(s.soilWater);
    }

    private double irrigation(int day, StandState s) {
        if (scheduledIrrigation.length > 0) {
            return scheduledIrrigation[day];
        }
        boolean due = irrigationTrigger >= 0.0
                && s.phase == StandState.Phase.GREEN
                && storage.availableShare(s.soilWater, roots.depthM()) <= irrigationTrigger;
        return due ? irrigationDepth : 0.0;
    }

    private void transpire(double potential, StandState s) {
        s.potentialTranspiration = potential;
        s.suppliedFromOutside = 0.0;
        s.leafWaterFactor = 1.0;
        s.waterFactor = 1.0;
        s.transpiration = 0.0;
        if (potential <= 0.0) {
            return;
        }
        if (scenario.unlimitedWater()) {
            s.suppliedFromOutside = potential - roots.takeUnstressed(potential, s.soilWater);
            s.transpiration = potential;
            return;
        }
        double demand = potential + s.soilEvaporation;
        s.transpiration = roots.takeUp(
                potential,
                RootUptake.depletionFraction(depletionFraction, demand),
                RootUptake.depletionFraction(leafDepletionFraction, demand),
                s.soilWater);
        s.leafWaterFactor = roots.leafSupply();
        s.waterFactor = Bound.atMost(s.transpiration / potential, 1.0);
    }

    private void breathe(StandState s) {
        double air = roots.airFilledPorosity(s.soilWater);
        s.poorlyAeratedDays = aeration.days(air, s.poorlyAeratedDays);
        s.aerationFactor = scenario.aeration() ? aeration.factor(air, s.poorlyAeratedDays) : 1.0;
    }
}
