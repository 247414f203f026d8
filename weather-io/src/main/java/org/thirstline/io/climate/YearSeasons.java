package org.thirstline.io.climate;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.model.weather.DailyDrivers;

/**
 * Finds frost and growth in each year. Frost is a minimum below 0 °C. The growing season by temperature is that of the expert team on
 * climate change detection and indices (Zhang and others 2011, WIREs Climate Change 2:851-870; definition from memory): from the first
 * six days running with a mean above 5 °C to the first six days below it after midsummer. Confined to one summary.
 */
final class YearSeasons {

    private static final int[] SHARES_PCT = {10, 20, 50, 80, 90};
    private static final double FROST_C = 0.0;
    private static final double GROWTH_C = 5.0;
    private static final int RUN_DAYS = 6;
    private static final int MONTHS = 12;

    private final DailyDrivers drivers;
    private final boolean southern;
    private final Predicate<YearMonth> known;

    /**
     * Prepares to look at years.
     *
     * @param known whether the temperatures of a month were measured well enough
     */
    YearSeasons(DailyDrivers drivers, boolean southern, Predicate<YearMonth> known) {
        this.drivers = drivers;
        this.southern = southern;
        this.known = known;
    }

    /** Returns the years of which every month is known. */
    List<YearSeason> all(int firstYear, int lastYear) {
        List<YearSeason> seasons = new ArrayList<>();
        for (int year = firstYear; year <= lastYear; year++) {
            LocalDate start = southern ? LocalDate.of(year, 7, 1) : LocalDate.of(year, 1, 1);
            YearMonth first = YearMonth.from(start);
            if (IntStream.range(0, MONTHS).allMatch(i -> known.test(first.plusMonths(i)))) {
                int from = drivers.weather().indexOf(start);
                int to = drivers.weather().indexOf(start.plusYears(1).minusDays(1));
                seasons.add(season(year, start, from, to));
            }
        }
        return seasons;
    }

    private YearSeason season(int year, LocalDate start, int from, int to) {
        int middle = drivers.weather().indexOf(start.plusMonths(6).plusDays(14));
        int last = middle;
        while (last >= from && !isFrost(last)) {
            last--;
        }
        int first = middle + 1;
        while (first <= to && !isFrost(first)) {
            first++;
        }
        return new YearSeason(
                year,
                last < from ? Double.NaN : last - from + 1.0,
                first > to ? Double.NaN : first - from + 1.0,
                growingDays(start, from, to));
    }

    private boolean isFrost(int day) {
        return drivers.tmin(day) < FROST_C;
    }

    private int growingDays(LocalDate start, int from, int to) {
        int begin = run(from, to, day -> mean(day) > GROWTH_C);
        if (begin < 0) {
            return 0;
        }
        int midsummer = Math.max(begin, drivers.weather().indexOf(start.plusMonths(6)));
        int end = run(midsummer, to, day -> mean(day) < GROWTH_C);
        return (end < 0 ? to + 1 : end) - begin;
    }

    private double mean(int day) {
        return 0.5 * (drivers.tmin(day) + drivers.tmax(day));
    }

    /** First day of the first run of days that all are so, or -1. */
    private static int run(int from, int to, IntPredicate condition) {
        int length = 0;
        for (int day = from; day <= to; day++) {
            length = condition.test(day) ? length + 1 : 0;
            if (length == RUN_DAYS) {
                return day - RUN_DAYS + 1;
            }
        }
        return -1;
    }

    /** Last frosts by probability; a year without one counts as earlier than all others. */
    static List<FrostDate> lastFrosts(List<YearSeason> years) {
        return byShare(years.stream()
                .mapToDouble(YearSeason::lastFrostDay)
                .map(day -> Double.isNaN(day) ? Double.NEGATIVE_INFINITY : day)
                .toArray());
    }

    /** First frosts by probability; a year without one counts as later than all others. */
    static List<FrostDate> firstFrosts(List<YearSeason> years) {
        return byShare(years.stream()
                .mapToDouble(YearSeason::firstFrostDay)
                .map(day -> Double.isNaN(day) ? Double.POSITIVE_INFINITY : day)
                .toArray());
    }

    private static List<FrostDate> byShare(double[] days) {
        Arrays.sort(days);
        return Arrays.stream(SHARES_PCT)
                .filter(share -> days.length > 0)
                .mapToObj(share -> new FrostDate(share, quantile(days, share / 100.0)))
                .toList();
    }

    /** Linear between order statistics, position (n - 1) p; NaN beyond the years with frost. */
    private static double quantile(double[] sorted, double share) {
        double position = share * (sorted.length - 1);
        int below = (int) position;
        double part = position - below;
        double low = sorted[below];
        double value = part == 0.0 ? low : low + part * (sorted[below + 1] - low);
        return Double.isInfinite(value) ? Double.NaN : value;
    }
}
