package org.thirstline.calibration.age;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.thirstline.calibration.response.Interval;

/**
 * A decline fitted to log yields. Rates are fractions per year, positive when yield falls. Intervals are at 90 %, from resampled years.
 * Immutable and thread-safe.
 *
 * @param onsetAge last stand age before the change
 * @param onsetInterval interval of the onset
 * @param ratePerYear decline in each year past the onset
 * @param rateInterval its interval
 * @param meanDeclinePerYear decline spread over all years from the first established age to the oldest age, which is steadier than the rate since a
 *     late onset hardly moves it
 * @param meanDeclineInterval its interval
 * @param keptByAge share of the yield before the onset that is left, interval by stand age, from the same resamples
 * @param criterionGain AICc without decline minus AICc with it; over zero speaks for decline. AICc, not BIC, since years are few; years, not
 *     plots, are counted, and the searched onset counts as a parameter
 * @param chances for each reading, how often trials without decline would look at least as much like one
 * @param scatter where the scatter comes from
 * @param years number of growth years fitted
 */
public record DeclineFit(
        int onsetAge,
        Interval onsetInterval,
        double ratePerYear,
        Interval rateInterval,
        double meanDeclinePerYear,
        Interval meanDeclineInterval,
        SortedMap<Integer, Interval> keptByAge,
        double criterionGain,
        Map<Reading, Double> chances,
        VarianceParts scatter,
        int years) {

    /** Takes a copy. */
    public DeclineFit {
        keptByAge = Collections.unmodifiableSortedMap(new TreeMap<>(keptByAge));
    }

    /** Returns the share of the yield before the onset that is left at an age. */
    public double kept(int standAge) {
        return Math.pow(1.0 - ratePerYear, Math.max(0, standAge - onsetAge));
    }

    /** Returns whether a decline stands in every reading. */
    public boolean declines() {
        return chances.values().stream().allMatch(chance -> chance <= 0.5 * AgeOptions.SIZE);
    }

    /** Returns how often trials without decline would look at least as much like one; 1 for a reading that was not made. */
    public double chance(Reading reading) {
        return chances.getOrDefault(reading, 1.0);
    }

    /** Returns the largest chance over readings: the one that decides. */
    public double decidingChance() {
        return chances.values().stream().mapToDouble(Double::doubleValue).max().orElse(1.0);
    }
}
