package org.thirstline.model.crop;

import java.time.LocalDate;
import org.thirstline.model.error.Check;

/**
 * A planting. Immutable and thread-safe.
 *
 * @param plantingDate day the rhizomes or seeds went into the ground; it may lie before the weather starts
 * @param plantsPerM2 rhizomes or viable seeds set per ground area [m⁻²]
 */
public record Stand(LocalDate plantingDate, double plantsPerM2) {

    /** Refuses densities no one plants. */
    public Stand {
        Check.range("planting density", plantsPerM2, "plants/m2", 0.01, 1000.0);
    }

    /**
     * Creates a planting from its spacing.
     *
     * @param plantingDate day of planting
     * @param rowM distance between rows [m]
     * @param inRowM distance within the row [m]
     */
    public static Stand spaced(LocalDate plantingDate, double rowM, double inRowM) {
        Check.range("row spacing", rowM, "m", 0.01, 10.0);
        Check.range("in-row spacing", inRowM, "m", 0.001, 10.0);
        return new Stand(plantingDate, 1.0 / (rowM * inRowM));
    }
}
