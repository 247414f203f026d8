package org.thirstline.cli;

import org.jspecify.annotations.Nullable;
import org.thirstline.calibration.influence.InfluenceOptions;
import picocli.CommandLine.Option;

/** What {@code sensitivity} can be asked beyond the years of a study. */
final class SensitivityOptions {

    private static final int REPLICATES = 500;

    @Option(names = "--zone", paramLabel = "NAME", description = "Zone to answer for (default: every zone).")
    @Nullable
    String zone;

    @Option(
            names = "--samples",
            paramLabel = "N",
            defaultValue = "256",
            description =
                    "Points of each of the two samples behind the shares of the spread; a power of 2. More narrow the"
                            + " intervals (default: ${DEFAULT-VALUE}).")
    int samples = 256;

    @Option(
            names = "--trajectories",
            paramLabel = "N",
            defaultValue = "12",
            description = "Random starts of the screening (default: ${DEFAULT-VALUE}).")
    int trajectories = 12;

    @Option(
            names = "--most",
            paramLabel = "N",
            defaultValue = "8",
            description = "So many parameters at most are sampled after the screening (default: ${DEFAULT-VALUE}).")
    int most = 8;

    @Option(
            names = "--soil-water",
            paramLabel = "PCT",
            defaultValue = "20",
            description = "How far the soil's available water is varied, in percent up and down; 0 leaves it as it is"
                    + " (default: ${DEFAULT-VALUE}).")
    double soilWaterPct = InfluenceOptions.USUAL_SOIL_WATER_PCT;

    @Option(
            names = "--others",
            paramLabel = "PCT",
            defaultValue = "0",
            description = "Vary parameters without a published range too, by so many percent of their value up and down"
                    + " (default: leave them as they are).")
    double othersPct;

    InfluenceOptions options(long seed, int threads) {
        return new InfluenceOptions(
                trajectories, samples, most, REPLICATES, soilWaterPct, othersPct, seed, Math.max(1, threads));
    }
}
