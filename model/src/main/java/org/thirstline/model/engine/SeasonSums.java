package org.thirstline.model.engine;

import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.units.Bound;
import org.thirstline.model.units.Units;
import org.thirstline.model.weather.DailyDrivers;

/** What a growing season has added up so far, put into the year's columns when it is complete. Confined to one run. */
final class SeasonSums {

    /** Water factor below which a day counts as stressed. */
    private static final double STRESSED_BELOW = 0.9;

    // Of the growing-season window
    private double rain;
    private double et0;
    private double transpiration;
    private double soilEvaporation;
    private double runoff;
    private double drainage;
    private double interception;
    private double irrigation;
    private double groundwater;

    // Of the canopy
    private double interceptedPar;
    private double waterFactor;
    private double stressedDays;
    private double largestLeafArea;
    private double peakStanding;

    void openWindow() {
        rain = 0.0;
        et0 = 0.0;
        transpiration = 0.0;
        soilEvaporation = 0.0;
        runoff = 0.0;
        drainage = 0.0;
        interception = 0.0;
        irrigation = 0.0;
        groundwater = 0.0;
    }

    void addWater(int day, DailyDrivers drivers, StandState s) {
        rain += drivers.rain(day);
        et0 += drivers.et0(day);
        transpiration += s.transpiration;
        soilEvaporation += s.soilEvaporation;
        runoff += s.runoff;
        drainage += s.drainage;
        interception += s.interception;
        irrigation += s.irrigation;
        groundwater += s.groundwater;
    }

    void closeWindow(int year, SeasonColumns seasons) {
        seasons.set(year, SeasonVariable.SEASON_RAIN, rain);
        seasons.set(year, SeasonVariable.SEASON_ET0, et0);
        seasons.set(year, SeasonVariable.TRANSPIRATION, transpiration);
        seasons.set(year, SeasonVariable.SOIL_EVAPORATION, soilEvaporation);
        seasons.set(year, SeasonVariable.RUNOFF, runoff);
        seasons.set(year, SeasonVariable.DRAINAGE, drainage);
        seasons.set(year, SeasonVariable.INTERCEPTION, interception);
        seasons.set(year, SeasonVariable.IRRIGATION, irrigation);
        seasons.set(year, SeasonVariable.GROUNDWATER, groundwater);
    }

    void openCanopy() {
        interceptedPar = 0.0;
        waterFactor = 0.0;
        stressedDays = 0.0;
        largestLeafArea = 0.0;
        peakStanding = 0.0;
    }

    void addCanopy(double par, StandState s) {
        interceptedPar += par * s.interceptedFraction;
        waterFactor += s.waterFactor;
        stressedDays += s.waterFactor < STRESSED_BELOW ? 1.0 : 0.0;
        largestLeafArea = Bound.atLeast(s.leafAreaIndex, largestLeafArea);
    }

    /** Mean water factor of the canopy's days. */
    double meanWaterFactor(int days) {
        return Math.min(1.0, waterFactor / days);
    }

    void seeStanding(double standing) {
        peakStanding = Bound.atLeast(standing, peakStanding);
    }

    void closeCanopy(int year, SeasonColumns seasons) {
        seasons.set(year, SeasonVariable.INTERCEPTED_PAR, interceptedPar);
        seasons.set(year, SeasonVariable.STRESSED_DAYS, stressedDays);
        seasons.set(year, SeasonVariable.MAX_LEAF_AREA_INDEX, largestLeafArea);
        seasons.set(year, SeasonVariable.PEAK_BIOMASS, Units.mgHa(peakStanding));
    }
}
