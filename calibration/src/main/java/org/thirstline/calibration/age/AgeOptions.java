package org.thirstline.calibration.age;

import org.thirstline.model.error.Check;

/**
 * How the question of age or weather is put. Immutable and thread-safe.
 *
 * @param establishedAge first stand age taken as established; younger years are left out, and no decline starts before it
 * @param agesPastOnset different ages that must lie past an onset before it is tried, so that one poor year is no decline
 * @param marginPerYear mean decline [fraction per year] that must be ruled out before weather alone is believed
 * @param nullReplicates trials simulated without decline behind each test
 * @param intervalReplicates resamples of years behind each interval
 * @param powerReplicates trials simulated behind each power
 * @param seed seed of all of these
 */
public record AgeOptions(
        int establishedAge,
        int agesPastOnset,
        double marginPerYear,
        int nullReplicates,
        int intervalReplicates,
        int powerReplicates,
        long seed) {

    /** Chance of calling a decline, or a rise, where there is none; the two-sided size of the tests. */
    public static final double SIZE = 0.05;

    /** Share of resamples inside an interval. */
    public static final double COVERAGE = 0.90;

    /** Power that a design must have before it is said to find a decline. */
    public static final double WANTED_POWER = 0.80;

    /** Refuses counts too small to carry the decisions. */
    public AgeOptions {
        Check.range("established age", establishedAge, "years", 1.0, 20.0);
        Check.range("ages past onset", agesPastOnset, "years", 2.0, 20.0);
        Check.range("margin", marginPerYear, "per year", 0.001, 0.5);
        Check.range("replicates without decline", nullReplicates, "", 99.0, 1.0e6);
        Check.range("resamples of years", intervalReplicates, "", 99.0, 1.0e6);
        Check.range("replicates of power", powerReplicates, "", 99.0, 1.0e6);
    }

    /** Returns the usual options: established from age 3, a margin of 2 % a year, 999 replicates (all our choice). */
    public static AgeOptions usual() {
        return new AgeOptions(3, 3, 0.02, 999, 999, 499, 20_240_601L);
    }

    /** Returns these options with another seed. */
    public AgeOptions withSeed(long newSeed) {
        return new AgeOptions(
                establishedAge,
                agesPastOnset,
                marginPerYear,
                nullReplicates,
                intervalReplicates,
                powerReplicates,
                newSeed);
    }

    /** Returns these options with other numbers of replicates. */
    public AgeOptions withReplicates(int ofNull, int ofInterval, int ofPower) {
        return new AgeOptions(establishedAge, agesPastOnset, marginPerYear, ofNull, ofInterval, ofPower, seed);
    }

    /** Returns these options with another first established age. */
    public AgeOptions withEstablishedAge(int age) {
        return new AgeOptions(
                age, agesPastOnset, marginPerYear, nullReplicates, intervalReplicates, powerReplicates, seed);
    }
}
