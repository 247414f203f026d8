package org.thirstline.model.engine;

import org.jspecify.annotations.Nullable;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.DryDown;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.result.CanopyEnd;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.units.Units;
import org.thirstline.model.weather.DailyDrivers;

/**
 * One run of one stand over a weather series under one {@link Scenario}. {@link #advance} is the day. Only this class and its two halves,
 * {@link FieldWater} and {@link FieldStand}, write the state. Confined to one thread and one run.
 */
final class StandSimulation {

    /** Topsoil whose wetness decides whether the ground carries a machine [m] (common practice, no source). */
    private static final double TRAFFIC_DEPTH_M = 0.2;

    /** Rhizome-zone temperature below which the ground counts as frozen [°C] (judgement). */
    private static final double FROZEN_GROUND_C = -0.5;

    private final DailyDrivers drivers;
    private final CropWeather weather;
    private final FieldConditions field;
    private final Scenario scenario;
    private final YearTable table;
    private final FieldWater water;
    private final FieldStand stand;
    private final StandState state;
    private final SeasonColumns seasons;
    private final SeasonSums sums = new SeasonSums();
    private final int plantingYear;
    private final int plantingDay;
    private final double[] interceptedBySeasonDay = new double[800];
    private int year;
    private int cropYear = -1;
    private int windowFrom = Integer.MAX_VALUE;
    private int windowTo = Integer.MIN_VALUE;
    private double snowBefore;
    private @Nullable SeasonColumns twin;
    private boolean grantReserve;
    private @Nullable DailyResults daily;
    private @Nullable DayObserver observer;

    StandSimulation(
            DailyDrivers drivers, CropWeather weather, FieldConditions field, YearTable table, Scenario scenario) {
        this.drivers = drivers;
        this.weather = weather;
        this.field = field;
        this.scenario = scenario;
        this.table = table;
        water = new FieldWater(drivers, weather, field, scenario);
        stand = new FieldStand(drivers, weather, field, scenario);
        state = new StandState(water.storage().layers());
        seasons = new SeasonColumns(table.firstYear, table.years);
        plantingYear = GrowthCalendar.growthYear(drivers.site(), field.stand().plantingDate());
        plantingDay = drivers.weather().indexOf(field.stand().plantingDate());
    }

    /** Cuts on the same days as another run, so that the two differ in one thing only. */
    StandSimulation cutWith(SeasonColumns other) {
        twin = other;
        return this;
    }

    /** Starts every growth year with the reserve another run had, so that nothing is carried over. */
    StandSimulation reserveFrom(SeasonColumns other) {
        twin = other;
        grantReserve = true;
        return this;
    }

    StandSimulation recordTo(DailyResults results) {
        daily = results;
        return this;
    }

    StandSimulation observedBy(DayObserver watcher) {
        observer = watcher;
        return this;
    }

    /** Leaf dry matter per leaf area, for those who add up pools [g m⁻²]. */
    double gramsPerLeafArea() {
        return stand.gramsPerLeafArea();
    }

    /** The columns that each run writes anew. */
    SeasonColumns columns() {
        return seasons;
    }

    /** Runs every day of the series. */
    SeasonColumns run() {
        state.clear();
        seasons.clear();
        water.start(state);
        year = 0;
        cropYear = -1;
        for (int day = 0; day < drivers.days(); day++) {
            advance(day);
            if (daily != null) {
                record(day, daily);
            }
            if (observer != null) {
                observer.after(day, state);
            }
        }
        if (cropYear >= 0) {
            sums.closeCanopy(cropYear, seasons);
        }
        return seasons;
    }

    /** One day, in the order of docs/formulation.md. */
    private void advance(int day) {
        if (day == table.firstDay[year + 1] || day == 0) {
            openYear(day);
        }
        plantIfDue(day);
        harvestIfDue(day);
        emergeIfDue(day);
        stand.morning(day, state);
        noteCanopyEnd(day);
        stand.intercept(state);
        noteWindowStart(day);
        water.advance(day, state);
        stand.grow(day, state);
        noteCanopyEnd(day);
        stand.evening(day, water.litter(), state);
        noteSeason(day);
    }

    private void openYear(int day) {
        if (day == table.firstDay[year + 1]) {
            year++;
        }
        if (state.phase == StandState.Phase.GREEN) {
            stand.endCanopy(CanopyEnd.YEAR_END, state);
            noteCanopyEnd(day);
        }
        boolean window = table.holdsWindow(year);
        windowFrom = window ? table.windowStart[year] : Integer.MAX_VALUE;
        windowTo = window ? table.windowEnd[year] : Integer.MIN_VALUE;
        state.age = table.firstYear + year - plantingYear + 1;
        stand.openYear(state);
        boolean wholeYear = day == table.firstDay[year];
        boolean plantedBefore = plantingDay < day || (scenario.mature() && state.age >= 1);
        if (!state.planted && wholeYear && plantedBefore && state.age >= 1) {
            plant();
        }
        if (grantReserve && twin != null && state.planted) {
            double granted = twin.reserveAtYearStart[year];
            state.reserveGranted += granted - state.reserve;
            state.reserve = granted;
        }
        seasons.reserveAtYearStart[year] = state.reserve;
        noteYear();
    }

    private void plantIfDue(int day) {
        if (day == plantingDay && !state.planted) {
            plant();
            noteYear();
        }
    }

    private void plant() {
        stand.plant(state);
        water.roots().setDepth(stand.rootDepth(state));
    }

    private void noteYear() {
        seasons.age[year] = state.age;
        seasons.planted[year] = state.planted;
    }

    private void harvestIfDue(int day) {
        if (state.phase == StandState.Phase.BARE || cropYear < 0) {
            return;
        }
        boolean due = twin != null && twin.harvestDay[cropYear] != SeasonColumns.NO_DAY
                ? day == twin.harvestDay[cropYear]
                : ruleCuts(day);
        if (due) {
            harvest(day);
        }
    }

    private boolean ruleCuts(int day) {
        if (day < table.harvestFrom[cropYear]) {
            return false;
        }
        HarvestRule rule = field.harvest();
        return day >= table.harvestUntil[cropYear]
                || (DryDown.wetBasisPct(state.moisture) <= rule.maxMoisturePct() && carriesMachine(day, rule));
    }

    private boolean carriesMachine(int day, HarvestRule rule) {
        boolean frozen = weather.rhizomeTemperature[day] <= FROZEN_GROUND_C && drivers.tmean(day) < 0.0;
        return frozen
                || water.storage().shareOfFieldCapacity(state.soilWater, TRAFFIC_DEPTH_M) <= rule.maxTopsoilWetness();
    }

    private void harvest(int day) {
        if (state.phase == StandState.Phase.GREEN) {
            stand.endCanopy(CanopyEnd.CUT, state);
            noteCanopyEnd(day);
        }
        double moisture = DryDown.wetBasisPct(state.moisture);
        seasons.set(cropYear, SeasonVariable.STANDING_AT_HARVEST, Units.mgHa(stand.standing(state)));
        double harvested = Units.mgHa(stand.cut(state));
        double fresh = harvested / (1.0 - moisture / 100.0);
        seasons.harvestDay[cropYear] = day;
        seasons.set(cropYear, SeasonVariable.HARVESTED, harvested);
        seasons.set(cropYear, SeasonVariable.HARVEST_MOISTURE, moisture);
        seasons.set(cropYear, SeasonVariable.HARVESTED_FRESH, fresh);
        seasons.set(
                cropYear,
                SeasonVariable.BALE_VOLUME,
                1000.0 * harvested / field.crop().get(CropParameter.BALE_DENSITY));
        seasons.set(cropYear, SeasonVariable.ENERGY, EnergyContent.gjHa(field.crop(), harvested, fresh));
        sums.closeCanopy(cropYear, seasons);
        cropYear = -1;
    }

    private void emergeIfDue(int day) {
        boolean waiting = state.planted
                && !state.dead
                && seasons.emergenceDay[year] == SeasonColumns.NO_DAY
                && !seasons.winterKilled[year];
        if (!waiting || !stand.emerges(day, state)) {
            return;
        }
        if (state.phase != StandState.Phase.BARE) {
            harvest(day);
        }
        seasons.set(year, SeasonVariable.RESERVE_AT_EMERGENCE, state.reserve);
        stand.emerge(state);
        if (state.dead) {
            seasons.winterKilled[year] = true;
            return;
        }
        water.roots().setDepth(stand.rootDepth(state));
        cropYear = year;
        seasons.emergenceDay[year] = day;
        seasons.set(year, SeasonVariable.SHOOTS, state.shoots);
        seasons.set(year, SeasonVariable.PLANTS, state.plants);
        sums.openCanopy();
    }

    /** Closes the canopy's columns on the day it stops being green. */
    private void noteCanopyEnd(int day) {
        if (cropYear < 0
                || state.phase != StandState.Phase.STANDING
                || seasons.canopyEndDay[cropYear] != SeasonColumns.NO_DAY) {
            return;
        }
        seasons.canopyEndDay[cropYear] = day;
        seasons.canopyEnd[cropYear] = state.canopyEnd;
        seasons.set(cropYear, SeasonVariable.HEIGHT, state.height);
        int days = Math.max(1, Math.min(interceptedBySeasonDay.length, day - seasons.emergenceDay[cropYear]));
        seasons.set(cropYear, SeasonVariable.MEAN_WATER_FACTOR, sums.meanWaterFactor(days));
        seasons.fullCanopyDay[cropYear] = seasons.emergenceDay[cropYear] + fullCanopyAfter(days);
    }

    /** Days from emergence until nine tenths of the season's highest interception. */
    private int fullCanopyAfter(int days) {
        double highest = 0.0;
        for (int i = 0; i < days; i++) {
            highest = Math.max(highest, interceptedBySeasonDay[i]);
        }
        int first = 0;
        while (first < days - 1 && interceptedBySeasonDay[first] < 0.9 * highest) {
            first++;
        }
        return first;
    }

    private void noteWindowStart(int day) {
        if (day == windowFrom) {
            sums.openWindow();
            seasons.set(year, SeasonVariable.SOIL_WATER_START, water.storage().total(state.soilWater));
            snowBefore = day > 0 ? weather.snowWater[day - 1] : 0.0;
        }
    }

    private void noteSeason(int day) {
        if (day >= windowFrom && day <= windowTo) {
            noteWater(day);
        }
        if (cropYear < 0) {
            return;
        }
        sums.seeStanding(stand.standing(state));
        if (state.phase == StandState.Phase.GREEN) {
            noteCanopy(day);
        }
    }

    private void noteCanopy(int day) {
        int seasonDay = day - seasons.emergenceDay[cropYear];
        if (seasonDay < interceptedBySeasonDay.length) {
            interceptedBySeasonDay[seasonDay] = state.interceptedFraction;
        }
        sums.addCanopy(weather.par[day], state);
    }

    private void noteWater(int day) {
        sums.addWater(day, drivers, state);
        if (day == windowTo) {
            sums.closeWindow(year, seasons);
            seasons.set(year, SeasonVariable.SOIL_WATER_END, water.storage().total(state.soilWater));
            seasons.set(year, SeasonVariable.SNOW_CHANGE, weather.snowWater[day] - snowBefore);
        }
    }

    private void record(int day, DailyResults results) {
        DayRecorder.record(day, drivers, weather, state, stand, water, results);
    }
}
