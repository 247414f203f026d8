package org.thirstline.io.quality;

import java.time.LocalDate;

/** What is usual at a time of year: means over all years of a record within some days of each date. */
final class Climatology {

    private static final int SLOTS = 366;

    private final double[] means;

    /**
     * Takes the means of a column.
     *
     * @param first date of the first value
     * @param values NaN where missing; at least one is not
     * @param halfWindowDays days on either side of a date that count with it
     * @param enough values that make a mean; with fewer the window widens
     */
    Climatology(LocalDate first, double[] values, int halfWindowDays, int enough) {
        double[] sums = new double[SLOTS];
        int[] counts = new int[SLOTS];
        int total = 0;
        for (int day = 0; day < values.length; day++) {
            if (!Double.isNaN(values[day])) {
                int slot = slot(first.plusDays(day));
                sums[slot] += values[day];
                counts[slot]++;
                total++;
            }
        }
        means = new double[SLOTS];
        int needed = Math.max(1, Math.min(enough, total));
        for (int slot = 0; slot < SLOTS; slot++) {
            means[slot] = mean(slot, sums, counts, halfWindowDays, needed);
        }
    }

    private static double mean(int slot, double[] sums, int[] counts, int halfWindowDays, int needed) {
        double sum = sums[slot];
        int count = counts[slot];
        // at half a year either side all slots are in, the opposite one twice
        for (int away = 1; away <= SLOTS / 2 && (away <= halfWindowDays || count < needed); away++) {
            int before = Math.floorMod(slot - away, SLOTS);
            int after = (slot + away) % SLOTS;
            sum += sums[before] + sums[after];
            count += counts[before] + counts[after];
        }
        return sum / count;
    }

    /** Returns the mean at a date. */
    double at(LocalDate date) {
        return means[slot(date)];
    }

    /** Same date, same slot in every year: the day of a leap year, 0 on 1 January. */
    private static int slot(LocalDate date) {
        int dayOfYear = date.getDayOfYear() - 1;
        boolean afterFebruary = date.getMonthValue() > 2;
        return afterFebruary && !date.isLeapYear() ? dayOfYear + 1 : dayOfYear;
    }
}
