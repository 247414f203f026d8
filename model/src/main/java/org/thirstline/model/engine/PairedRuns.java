package org.thirstline.model.engine;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.result.YieldLedger;
import org.thirstline.model.soil.LayeredStorage;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Runs over the same weather that differ in one thing, so that each loss has its own number: the stand as it is; the same never short of
 * water; the same with every year's reserve as if water had never been short (what a dry year leaves behind taken out); and the steps of
 * the ledger. All are cut on the days of the first. Immutable and thread-safe.
 */
public final class PairedRuns {

    private final DailyDrivers drivers;
    private final FieldConditions field;
    private final SeasonRecords records;
    private final CropWeather cropWeather;
    private final YearTable table;

    private PairedRuns(DailyDrivers drivers, FieldConditions field, int maxFilledDays) {
        this.drivers = drivers;
        this.field = field;
        cropWeather = new CropWeather(drivers, field.crop());
        table = new YearTable(drivers.site(), drivers.weather(), field.season(), field.harvest());
        records = new SeasonRecords(drivers, table, maxFilledDays);
    }

    /**
     * Simulates a stand with and without lack of water and everything else the yield ledger tells apart.
     *
     * @param drivers site and weather
     * @param field crop, stand, soil and management
     * @param maxFilledDays days of a growth year on which rain, or temperature, may be filled from the climatology before its yields are
     *     left out [d]
     * @return seasons, ledgers and the days of the run on the soil's own water
     */
    public static StandResult simulate(DailyDrivers drivers, FieldConditions field, int maxFilledDays) {
        return new PairedRuns(drivers, field, maxFilledDays).all();
    }

    /**
     * Simulates the stand as it is, without its twins and without daily output, see {@link SeasonRuns} for many.
     *
     * @param drivers site and weather
     * @param field crop, stand, soil and management
     * @param maxFilledDays as above
     * @return the seasons; what only twins can tell is NaN
     */
    public static List<SeasonRecord> simulateActual(DailyDrivers drivers, FieldConditions field, int maxFilledDays) {
        return new SeasonRuns(drivers, field, maxFilledDays).simulate(field);
    }

    private StandSimulation simulation(Scenario scenario) {
        return new StandSimulation(drivers, cropWeather, field, table, scenario);
    }

    private StandResult all() {
        double[] bottoms = new LayeredStorage(field.soil()).bottomsM();
        DailyResults daily = new DailyResults(drivers.weather().start(), drivers.days(), bottoms);
        SeasonColumns actual = simulation(Scenario.ACTUAL).recordTo(daily).run();
        SeasonColumns watered = twinOf(actual, Scenario.WELL_WATERED);
        SeasonColumns aerated = twinOf(actual, Scenario.AERATED);
        SeasonColumns fresh = simulation(Scenario.ACTUAL)
                .reserveFrom(reserveTwin(watered, actual))
                .run();
        for (int year = 0; year < table.years; year++) {
            compare(year, actual, watered, aerated, fresh);
        }
        return new StandResult(records.of(actual), ledgers(actual), daily);
    }

    private SeasonColumns twinOf(SeasonColumns actual, Scenario scenario) {
        return simulation(scenario).cutWith(actual).run();
    }

    /** The reserve of the well-watered run with the harvest days of the actual one. */
    private static SeasonColumns reserveTwin(SeasonColumns watered, SeasonColumns actual) {
        SeasonColumns twin = new SeasonColumns(actual.firstYear, actual.years);
        System.arraycopy(watered.reserveAtYearStart, 0, twin.reserveAtYearStart, 0, actual.years);
        System.arraycopy(actual.harvestDay, 0, twin.harvestDay, 0, actual.years);
        return twin;
    }

    private static void compare(
            int year, SeasonColumns actual, SeasonColumns watered, SeasonColumns aerated, SeasonColumns fresh) {
        penalise(year, actual, watered);
        double harvested = actual.get(year, SeasonVariable.HARVESTED);
        double potential = actual.get(year, SeasonVariable.POTENTIAL_HARVESTED);
        double unspent = fresh.get(year, SeasonVariable.HARVESTED);
        actual.set(year, SeasonVariable.PENALTY_THIS_SEASON, potential - unspent);
        actual.set(year, SeasonVariable.PENALTY_CARRIED_OVER, unspent - harvested);
        actual.set(year, SeasonVariable.EXCESS_WATER_PENALTY, aerated.get(year, SeasonVariable.HARVESTED) - harvested);
    }

    static void penalise(int year, SeasonColumns actual, SeasonColumns watered) {
        double potential = watered.get(year, SeasonVariable.HARVESTED);
        double penalty = potential - actual.get(year, SeasonVariable.HARVESTED);
        actual.set(year, SeasonVariable.POTENTIAL_HARVESTED, potential);
        actual.set(year, SeasonVariable.DROUGHT_PENALTY, penalty);
        actual.set(year, SeasonVariable.DROUGHT_PENALTY_PCT, potential > 0.0 ? 100.0 * penalty / potential : 0.0);
    }

    private List<YieldLedger> ledgers(SeasonColumns actual) {
        SeasonColumns potential = twinOf(actual, Scenario.POTENTIAL);
        SeasonColumns age = twinOf(actual, Scenario.AGE);
        SeasonColumns drought = twinOf(actual, Scenario.AGE_DROUGHT);
        SeasonColumns air = twinOf(actual, Scenario.AGE_DROUGHT_AIR);
        List<YieldLedger> ledgers = new ArrayList<>();
        for (int year = 0; year < table.years; year++) {
            if (actual.planted[year] && records.status(year, actual) == SeasonStatus.COMPLETE) {
                ledgers.add(ledger(year, new SeasonColumns[] {potential, age, drought, air, actual}));
            }
        }
        return ledgers;
    }

    private YieldLedger ledger(int year, SeasonColumns[] runs) {
        double[] peak = new double[runs.length];
        for (int i = 0; i < runs.length; i++) {
            peak[i] = runs[i].get(year, SeasonVariable.PEAK_BIOMASS);
        }
        SeasonColumns actual = runs[runs.length - 1];
        double standing = actual.get(year, SeasonVariable.STANDING_AT_HARVEST);
        double harvested = actual.get(year, SeasonVariable.HARVESTED);
        return new YieldLedger(
                table.firstYear + year,
                peak[0],
                peak[0] - peak[1],
                peak[1] - peak[2],
                peak[2] - peak[3],
                peak[3] - peak[4],
                peak[4] - standing,
                standing - harvested,
                harvested);
    }
}
