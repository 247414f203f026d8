package org.thirstline.charts;

import org.thirstline.model.units.Units;

/** The units a reader thinks in. Results are always computed in SI. */
public enum UnitSystem {
    /** Megagrams per hectare, millimetres, metres. */
    SI("Mg/ha", "mm", "m", 1.0, 1.0, 1.0),
    /** Short tons per acre, inches, feet. */
    US("short ton/acre", "in", "ft", Units.SHORT_TON_ACRE_PER_MG_HA, 1.0 / Units.MM_PER_INCH, 1.0 / Units.M_PER_FOOT);

    private static final double MM_SHOWN = 100.0;

    private final String yieldUnit;
    private final String waterUnit;
    private final String depthUnit;
    private final double yieldFactor;
    private final double waterFactor;
    private final double depthFactor;

    UnitSystem(
            String yieldUnit,
            String waterUnit,
            String depthUnit,
            double yieldFactor,
            double waterFactor,
            double depthFactor) {
        this.yieldUnit = yieldUnit;
        this.waterUnit = waterUnit;
        this.depthUnit = depthUnit;
        this.yieldFactor = yieldFactor;
        this.waterFactor = waterFactor;
        this.depthFactor = depthFactor;
    }

    /** Returns the unit of dry matter per ground area. */
    public String yieldUnit() {
        return yieldUnit;
    }

    /** Returns the unit of water. */
    public String waterUnit() {
        return waterUnit;
    }

    /** Returns the unit of soil depth. */
    public String depthUnit() {
        return depthUnit;
    }

    /**
     * Converts dry matter.
     *
     * @param mgHa [Mg/ha]
     */
    public double dryMatter(double mgHa) {
        return mgHa * yieldFactor;
    }

    /**
     * Converts water.
     *
     * @param mm [mm]
     */
    public double water(double mm) {
        return mm * waterFactor;
    }

    /** Returns the unit of temperature. */
    public String temperatureUnit() {
        return this == SI ? "°C" : "°F";
    }

    /**
     * Converts a temperature.
     *
     * @param celsius [°C]
     */
    public double temperature(double celsius) {
        return this == SI ? celsius : 32.0 + 1.8 * celsius;
    }

    /**
     * Writes a temperature with its unit.
     *
     * @param celsius [°C]
     */
    public String temperatureText(double celsius) {
        return Numbers.fixed(temperature(celsius), this == SI ? 1 : 0) + " " + temperatureUnit();
    }

    /**
     * Converts soil depth.
     *
     * @param metres [m]
     */
    public double depth(double metres) {
        return metres * depthFactor;
    }

    /**
     * Converts a slope of yield on water to yield per {@link #waterStep()}.
     *
     * @param mgHaPerMm [Mg ha⁻¹ mm⁻¹]
     */
    public double slope(double mgHaPerMm) {
        return this == SI ? mgHaPerMm * MM_SHOWN : Units.tonAcrePerInch(mgHaPerMm);
    }

    /** Returns the amount of water that a slope is told for, as in "each 100 mm". */
    public String waterStep() {
        return this == SI ? "100 mm" : "inch";
    }

    /**
     * Writes dry matter with its unit.
     *
     * @param mgHa [Mg/ha]
     */
    public String yieldText(double mgHa) {
        return Numbers.fixed(dryMatter(mgHa), 1) + " " + yieldUnit;
    }

    /**
     * Writes water with its unit.
     *
     * @param mm [mm]
     */
    public String waterText(double mm) {
        return Numbers.fixed(water(mm), this == SI ? 0 : 1) + " " + waterUnit;
    }
}
