package org.thirstline.model.engine;

import org.thirstline.model.result.CanopyEnd;

/**
 * Everything that changes from day to day. Owned by one run, written by {@link StandSimulation} only, never returned. Pools and accounts
 * in g m⁻² of dry matter, water in mm.
 */
final class StandState {

    /** What the stand above ground is doing. */
    enum Phase {
        /** Nothing green and nothing to cut. */
        BARE,
        /** A green canopy. */
        GREEN,
        /** Dead and standing. */
        STANDING
    }

    // Soil water
    final double[] soilWater;
    double poorlyAeratedDays;

    // Stand
    boolean planted;
    boolean dead;
    int age;
    double plants;
    double groundCover;
    double shoots;
    double largestLeafArea;
    double emergingLeafArea;
    double ageFactor;

    // Phenology
    Phase phase = Phase.BARE;
    double emergenceThermalTime;
    double leafThermalTime;
    boolean leafGrowthEnded;
    boolean autumn;
    double coldestRhizome = Double.POSITIVE_INFINITY;
    CanopyEnd canopyEnd = CanopyEnd.SENESCENCE;

    // Pools
    double leafAreaIndex;
    double deadLeaf;
    double stem;
    double reserve;
    double litter;
    double height;
    double heightFactor;
    double moisture;

    // Accounts since the start of the run
    double plantedReserve;
    double grown;
    double harvested;
    double respired;
    double turnedOver;
    double winterKilled;
    double litterDecayed;
    double reserveGranted;

    // Fluxes and factors of today
    double todayGrowth;
    double irrigation;
    double interception;
    double runoff;
    double drainage;
    double groundwater;
    double soilEvaporation;
    double potentialTranspiration;
    double transpiration;
    double suppliedFromOutside;
    double interceptedFraction;
    double waterFactor = 1.0;
    double leafWaterFactor = 1.0;
    double aerationFactor = 1.0;

    StandState(int layers) {
        soilWater = new double[layers];
    }

    /** Sets everything to the state before a run, but for the soil water. */
    void clear() {
        poorlyAeratedDays = 0.0;
        planted = false;
        dead = false;
        plants = 0.0;
        groundCover = 0.0;
        shoots = 0.0;
        largestLeafArea = 0.0;
        emergingLeafArea = 0.0;
        ageFactor = 0.0;
        coldestRhizome = Double.POSITIVE_INFINITY;
        canopyEnd = CanopyEnd.SENESCENCE;
        reserve = 0.0;
        litter = 0.0;
        moisture = 0.0;
        interceptedFraction = 0.0;
        clearAboveGround();
        clearAccounts();
    }

    private void clearAccounts() {
        plantedReserve = 0.0;
        grown = 0.0;
        harvested = 0.0;
        respired = 0.0;
        turnedOver = 0.0;
        winterKilled = 0.0;
        litterDecayed = 0.0;
        reserveGranted = 0.0;
    }

    /** Clears what the canopy left behind, after a cut or before a new season. */
    void clearAboveGround() {
        leafAreaIndex = 0.0;
        deadLeaf = 0.0;
        stem = 0.0;
        height = 0.0;
        heightFactor = 0.0;
        phase = Phase.BARE;
    }
}
