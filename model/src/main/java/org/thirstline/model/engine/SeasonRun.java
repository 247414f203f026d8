package org.thirstline.model.engine;

import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;

/** One season-only run whose result is its own and is written anew by each {@link #run}, which allocates nothing. Confined to one thread. */
public final class SeasonRun {

    private final StandSimulation simulation;
    private final YearTable table;
    private final SeasonRecords records;
    private final SeasonColumns columns;

    SeasonRun(StandSimulation simulation, YearTable table, SeasonRecords records) {
        this.simulation = simulation;
        this.table = table;
        this.records = records;
        columns = simulation.columns();
    }

    /** Runs every day of the weather. */
    public void run() {
        simulation.run();
    }

    /** Returns the first growth year of the weather. */
    public int firstYear() {
        return table.firstYear;
    }

    /** Returns the number of growth years that the weather touches. */
    public int years() {
        return table.years;
    }

    /**
     * Says whether a year's yield can be compared with others.
     *
     * @param growthYear from {@link #firstYear} on
     */
    public SeasonStatus status(int growthYear) {
        return records.status(growthYear - table.firstYear, columns);
    }

    /**
     * Returns a value of the last run.
     *
     * @param growthYear from {@link #firstYear} on
     * @param variable which value
     * @return in the variable's unit; NaN for what does not exist, as any yield of a year that is not complete
     */
    public double value(int growthYear, SeasonVariable variable) {
        boolean hidden = variable.isYield() && status(growthYear) != SeasonStatus.COMPLETE;
        return hidden ? Double.NaN : columns.get(growthYear - table.firstYear, variable);
    }
}
