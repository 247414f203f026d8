package org.thirstline.model.engine;

/**
 * Which limits a run knows. Runs that differ in one of them give the steps of the yield ledger. Immutable and thread-safe.
 *
 * @param unlimitedWater whether every lack of water is made good from outside
 * @param aeration whether poor aeration slows growth
 * @param frost whether frost kills leaf, plants and canopy
 * @param mature whether the stand is full-grown and unageing whatever its age
 */
record Scenario(boolean unlimitedWater, boolean aeration, boolean frost, boolean mature) {

    /** The stand as it is. */
    static final Scenario ACTUAL = new Scenario(false, true, true, false);

    /** The stand as it is, never short of water. */
    static final Scenario WELL_WATERED = new Scenario(true, true, true, false);

    /** The stand as it is, on soil that is never short of air. */
    static final Scenario AERATED = new Scenario(false, false, true, false);

    /** A full-grown stand without any limit but light and temperature. */
    static final Scenario POTENTIAL = new Scenario(true, false, false, true);

    /** The stand's age is the only limit. */
    static final Scenario AGE = new Scenario(true, false, false, false);

    /** Age and lack of water. */
    static final Scenario AGE_DROUGHT = new Scenario(false, false, false, false);

    /** Age, lack of water and lack of air. */
    static final Scenario AGE_DROUGHT_AIR = new Scenario(false, true, false, false);
}
