package org.thirstline.model.climate;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import org.thirstline.model.error.Check;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Monthly rain totals without gaps in time; a month that is not known well enough is NaN. Immutable and thread-safe. */
public final class MonthlyRain {

    private final YearMonth first;
    private final double[] totalsMm;

    private MonthlyRain(YearMonth first, double[] totalsMm) {
        this.first = first;
        this.totalsMm = totalsMm;
    }

    /**
     * Takes monthly totals as they are.
     *
     * @param first month of the first total
     * @param totalsMm rain of each month [mm], not negative, NaN where unknown; copied
     */
    public static MonthlyRain ofTotals(YearMonth first, double[] totalsMm) {
        for (double total : totalsMm) {
            if (!Double.isNaN(total)) {
                Check.range("monthly rain", total, "mm", 0.0, 20_000.0);
            }
        }
        return new MonthlyRain(first, totalsMm.clone());
    }

    /**
     * Sums daily rain by calendar month. Months that the series does not hold from first to last day are unknown.
     *
     * @param weather daily weather
     * @param maximumFilledDays a month with more unmeasured rain days than this is unknown [d]
     */
    public static MonthlyRain of(WeatherSeries weather, int maximumFilledDays) {
        YearMonth first = YearMonth.from(weather.start());
        double[] totals = new double[(int) first.until(YearMonth.from(weather.end()), ChronoUnit.MONTHS) + 1];
        for (int day = 0; day < weather.days(); day++) {
            totals[(int) first.until(YearMonth.from(weather.date(day)), ChronoUnit.MONTHS)] +=
                    weather.value(WeatherVariable.RAIN, day);
        }
        for (int month = 0; month < totals.length; month++) {
            if (!isKnown(weather, first.plusMonths(month), maximumFilledDays)) {
                totals[month] = Double.NaN;
            }
        }
        return new MonthlyRain(first, totals);
    }

    private static boolean isKnown(WeatherSeries weather, YearMonth month, int maximumFilledDays) {
        LocalDate start = month.atDay(1);
        LocalDate end = month.atEndOfMonth();
        if (start.isBefore(weather.start()) || end.isAfter(weather.end())) {
            return false;
        }
        int measured =
                weather.count(WeatherVariable.RAIN, Origin.MEASURED, weather.indexOf(start), weather.indexOf(end));
        return month.lengthOfMonth() - measured <= maximumFilledDays;
    }

    /** Returns the number of months. */
    public int months() {
        return totalsMm.length;
    }

    /**
     * Returns a calendar month.
     *
     * @param index 0 is the first month
     */
    public YearMonth month(int index) {
        return first.plusMonths(index);
    }

    /**
     * Returns the index of a calendar month, which may lie outside.
     *
     * @param month any month
     */
    public int indexOf(YearMonth month) {
        return (int) first.until(month, ChronoUnit.MONTHS);
    }

    /** Returns a copy of the totals [mm], NaN where unknown. */
    public double[] totalsMm() {
        return totalsMm.clone();
    }

    /**
     * Returns totals over a month and those before it.
     *
     * @param length number of months to add up
     * @return [mm] by month, NaN where a month is unknown or before the start
     */
    double[] runningTotalsMm(int length) {
        double[] sums = new double[totalsMm.length];
        Arrays.fill(sums, Double.NaN);
        for (int end = length - 1; end < sums.length; end++) {
            double sum = 0.0;
            for (int month = end - length + 1; month <= end; month++) {
                sum += totalsMm[month];
            }
            sums[end] = sum;
        }
        return sums;
    }
}
