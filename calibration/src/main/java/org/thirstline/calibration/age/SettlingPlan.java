package org.thirstline.calibration.age;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a trial could have found, and what would settle the question. Immutable and thread-safe.
 *
 * @param onsetAge last stand age before the declines tried
 * @param smallestFoundPerYear smallest decline that this trial finds in 80 % of cases [fraction per year]; empty if none
 * @param powers powers of this design (first) and of others
 */
public record SettlingPlan(int onsetAge, OptionalDouble smallestFoundPerYear, List<PowerPoint> powers) {

    /** The slower decline asked about [fraction per year]. */
    public static final double SLOW = 0.02;

    /** The faster one. */
    public static final double FAST = 0.05;

    /** Onset looked for where the trial is old enough (our choice, in the middle of published ones). */
    private static final int USUAL_ONSET = 6;

    private static final int[] MORE_YEARS = {2, 4, 6, 8, 10, 15};

    private static final int[] PLOTS_TIMES = {2, 4};

    private static final int[] NEW_PLANTINGS = {1, 2};

    private static final int[] YEARS_BESIDE_NEW = {6, 10, 15};

    private static final int YEARS_APART = 3;

    /** Kinds of change to a design. */
    public enum Change {
        /** None: the trial as it is. */
        AS_IS,
        /** The same plots for more years. */
        MORE_YEARS,
        /** More plots in the same years. */
        MORE_PLOTS,
        /** New plantings beside the old one, for more years. */
        NEW_PLANTINGS
    }

    /**
     * Power of one design.
     *
     * @param change what is changed
     * @param moreYears years added
     * @param plotsTimes plots, as a multiple
     * @param newPlantings plantings added, three years apart
     * @param powerAtSlow share of trials in which 2 % a year is found
     * @param powerAtFast share in which 5 % a year is found
     */
    public record PowerPoint(
            Change change, int moreYears, int plotsTimes, int newPlantings, double powerAtSlow, double powerAtFast) {}

    /**
     * Works out the plan for a trial.
     *
     * @param data the trial, with simulated yields
     * @param scatter as found by the fit
     */
    public static SettlingPlan of(TrialData data, VarianceParts scatter, AgeOptions options) {
        int onset = onset(data, options);
        DetectionPower asIs = DetectionPower.of(data, scatter, options);
        List<PowerPoint> powers = new ArrayList<>();
        powers.add(new PowerPoint(Change.AS_IS, 0, 1, 0, asIs.of(onset, SLOW), asIs.of(onset, FAST)));
        Planner planner = new Planner(onset, scatter, options);
        for (int years : MORE_YEARS) {
            powers.add(planner.point(Change.MORE_YEARS, years, 1, 0, TrialPlans.continued(data, years)));
        }
        for (int times : PLOTS_TIMES) {
            powers.add(planner.point(Change.MORE_PLOTS, 0, times, 0, TrialPlans.withPlotsTimes(data, times)));
        }
        for (int plantings : NEW_PLANTINGS) {
            for (int years : YEARS_BESIDE_NEW) {
                TrialData plan = TrialPlans.withNewPlantings(data, plantings, YEARS_APART, years);
                powers.add(planner.point(Change.NEW_PLANTINGS, years, 1, plantings, plan));
            }
        }
        return new SettlingPlan(onset, asIs.smallestFound(onset), List.copyOf(powers));
    }

    private static int onset(TrialData data, AgeOptions options) {
        int latest = data.oldestAge() - options.agesPastOnset();
        return Math.max(options.establishedAge(), Math.min(USUAL_ONSET, latest));
    }

    /** Returns the smallest change of a kind that finds a decline of 5 % a year (or 2 %) in 80 % of trials; empty if none tried does. */
    public Optional<PowerPoint> smallestThatFinds(Change change, boolean fast) {
        return powers.stream()
                .filter(point -> point.change() == change)
                .filter(point -> (fast ? point.powerAtFast() : point.powerAtSlow()) >= AgeOptions.WANTED_POWER)
                .findFirst();
    }

    private record Planner(int onset, VarianceParts scatter, AgeOptions options) {

        PowerPoint point(Change change, int moreYears, int times, int plantings, TrialData plan) {
            DetectionPower power = DetectionPower.of(plan, scatter, options);
            return new PowerPoint(change, moreYears, times, plantings, power.of(onset, SLOW), power.of(onset, FAST));
        }
    }
}
