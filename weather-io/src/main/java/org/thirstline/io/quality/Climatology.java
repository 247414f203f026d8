package org.thirstline.io.quality;

/** What is usual at a time of year: means over all years of a record within some days of each date. Immutable and thread-safe. */
final class Climatology {

    private final double[] means;

    /**
     * Takes the means of a column.
     *
     * @param calendar of the column
     * @param from first day of the column that counts
     * @param end the day after the last one
     * @param values NaN where missing; at least one of those that count is not
     * @param halfWindowDays days on either side of a date that count with it
     * @param enough values that make a mean; with fewer the window widens
     */
    Climatology(RecordCalendar calendar, int from, int end, double[] values, int halfWindowDays, int enough) {
        double[] sums = new double[RecordCalendar.DATES];
        int[] counts = new int[RecordCalendar.DATES];
        int total = 0;
        for (int day = from; day < end; day++) {
            if (!Double.isNaN(values[day])) {
                int date = calendar.date(day);
                sums[date] += values[day];
                counts[date]++;
                total++;
            }
        }
        means = new double[RecordCalendar.DATES];
        int needed = Math.max(1, Math.min(enough, total));
        for (int date = 0; date < RecordCalendar.DATES; date++) {
            means[date] = mean(date, sums, counts, halfWindowDays, needed);
        }
    }

    private static double mean(int date, double[] sums, int[] counts, int halfWindowDays, int needed) {
        double sum = sums[date];
        int count = counts[date];
        // at half a year either side all dates are in, the opposite one twice
        for (int away = 1; away <= RecordCalendar.DATES / 2 && (away <= halfWindowDays || count < needed); away++) {
            int before = Math.floorMod(date - away, RecordCalendar.DATES);
            int after = (date + away) % RecordCalendar.DATES;
            sum += sums[before] + sums[after];
            count += counts[before] + counts[after];
        }
        return sum / count;
    }

    /** Returns the mean at a date of the year, 0 on 1 January. */
    double at(int date) {
        return means[date];
    }
}
