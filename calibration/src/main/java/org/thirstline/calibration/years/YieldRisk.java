package org.thirstline.calibration.years;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.BetaDistribution;
import org.thirstline.calibration.response.Interval;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/**
 * How often the years of a zone reached a yield. Counts of simulated years, no distribution assumed. Immutable and thread-safe.
 *
 * @param years years and yields, in order of years
 */
public record YieldRisk(List<YearYield> years) {

    private static final double LEVEL = 0.95;

    /** Copies the list. */
    public YieldRisk {
        years = List.copyOf(years);
    }

    /**
     * One year.
     *
     * @param growthYear the growth year
     * @param harvestedMgHa its harvest [Mg/ha]
     */
    public record YearYield(int growthYear, double harvestedMgHa) {}

    /**
     * A point of the exceedance curve.
     *
     * @param year the year
     * @param probability share of years expected to yield at least as much: rank / (n + 1) (Weibull 1939)
     */
    public record Exceedance(YearYield year, double probability) {}

    /**
     * Years in a row.
     *
     * @param firstYear first growth year
     * @param lastYear last growth year
     * @param meanMgHa mean harvest [Mg/ha]
     */
    public record Run(int firstYear, int lastYear, double meanMgHa) {}

    /** Takes the full-grown years of a zone. */
    public static YieldRisk of(ZoneOutcome zone) {
        return new YieldRisk(FullGrown.seasons(zone).stream()
                .map((SeasonRecord season) ->
                        new YearYield(season.growthYear(), season.value(SeasonVariable.HARVESTED)))
                .toList());
    }

    /** Returns the number of years. */
    public int n() {
        return years.size();
    }

    /** Returns how many years reached a target. */
    public int reached(double targetMgHa) {
        return (int) years.stream()
                .filter(year -> year.harvestedMgHa() >= targetMgHa)
                .count();
    }

    /** Returns the share of years that reached a target; NaN without years. */
    public double probability(double targetMgHa) {
        return years.isEmpty() ? Double.NaN : (double) reached(targetMgHa) / n();
    }

    /** Returns the exact binomial interval of that share at 95 % (Clopper and Pearson 1934); it treats years as independent. */
    public Interval probabilityInterval(double targetMgHa) {
        int hits = reached(targetMgHa);
        double tail = 0.5 * (1.0 - LEVEL);
        double lower =
                hits == 0 ? 0.0 : new BetaDistribution(hits, n() - hits + 1.0).inverseCumulativeProbability(tail);
        double upper = hits == n()
                ? 1.0
                : new BetaDistribution(hits + 1.0, n() - hits).inverseCumulativeProbability(1.0 - tail);
        return new Interval(lower, upper);
    }

    /** Returns the exceedance curve from the best year to the worst. */
    public List<Exceedance> exceedance() {
        List<YearYield> ranked = years.stream()
                .sorted(Comparator.comparingDouble(YearYield::harvestedMgHa)
                        .reversed()
                        .thenComparingInt(YearYield::growthYear))
                .toList();
        List<Exceedance> curve = new ArrayList<>();
        for (int rank = 1; rank <= ranked.size(); rank++) {
            curve.add(new Exceedance(ranked.get(rank - 1), rank / (n() + 1.0)));
        }
        return curve;
    }

    /**
     * Returns the worst years in a row; absent where so many never follow one another.
     *
     * @param length how many, at least 1
     */
    public Optional<Run> worstRun(int length) {
        Run worst = null;
        for (int from = 0; from + length <= n(); from++) {
            List<YearYield> run = years.subList(from, from + length);
            int first = run.get(0).growthYear();
            int last = run.get(length - 1).growthYear();
            double mean =
                    run.stream().mapToDouble(YearYield::harvestedMgHa).average().orElseThrow();
            if (last - first == length - 1 && (worst == null || mean < worst.meanMgHa())) {
                worst = new Run(first, last, mean);
            }
        }
        return Optional.ofNullable(worst);
    }
}
