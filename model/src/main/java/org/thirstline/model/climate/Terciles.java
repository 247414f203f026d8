package org.thirstline.model.climate;

import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;
import org.thirstline.model.error.Check;

/**
 * The two rain totals that part dry, middle and wet seasons. Quantiles are type 7 of Hyndman and Fan (1996), which puts as many of
 * thirty different seasons in each class. Immutable and thread-safe.
 *
 * @param lowerMm a season with less is dry [mm]
 * @param upperMm a season with more is wet [mm]
 */
public record Terciles(double lowerMm, double upperMm) {

    /** Seasons needed before thirds of them mean anything. */
    public static final int MINIMUM_SEASONS = 3;

    /**
     * Computes the terciles of seasonal rain.
     *
     * @param rainMm rain of each season [mm], at least {@value #MINIMUM_SEASONS}; not modified
     * @throws org.thirstline.model.error.InputException if there are fewer seasons
     */
    public static Terciles of(double[] rainMm) {
        Check.range("number of seasons to part in thirds", rainMm.length, "", MINIMUM_SEASONS, Integer.MAX_VALUE);
        Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
        percentile.setData(rainMm);
        return new Terciles(percentile.evaluate(100.0 / 3.0), percentile.evaluate(200.0 / 3.0));
    }

    /**
     * Returns the class of a season.
     *
     * @param rainMm rain of the season [mm]
     */
    public SeasonClass classOf(double rainMm) {
        if (rainMm < lowerMm) {
            return SeasonClass.DRY;
        }
        return rainMm > upperMm ? SeasonClass.WET : SeasonClass.MIDDLE;
    }
}
