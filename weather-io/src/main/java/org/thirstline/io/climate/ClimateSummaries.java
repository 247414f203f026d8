package org.thirstline.io.climate;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.thirstline.io.climate.ClimateSummary.ClimateNormal;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.climate.GammaFit;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.NormalPeriod;
import org.thirstline.model.climate.StandardizedPrecipitation;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Summarises the climate of a record. Growing season: April to September in the north, October to March in the south. */
public final class ClimateSummaries {

    private static final int INDEX_MONTHS = 3;
    private static final int[] SHARES_PCT = {10, 50, 90};
    private static final double FROST_C = 0.0;

    private final WeatherSeries series;
    private final DailyDrivers drivers;
    private final boolean southern;

    private ClimateSummaries(WeatherRecord record) {
        series = record.series();
        drivers = DailyDrivers.of(record.site(), series);
        southern = record.site().isSouthern();
    }

    /**
     * Summarises the years of a record that lie between two years; months that are not whole are left out.
     *
     * @param record the weather
     * @param firstYear first calendar year
     * @param lastYear last calendar year
     */
    public static ClimateSummary of(WeatherRecord record, int firstYear, int lastYear) {
        return new ClimateSummaries(record).summary(firstYear, lastYear);
    }

    /** Summarises all years of a record. */
    public static ClimateSummary of(WeatherRecord record) {
        return of(
                record, record.series().start().getYear(), record.series().end().getYear());
    }

    private ClimateSummary summary(int firstYear, int lastYear) {
        List<ClimateNormal> months = new ArrayList<>();
        for (int month = 1; month <= 12; month++) {
            months.add(normal(month < 10 ? "0" + month : Integer.toString(month), month, 1, firstYear, lastYear));
        }
        List<double[]> frosts = new ArrayList<>();
        for (int year = firstYear; year <= lastYear; year++) {
            double[] dates = frosts(year);
            if (dates.length > 0) {
                frosts.add(dates);
            }
        }
        MonthlyRain rain = MonthlyRain.of(series, NormalPeriod.DEFAULT_MAXIMUM_FILLED_DAYS);
        double length =
                frosts.stream().mapToDouble(d -> d[1] - d[0] - 1.0).average().orElse(Double.NaN);
        return new ClimateSummary(
                firstYear,
                lastYear,
                months,
                normal("season", southern ? 10 : 4, 6, firstYear, lastYear),
                byShare(frosts, 0),
                byShare(frosts, 1),
                length,
                frosts.size(),
                rain,
                StandardizedPrecipitation.of(rain, INDEX_MONTHS, GammaFit.Method.MAXIMUM_LIKELIHOOD));
    }

    /** Means over the years in which all these months are whole. */
    private ClimateNormal normal(String name, int firstMonth, int months, int firstYear, int lastYear) {
        double[] sums = new double[6];
        int years = 0;
        int days = 0;
        for (int year = firstYear; year <= lastYear; year++) {
            YearMonth first = YearMonth.of(year, firstMonth);
            int from = series.indexOf(first.atDay(1));
            int to = series.indexOf(first.plusMonths(months - 1L).atEndOfMonth());
            if (from < 0 || to >= series.days()) {
                continue;
            }
            years++;
            days += to - from + 1;
            for (int day = from; day <= to; day++) {
                sums[0] += drivers.tmin(day);
                sums[1] += drivers.tmax(day);
                sums[2] += drivers.rain(day);
                sums[3] += drivers.solar(day);
                sums[4] += drivers.et0(day);
            }
            sums[5] += series.count(WeatherVariable.RAIN, Origin.MEASURED, from, to);
        }
        return new ClimateNormal(
                name,
                sums[0] / days,
                sums[1] / days,
                sums[2] / years,
                sums[3] / days,
                sums[4] / years,
                years,
                100.0 * sums[5] / days);
    }

    /**
     * Last frost before and first frost after the middle of summer, as days of the year counted from 1 January (in the south from 1
     * July); empty for a year that is not whole or has no frost on both sides.
     */
    private double[] frosts(int year) {
        LocalDate start = southern ? LocalDate.of(year, 7, 1) : LocalDate.of(year, 1, 1);
        LocalDate end = start.plusYears(1).minusDays(1);
        int from = series.indexOf(start);
        int to = series.indexOf(end);
        if (from < 0 || to >= series.days()) {
            return new double[0];
        }
        int middle = series.indexOf(start.plusMonths(6).plusDays(14));
        int last = middle;
        while (last >= from && drivers.tmin(last) >= FROST_C) {
            last--;
        }
        int first = middle;
        while (first <= to && drivers.tmin(first) >= FROST_C) {
            first++;
        }
        boolean both = last >= from && first <= to && first != last;
        return both ? new double[] {last - from + 1.0, first - from + 1.0} : new double[0];
    }

    private static List<FrostDate> byShare(List<double[]> frosts, int which) {
        double[] sorted =
                frosts.stream().mapToDouble(dates -> dates[which]).sorted().toArray();
        return Arrays.stream(SHARES_PCT)
                .filter(share -> sorted.length > 0)
                .mapToObj(share -> new FrostDate(share, quantile(sorted, share / 100.0)))
                .toList();
    }

    /** Linear between order statistics, position (n - 1) p. */
    private static double quantile(double[] sorted, double share) {
        double position = share * (sorted.length - 1);
        int below = (int) position;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }
}
