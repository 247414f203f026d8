package org.thirstline.model.result;

import java.time.LocalDate;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * One growth year of one stand. A value that does not exist (an unharvested stand's moisture, any yield of a partial year) is NaN; a date
 * that does not exist is null. Immutable and thread-safe.
 */
public final class SeasonRecord {

    private final int growthYear;
    private final int standAge;
    private final SeasonStatus status;
    private final Dates dates;
    private final double[] values;

    /**
     * The dates of a season.
     *
     * @param emergence canopy emergence
     * @param fullCanopy first day with nine tenths of the PAR intercepted that the season ever intercepts
     * @param canopyEnd end of the green canopy
     * @param canopyEndCause its cause
     * @param harvest day of the cut
     */
    public record Dates(
            @Nullable LocalDate emergence,
            @Nullable LocalDate fullCanopy,
            @Nullable LocalDate canopyEnd,
            @Nullable CanopyEnd canopyEndCause,
            @Nullable LocalDate harvest) {}

    /**
     * Creates a record.
     *
     * @param growthYear calendar year in which the growth year starts
     * @param standAge planting year = 1
     * @param status whether the yields can be used
     * @param dates the dates
     * @param values a value for every {@link SeasonVariable}, by ordinal; copied
     */
    public SeasonRecord(int growthYear, int standAge, SeasonStatus status, Dates dates, double[] values) {
        this.growthYear = growthYear;
        this.standAge = standAge;
        this.status = status;
        this.dates = dates;
        this.values = Arrays.copyOf(values, SeasonVariable.values().length);
    }

    /** Returns the calendar year in which the canopy emerges. */
    public int growthYear() {
        return growthYear;
    }

    /** Returns the stand's age in growth years, planting year = 1. */
    public int standAge() {
        return standAge;
    }

    /** Returns whether the yields can be used. */
    public SeasonStatus status() {
        return status;
    }

    /** Returns whether the yields can be used. */
    public boolean isComplete() {
        return status == SeasonStatus.COMPLETE;
    }

    /** Returns the dates. */
    public Dates dates() {
        return dates;
    }

    /**
     * Returns one value, NaN if the season has none.
     *
     * @param variable which column
     */
    public double value(SeasonVariable variable) {
        return values[variable.ordinal()];
    }

    /**
     * Returns this record with one value changed.
     *
     * @param variable which column
     * @param value its new value
     */
    public SeasonRecord with(SeasonVariable variable, double value) {
        double[] changed = values.clone();
        changed[variable.ordinal()] = value;
        return new SeasonRecord(growthYear, standAge, status, dates, changed);
    }
}
