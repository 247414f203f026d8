package org.thirstline.model.soil;

import org.thirstline.model.units.Bound;

/**
 * Lack of oxygen in a wet root zone: growth falls when air-filled pores stay below a limit (about 10 %, common practice, no source) for
 * some days. Immutable and thread-safe.
 */
public final class Aeration {

    private final double limit;
    private final double delayDays;
    private final double sensitivity;

    /**
     * Creates the process.
     *
     * @param limit air-filled porosity below which roots lack oxygen [m³ m⁻³]
     * @param delayDays days of it until growth is fully affected [d]
     * @param sensitivity share of growth lost with no air at all [1]
     */
    public Aeration(double limit, double delayDays, double sensitivity) {
        this.limit = limit;
        this.delayDays = delayDays;
        this.sensitivity = sensitivity;
    }

    /**
     * Days in a row with too little air, after today.
     *
     * @param airFilledPorosity [m³ m⁻³]
     * @param daysBefore days in a row before today [d]
     */
    public double days(double airFilledPorosity, double daysBefore) {
        return airFilledPorosity < limit ? daysBefore + 1.0 : 0.0;
    }

    /**
     * Factor on growth.
     *
     * @param airFilledPorosity [m³ m⁻³]
     * @param days days in a row with too little air, today included [d]
     * @return 1 - sensitivity to 1
     */
    public double factor(double airFilledPorosity, double days) {
        if (days <= 0.0) {
            return 1.0;
        }
        double lack = 1.0 - airFilledPorosity / limit;
        double onset = delayDays > 0.0 ? Bound.atMost(days / delayDays, 1.0) : 1.0;
        return 1.0 - sensitivity * lack * onset;
    }
}
