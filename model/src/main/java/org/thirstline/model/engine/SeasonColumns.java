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
        for (double[] row : values) {
            Arrays.fill(row, Double.NaN);
        }
        age = new int[years];
        emergenceDay = filled(years);
        fullCanopyDay = filled(years);
        canopyEndDay = filled(years);
        harvestDay = filled(years);
        canopyEnd = new CanopyEnd[years];
        planted = new boolean[years];
        winterKilled = new boolean[years];
        reserveAtYearStart = new double[years];
    }

    private static int[] filled(int length) {
        int[] days = new int[length];
        Arrays.fill(days, NO_DAY);
        return days;
    }

    double get(int year, SeasonVariable variable) {
        return values[year][variable.ordinal()];
    }

    void set(int year, SeasonVariable variable, double value) {
        values[year][variable.ordinal()] = value;
    }

    void add(int year, SeasonVariable variable, double value) {
        double[] row = values[year];
        int column = variable.ordinal();
        row[column] = Double.isNaN(row[column]) ? value : row[column] + value;
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
