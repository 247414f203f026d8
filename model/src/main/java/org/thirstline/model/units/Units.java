package org.thirstline.model.units;

/** Conversion factors, each named for what it turns one unit into. */
public final class Units {

    /** Megagrams per hectare in one gram per square metre. */
    public static final double MG_HA_PER_G_M2 = 0.01;

    /** Short tons per acre in one megagram per hectare: 907.18474 kg per 4046.8564224 m² (NIST SP 811). */
    public static final double SHORT_TON_ACRE_PER_MG_HA = 0.4046856422 / 0.90718474;

    /** Millimetres in one inch, exact. */
    public static final double MM_PER_INCH = 25.4;

    /** Metres in one foot, exact. */
    public static final double M_PER_FOOT = 0.3048;

    /** Millimetres of water in one metre of depth. */
    public static final double MM_PER_M = 1000.0;

    private Units() {}

    /**
     * Converts dry matter per ground area.
     *
     * @param gramsPerSquareMetre [g m⁻²]
     * @return [Mg/ha]
     */
    public static double mgHa(double gramsPerSquareMetre) {
        return gramsPerSquareMetre * MG_HA_PER_G_M2;
    }

    /**
     * Converts a slope of yield on water.
     *
     * @param mgHaPerMm [Mg ha⁻¹ mm⁻¹]
     * @return [short ton acre⁻¹ inch⁻¹]
     */
    public static double tonAcrePerInch(double mgHaPerMm) {
        return mgHaPerMm * SHORT_TON_ACRE_PER_MG_HA * MM_PER_INCH;
    }
}
