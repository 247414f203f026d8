package org.thirstline.io.study;

/** Typical soil water of the soil types of FAO-56 Table 19 (p. 144): middles of the printed ranges. */
enum SoilClass {
    // spotless:off — wilting point from, to and field capacity minus wilting point from, to as printed [m³ m⁻³]
    SAND("sand", 0.02, 0.07, 0.05, 0.11),
    LOAMY_SAND("loamy sand", 0.03, 0.10, 0.06, 0.12),
    SANDY_LOAM("sandy loam", 0.06, 0.16, 0.11, 0.15),
    LOAM("loam", 0.07, 0.17, 0.13, 0.18),
    SILT_LOAM("silt loam", 0.09, 0.21, 0.13, 0.19),
    SILT("silt", 0.12, 0.22, 0.16, 0.20),
    SILT_CLAY_LOAM("silt clay loam", 0.17, 0.24, 0.13, 0.18),
    SILTY_CLAY("silty clay", 0.17, 0.29, 0.13, 0.19),
    CLAY("clay", 0.20, 0.24, 0.12, 0.20);
    // spotless:on

    /** Classes closer than this are equally near; the one printed first is taken. */
    private static final double EQUALLY_NEAR = 1e-9;

    private final String words;
    private final double wiltingPoint;
    private final double available;

    SoilClass(String words, double wiltingFrom, double wiltingTo, double availableFrom, double availableTo) {
        this.words = words;
        this.wiltingPoint = 0.5 * (wiltingFrom + wiltingTo);
        this.available = 0.5 * (availableFrom + availableTo);
    }

    String words() {
        return words;
    }

    double wiltingPoint() {
        return wiltingPoint;
    }

    /**
     * Returns the class whose available water is nearest.
     *
     * @param available field capacity minus wilting point [m³ m⁻³]
     */
    static SoilClass nearest(double available) {
        SoilClass best = SAND;
        for (SoilClass candidate : values()) {
            double gain = Math.abs(best.available - available) - Math.abs(candidate.available - available);
            best = gain > EQUALLY_NEAR ? candidate : best;
        }
        return best;
    }
}
