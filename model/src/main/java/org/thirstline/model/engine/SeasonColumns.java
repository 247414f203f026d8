package org.thirstline.model.engine;

import java.time.LocalDate;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.result.CanopyEnd;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;

/** Season totals by growth year, written by one run while it lasts. */
final class SeasonColumns {

    static final int NO_DAY = -1;

    final int firstYear;
    final int years;
    final double[][] values;
    final int[] age;
    final int[] emergenceDay;
    final int[] fullCanopyDay;
    final int[] canopyEndDay;
    final int[] harvestDay;
    final @Nullable CanopyEnd[] canopyEnd;
    final boolean[] planted;
    final boolean[] winterKilled;
    final double[] reserveAtYearStart;

    SeasonColumns(int firstYear, int years) {
        this.firstYear = firstYear;
        this.years = years;
        values = new double[years][SeasonVariable.values().length];
        age = new int[years];
        emergenceDay = new int[years];
        fullCanopyDay = new int[years];
        canopyEndDay = new int[years];
        harvestDay = new int[years];
        canopyEnd = new CanopyEnd[years];
        planted = new boolean[years];
        winterKilled = new boolean[years];
        reserveAtYearStart = new double[years];
        clear();
    }

    /** Empties every column, for another run. */
    void clear() {
        for (double[] row : values) {
            Arrays.fill(row, Double.NaN);
        }
        Arrays.fill(age, 0);
        Arrays.fill(emergenceDay, NO_DAY);
        Arrays.fill(fullCanopyDay, NO_DAY);
        Arrays.fill(canopyEndDay, NO_DAY);
        Arrays.fill(harvestDay, NO_DAY);
        Arrays.fill(canopyEnd, null);
        Arrays.fill(planted, false);
        Arrays.fill(winterKilled, false);
        Arrays.fill(reserveAtYearStart, 0.0);
    }

    double get(int year, SeasonVariable variable) {
        return values[year][variable.ordinal()];
    }

    void set(int year, SeasonVariable variable, double value) {
        values[year][variable.ordinal()] = value;
    }

    /** Makes the record of a year; the yields of a year that is not complete are left out. */
    SeasonRecord record(int year, SeasonStatus status, LocalDate start) {
        SeasonRecord.Dates dates = new SeasonRecord.Dates(
                date(start, emergenceDay[year]),
                date(start, fullCanopyDay[year]),
                date(start, canopyEndDay[year]),
                canopyEnd[year],
                date(start, harvestDay[year]));
        return new SeasonRecord(firstYear + year, age[year], status, dates, values[year]);
    }

    private static @Nullable LocalDate date(LocalDate start, int day) {
        return day == NO_DAY ? null : start.plusDays(day);
    }
}
