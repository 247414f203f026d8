package org.thirstline.model.engine;

import java.time.LocalDate;
import java.util.List;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;

/**
 * Many season-only runs over one weather series, for fits, samples and sweeps: what follows from weather alone is computed once, what follows
 * from weather and the crop's temperature limits once for runs in a row that share them. Thread-safe: threads may share one, results do not
 * depend on which of them came first.
 */
public final class SeasonRuns {

    private final DailyDrivers drivers;
    private final int maxFilledDays;
    private volatile Terms last;

    /** What runs with the same field calendar and the same temperature limits share. */
    private record Terms(FieldConditions field, CropWeather weather, YearTable table, SeasonRecords records) {}

    /**
     * Prepares runs.
     *
     * @param drivers site and weather
     * @param like a field of the kind that will be run, to prepare for
     * @param maxFilledDays days of a growth year on which rain, or temperature, may be filled from the climatology before its yields are
     *     left out [d]
     */
    public SeasonRuns(DailyDrivers drivers, FieldConditions like, int maxFilledDays) {
        this.drivers = drivers;
        this.maxFilledDays = maxFilledDays;
        last = terms(like, new CropWeather(drivers, like.crop()));
    }

    private Terms terms(FieldConditions field, CropWeather weather) {
        YearTable table = new YearTable(drivers.site(), drivers.weather(), field.season(), field.harvest());
        return new Terms(field, weather, table, new SeasonRecords(drivers, table, maxFilledDays));
    }

    private Terms termsOf(FieldConditions field) {
        Terms known = last;
        if (known.field.crop() == field.crop() && sameCalendar(known.field, field)) {
            return known;
        }
        CropWeather weather = known.weather.forCrop(field.crop());
        Terms next = sameCalendar(known.field, field)
                ? new Terms(field, weather, known.table, known.records)
                : terms(field, weather);
        last = next;
        return next;
    }

    private static boolean sameCalendar(FieldConditions a, FieldConditions b) {
        return a.season().equals(b.season()) && a.harvest().equals(b.harvest());
    }

    /**
     * Simulates a stand as it is.
     *
     * @param field crop, stand, soil and management
     * @return the seasons; what only paired runs can tell is NaN
     */
    public List<SeasonRecord> simulate(FieldConditions field) {
        Terms terms = termsOf(field);
        return terms.records.of(simulation(field, terms, Scenario.ACTUAL).run());
    }

    /**
     * Simulates a stand as it is and the same never short of water, cut on the same days.
     *
     * @param field crop, stand, soil and management
     * @return the seasons with potential harvest and drought penalty; what only the other paired runs can tell is NaN
     */
    public List<SeasonRecord> simulateWithPotential(FieldConditions field) {
        Terms terms = termsOf(field);
        SeasonColumns actual = simulation(field, terms, Scenario.ACTUAL).run();
        SeasonColumns watered =
                simulation(field, terms, Scenario.WELL_WATERED).cutWith(actual).run();
        for (int year = 0; year < terms.table.years; year++) {
            PairedRuns.penalise(year, actual, watered);
        }
        return terms.records.of(actual);
    }

    /**
     * Simulates a stand as it is, and keeps what can be measured in the field on a few days.
     *
     * @param field crop, stand, soil and management
     * @param watchedDays indices of the days to keep, in ascending order; not modified
     */
    public WatchedRun simulate(FieldConditions field, int[] watchedDays) {
        Terms terms = termsOf(field);
        StandSimulation simulation = simulation(field, terms, Scenario.ACTUAL);
        if (watchedDays.length == 0) {
            return new WatchedRun(terms.records.of(simulation.run()), null);
        }
        WatchedDays watched = new WatchedDays(watchedDays, field.soil(), simulation.gramsPerLeafArea());
        return new WatchedRun(terms.records.of(simulation.observedBy(watched).run()), watched);
    }

    /**
     * Returns the day on which a growth year's stand is cut at the latest: no weather after it changes the year's yield.
     *
     * @param site where
     * @param growthYear which year
     * @param harvest when it is cut
     */
    public static LocalDate lastHarvestDay(Site site, int growthYear, HarvestRule harvest) {
        return YearTable.harvestUntil(site, growthYear, harvest);
    }

    /**
     * Prepares a run that can be repeated into the same result.
     *
     * @param field crop, stand, soil and management
     */
    public SeasonRun prepare(FieldConditions field) {
        Terms terms = termsOf(field);
        return new SeasonRun(simulation(field, terms, Scenario.ACTUAL), terms.table, terms.records);
    }

    private StandSimulation simulation(FieldConditions field, Terms terms, Scenario scenario) {
        return new StandSimulation(drivers, terms.weather, field, terms.table, scenario);
    }
}
