package org.thirstline.model.engine;

import org.thirstline.model.crop.BiomassGrowth;
import org.thirstline.model.crop.CanopyGrowth;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.Cut;
import org.thirstline.model.crop.DryDown;
import org.thirstline.model.crop.FrostDamage;
import org.thirstline.model.crop.LightInterception;
import org.thirstline.model.crop.RhizomeReserve;
import org.thirstline.model.crop.StandStructure;
import org.thirstline.model.crop.WinterLosses;
import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.result.CanopyEnd;
import org.thirstline.model.soil.Litter;
import org.thirstline.model.units.Bound;
import org.thirstline.model.units.Rise;
import org.thirstline.model.weather.DailyDrivers;

/** A day of the stand: emergence, frost, growth, leaf, autumn, winter. Confined to one run. */
final class FieldStand {

    /** Leaf area index at which an ageing canopy counts as ended (judgement). */
    private static final double ENDED_LEAF_AREA = 0.1;

    /** Share of the established plants below which a stand counts as dead (judgement). */
    private static final double DEAD_STAND_SHARE = 0.02;

    /** An age by which every stand is full-grown, for the run without the limit of age. */
    private static final int FULL_GROWN_AGE = 30;

    private final DailyDrivers drivers;
    private final CropWeather weather;
    private final Scenario scenario;
    private final double plantedM2;
    private final StandStructure structure;
    private final FrostDamage frost;
    private final LightInterception light;
    private final CanopyGrowth canopy;
    private final BiomassGrowth growth;
    private final RhizomeReserve rhizome;
    private final WinterLosses losses;
    private final DryDown dryDown;
    private final Cut cut;
    private final double emergenceThermalTime;
    private final double leafGrowthEnd;
    private final double leafGrowthEndDayLength;
    private final double senescenceDayLength;
    private final double leafShareMax;
    private final double reserveFedLeafArea;
    private final double translocation;
    private final double maxHeight;
    private final double heightStemMass;

    FieldStand(DailyDrivers drivers, CropWeather weather, FieldConditions field, Scenario scenario) {
        CropParameters crop = field.crop();
        this.drivers = drivers;
        this.weather = weather;
        this.scenario = scenario;
        plantedM2 = field.stand().plantsPerM2();
        structure = new StandStructure(crop);
        frost = new FrostDamage(crop);
        light = new LightInterception(crop.get(CropParameter.EXTINCTION_COEFFICIENT));
        canopy = new CanopyGrowth(crop);
        growth = new BiomassGrowth(crop, field.co2Ppm());
        rhizome = new RhizomeReserve(crop);
        losses = new WinterLosses(crop);
        dryDown = new DryDown(crop);
        cut = new Cut(field.stubbleM(), field.pickUpShare());
        emergenceThermalTime = crop.get(CropParameter.EMERGENCE_THERMAL_TIME);
        leafGrowthEnd = crop.get(CropParameter.LEAF_GROWTH_END_THERMAL_TIME);
        leafGrowthEndDayLength = crop.get(CropParameter.LEAF_GROWTH_END_DAY_LENGTH);
        senescenceDayLength = crop.get(CropParameter.SENESCENCE_DAY_LENGTH);
        leafShareMax = crop.get(CropParameter.LEAF_SHARE_MAX);
        reserveFedLeafArea = crop.get(CropParameter.RESERVE_FED_LEAF_AREA);
        translocation = crop.get(CropParameter.LEAF_TRANSLOCATION);
        maxHeight = crop.get(CropParameter.MAX_HEIGHT);
        heightStemMass = crop.get(CropParameter.HEIGHT_STEM_MASS);
    }

    /** Plants a new stand, or takes over one that was planted before the weather starts. */
    void plant(StandState s) {
        s.planted = true;
        s.plants = structure.established(plantedM2);
        s.groundCover = structure.groundCover(s.plants, effectiveAge(s));
        s.reserve = effectiveAge(s) == 1 ? rhizome.planted(s.plants) : capacity(s);
        s.plantedReserve += s.reserve;
        s.coldestRhizome = Double.POSITIVE_INFINITY;
        s.emergenceThermalTime = 0.0;
    }

    private int effectiveAge(StandState s) {
        return scenario.mature() ? FULL_GROWN_AGE : s.age;
    }

    private double capacity(StandState s) {
        return rhizome.capacity() * s.groundCover;
    }

    /** Clears the phenology of the year before. A canopy that is still green has lived its year. */
    void openYear(StandState s) {
        s.emergenceThermalTime = 0.0;
        s.leafThermalTime = 0.0;
        s.leafGrowthEnded = false;
        s.autumn = false;
    }

    /** Whether shoots break the surface today, for a stand that has not emerged this year. */
    boolean emerges(int day, StandState s) {
        s.emergenceThermalTime += weather.emergenceThermalTime[day];
        return s.emergenceThermalTime >= emergenceThermalTime;
    }

    /** Brings up what the winter left alive. */
    void emerge(StandState s) {
        int age = effectiveAge(s);
        if (scenario.frost() && s.age > 1) {
            double survival = frost.winterSurvival(s.coldestRhizome, s.age == 2);
            s.winterKilled += s.reserve * (1.0 - survival);
            s.reserve *= survival;
            s.plants *= survival;
        }
        if (s.plants < DEAD_STAND_SHARE * structure.established(plantedM2)) {
            s.dead = true;
            return;
        }
        double vigour = rhizome.vigour(s.reserve, age, s.groundCover);
        s.groundCover = structure.groundCover(s.plants, age);
        s.shoots = structure.shoots(s.plants, age, vigour);
        s.largestLeafArea = structure.largestLeafAreaIndex(s.shoots);
        s.emergingLeafArea = canopy.emergingLeafAreaIndex(s.shoots);
        s.ageFactor = scenario.mature() ? 1.0 : structure.ageFactor(s.age);
        double cost = Math.min(s.reserve, s.emergingLeafArea * canopy.gramsPerLeafArea());
        s.reserve -= cost;
        s.leafAreaIndex = cost / canopy.gramsPerLeafArea();
        s.phase = StandState.Phase.GREEN;
    }

    /** Returns the depth the stand's roots reach this season [m]. */
    double rootDepth(StandState s) {
        return structure.rootDepthM(effectiveAge(s));
    }

    /** Lets last night's frost and the shortening days act on the canopy. */
    void morning(int day, StandState s) {
        s.coldestRhizome = Bound.atMost(s.coldestRhizome, weather.rhizomeTemperature[day]);
        if (s.phase != StandState.Phase.GREEN) {
            return;
        }
        boolean shortening = weather.daysShorten[day];
        double dayLength = drivers.dayLength(day);
        s.leafGrowthEnded |= s.leafThermalTime >= leafGrowthEnd || (shortening && dayLength < leafGrowthEndDayLength);
        s.autumn |= shortening && dayLength < senescenceDayLength;
        if (!scenario.frost()) {
            return;
        }
        if (shortening && frost.endsCanopy(drivers.tmin(day))) {
            endCanopy(CanopyEnd.KILLING_FROST, s);
        } else if (!shortening) {
            killLeaf(frost.leafKilled(drivers.tmin(day)) * s.leafAreaIndex, s);
        }
    }

    private void killLeaf(double leafArea, StandState s) {
        s.leafAreaIndex -= leafArea;
        s.deadLeaf += leafArea * canopy.gramsPerLeafArea();
    }

    /** Turns what is green into standing dead matter. */
    void endCanopy(CanopyEnd cause, StandState s) {
        killLeaf(s.leafAreaIndex, s);
        s.leafAreaIndex = 0.0;
        s.canopyEnd = cause;
        s.phase = StandState.Phase.STANDING;
        s.coldestRhizome = Double.POSITIVE_INFINITY;
    }

    /** Share of PAR the canopy intercepts this morning. */
    void intercept(StandState s) {
        s.interceptedFraction = light.fraction(s.leafAreaIndex, s.groundCover);
    }

    /** Grows the canopy by a day's light and water, ages its leaf. */
    void grow(int day, StandState s) {
        s.todayGrowth = 0.0;
        if (s.phase != StandState.Phase.GREEN) {
            return;
        }
        double limitation = Bound.atMost(s.waterFactor, s.aerationFactor);
        double total = growth.total(
                weather.par[day] * s.interceptedFraction, weather.temperatureFactor[day], limitation, s.ageFactor);
        double below = growth.rhizomeShare(effectiveAge(s)) * total;
        double dying = s.leafAreaIndex * canopy.dyingShare(weather.leafThermalTime[day], s.waterFactor, s.autumn);
        double leaf = leafGrowth(day, total - below, s);
        double fromReserve = leaf - Bound.atMost(leaf, leafShareMax * (total - below));
        double dead = dying * canopy.gramsPerLeafArea();
        s.leafAreaIndex += leaf / canopy.gramsPerLeafArea() - dying;
        s.stem += total - below - (leaf - fromReserve);
        s.reserve += below - fromReserve + translocation * dead;
        s.deadLeaf += (1.0 - translocation) * dead;
        s.todayGrowth = total;
        s.grown += total;
        s.leafThermalTime += weather.leafThermalTime[day];
        raise(s);
        if ((s.autumn || s.leafGrowthEnded) && s.leafAreaIndex < ENDED_LEAF_AREA) {
            endCanopy(s.autumn ? CanopyEnd.SENESCENCE : CanopyEnd.DROUGHT, s);
        }
    }

    /** Stems that grew carry the canopy higher; stems that broke do not lower it. */
    private void raise(StandState s) {
        double height = maxHeight * Rise.of(s.stem / heightStemMass);
        if (height > s.height) {
            s.height = height;
            s.heightFactor = CropCoefficient.heightFactor(height);
        }
    }

    /** Dry matter of new leaf: what temperature and water allow, as far as growth and, in spring, the reserve can pay for it. */
    private double leafGrowth(int day, double aboveGround, StandState s) {
        if (s.autumn || s.leafGrowthEnded) {
            return 0.0;
        }
        double wanted = canopy.gramsPerLeafArea()
                * canopy.potentialIncrease(
                        s.leafAreaIndex,
                        s.emergingLeafArea,
                        s.largestLeafArea,
                        weather.leafThermalTime[day],
                        s.leafWaterFactor);
        double help = Bound.notNegative(1.0 - s.leafAreaIndex / reserveFedLeafArea);
        double fromReserve = help * rhizome.available(s.reserve);
        return Bound.atMost(wanted, leafShareMax * aboveGround + fromReserve);
    }

    /** Ages what is below ground and what is dead: respiration, leaf fall, broken stems, drying, decay. */
    void evening(int day, Litter litter, StandState s) {
        double rate = weather.biologicalRate[day];
        double respired = rhizome.respired(s.reserve, rate);
        s.reserve -= respired;
        s.respired += respired;
        double surplus = Bound.notNegative(s.reserve - capacity(s));
        s.reserve -= surplus;
        s.turnedOver += surplus;
        double fallen = s.deadLeaf * losses.leafFallShare();
        s.deadLeaf -= fallen;
        s.litter += fallen;
        if (s.phase == StandState.Phase.STANDING) {
            double broken = s.stem * losses.stemLossShare(weather.snowWater[day]);
            s.stem -= broken;
            s.litter += broken;
            s.moisture = dryDown.tomorrow(
                    s.moisture, weather.equilibriumMoisture[day], weather.dryingApproach[day], weather.liquidRain[day]);
        } else {
            s.moisture = dryDown.living();
        }
        double decayed = litter.decayed(s.litter, rate);
        s.litter -= decayed;
        s.litterDecayed += decayed;
    }

    /** Standing above-ground dry matter [g m⁻²]. */
    double standing(StandState s) {
        return s.leafAreaIndex * canopy.gramsPerLeafArea() + s.deadLeaf + s.stem;
    }

    /** Cuts the stand; returns what was harvested [g m⁻²], the rest becomes litter. */
    double cut(StandState s) {
        double leaf = s.leafAreaIndex * canopy.gramsPerLeafArea() + s.deadLeaf;
        double taken = cut.harvested(s.stem, leaf, s.height);
        s.litter += s.stem + leaf - taken;
        s.harvested += taken;
        s.clearAboveGround();
        return taken;
    }

    /** Leaf dry matter per leaf area [g m⁻²]. */
    double gramsPerLeafArea() {
        return canopy.gramsPerLeafArea();
    }
}
