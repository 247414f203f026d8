package org.thirstline.model.climate;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.error.Check;

/**
 * Standardized Precipitation Index (McKee and others 1993; Edwards and McKee 1997; WMO-No. 1090, 2012): the normal quantile of the
 * probability that rain over the last months is not above what fell, H = q + (1 - q) G, with q the share of zero totals and G a gamma
 * distribution fitted to the others, for each calendar month on its own. The quantile is exact, not the rational approximation of the
 * sources. Immutable and thread-safe.
 */
public final class StandardizedPrecipitation {

    /** Longest time scale [months]. */
    public static final int LONGEST_SCALE_MONTHS = 24;

    /** Positive totals of a calendar month below which nothing is fitted (our choice; WMO-No. 1090 asks for 20 to 30 years). */
    static final int MINIMUM_POSITIVE_TOTALS = 10;

    /** Years that WMO-No. 1090 asks for. */
    private static final int STANDARD_YEARS = 30;

    /** Probabilities are kept this far from 0 and 1, so that the index stays finite, within about ±6 (our choice). */
    private static final double PROBABILITY_MARGIN = 1.0e-9;

    private static final int MONTHS_PER_YEAR = 12;
    private static final NormalDistribution NORMAL = new NormalDistribution(0.0, 1.0);

    private final MonthlyRain rain;
    private final int scaleMonths;
    private final double[] values;
    private final int fewestYears;

    private StandardizedPrecipitation(MonthlyRain rain, int scaleMonths, double[] values, int fewestYears) {
        this.rain = rain;
        this.scaleMonths = scaleMonths;
        this.values = values;
        this.fewestYears = fewestYears;
    }

    /**
     * Computes the index with all months of the record as its own reference.
     *
     * @param rain monthly rain
     * @param scaleMonths months to add up, 1 to {@value #LONGEST_SCALE_MONTHS}
     * @param method how the gamma distribution is fitted
     */
    public static StandardizedPrecipitation of(MonthlyRain rain, int scaleMonths, GammaFit.Method method) {
        return of(rain, scaleMonths, method, rain.month(0), rain.month(rain.months() - 1));
    }

    /**
     * Computes the index against a reference period.
     *
     * @param rain monthly rain
     * @param scaleMonths months to add up, 1 to {@value #LONGEST_SCALE_MONTHS}
     * @param method how the gamma distribution is fitted
     * @param referenceStart first month whose total counts towards the fit
     * @param referenceEnd last month whose total counts towards the fit
     */
    public static StandardizedPrecipitation of(
            MonthlyRain rain,
            int scaleMonths,
            GammaFit.Method method,
            YearMonth referenceStart,
            YearMonth referenceEnd) {
        Check.range("time scale", scaleMonths, "months", 1.0, LONGEST_SCALE_MONTHS);
        double[] sums = rain.runningTotalsMm(scaleMonths);
        double[] values = new double[sums.length];
        Arrays.fill(values, Double.NaN);
        int from = Math.max(0, rain.indexOf(referenceStart));
        int to = Math.min(sums.length - 1, rain.indexOf(referenceEnd));
        int fewestYears = Integer.MAX_VALUE;
        for (int offset = 0; offset < Math.min(MONTHS_PER_YEAR, sums.length); offset++) {
            double[] reference = sameMonth(sums, offset, from, to);
            fewestYears = Math.min(fewestYears, reference.length);
            standardize(sums, values, offset, ZeroShareGamma.fit(reference, method));
        }
        return new StandardizedPrecipitation(rain, scaleMonths, values, fewestYears);
    }

    private static double[] sameMonth(double[] sums, int offset, int from, int to) {
        double[] found = new double[sums.length / MONTHS_PER_YEAR + 1];
        int count = 0;
        for (int month = offset; month <= to; month += MONTHS_PER_YEAR) {
            if (month >= from && !Double.isNaN(sums[month])) {
                found[count++] = sums[month];
            }
        }
        return Arrays.copyOf(found, count);
    }

    private static void standardize(double[] sums, double[] values, int offset, @Nullable ZeroShareGamma distribution) {
        if (distribution == null) {
            return;
        }
        for (int month = offset; month < sums.length; month += MONTHS_PER_YEAR) {
            if (!Double.isNaN(sums[month])) {
                values[month] = index(distribution.cumulativeProbability(sums[month]));
            }
        }
    }

    /**
     * Returns the index that belongs to a cumulative probability.
     *
     * @param probability H, 0 to 1; kept 1e-9 away from both
     */
    public static double index(double probability) {
        Check.range("cumulative probability", probability, "", 0.0, 1.0);
        double kept = Math.max(PROBABILITY_MARGIN, Math.min(1.0 - PROBABILITY_MARGIN, probability));
        return NORMAL.inverseCumulativeProbability(kept);
    }

    /** Returns the number of months added up. */
    public int scaleMonths() {
        return scaleMonths;
    }

    /**
     * Returns the index at the end of a month, NaN where rain is unknown or too few years have rain.
     *
     * @param month last month of the span
     */
    public double at(YearMonth month) {
        int index = rain.indexOf(month);
        return index < 0 || index >= values.length ? Double.NaN : values[index];
    }

    /** Returns a copy of the index by month of the record, NaN where there is none. */
    public double[] values() {
        return values.clone();
    }

    /** Returns what a reader must know when fewer than thirty years stand behind a month's index. */
    public Optional<String> notice() {
        return fewestYears >= STANDARD_YEARS
                ? Optional.empty()
                : Optional.of("The index rests on as few as " + fewestYears + " years; WMO-No. 1090 asks for "
                        + STANDARD_YEARS + ".");
    }
}
