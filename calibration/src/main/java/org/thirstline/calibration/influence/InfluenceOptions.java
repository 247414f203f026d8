package org.thirstline.calibration.influence;

import org.thirstline.model.error.Check;

/**
 * How to find which parameters matter. Immutable and thread-safe.
 *
 * @param trajectories random starts of the screening
 * @param samples points of each of the two samples behind the indices; a power of 2 makes best use of the sequence
 * @param mostInputs so many parameters at most are sampled after the screening
 * @param replicates bootstrap replicates behind the intervals
 * @param soilWaterPct how far the soil's available water is varied, up and down [%]; 0 leaves it out
 * @param unpublishedPct how far parameters without a published range are varied, up and down [% of their value]; 0 leaves them out
 * @param seed of everything random
 * @param threads at most so many are used; the answer does not depend on it
 */
public record InfluenceOptions(
        int trajectories,
        int samples,
        int mostInputs,
        int replicates,
        double soilWaterPct,
        double unpublishedPct,
        long seed,
        int threads) {

    /** How far available water is varied if nothing is said: about the spread within a texture class (our choice) [%]. */
    public static final double USUAL_SOIL_WATER_PCT = 20.0;

    /** Levels of the screening's grid, Morris's usual choice. */
    static final int LEVELS = 4;

    /** Refuses what cannot be run. */
    public InfluenceOptions {
        Check.range("trajectories of the screening", trajectories, "", 2.0, 10_000.0);
        Check.range("samples", samples, "", 8.0, 1_000_000.0);
        Check.range("parameters sampled after the screening", mostInputs, "", 1.0, 100.0);
        Check.range("bootstrap replicates", replicates, "", 100.0, 100_000.0);
        Check.range("variation of the soil's available water", soilWaterPct, "%", 0.0, 80.0);
        Check.range("variation of parameters without a range", unpublishedPct, "%", 0.0, 90.0);
        Check.range("number of threads", threads, "", 1.0, 10_000.0);
    }
}
