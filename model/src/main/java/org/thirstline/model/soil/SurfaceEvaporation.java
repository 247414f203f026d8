package org.thirstline.model.soil;

import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.units.Bound;

/**
 * Evaporation from the soil surface, FAO-56 dual crop coefficient (Allen et al. 1998, ch. 7): at the energy-limited rate until the surface
 * layer has lost REW, then falling to zero at TEW. Immutable and thread-safe.
 */
public final class SurfaceEvaporation {

    /** Share of evaporation saved by full litter cover: 5 % for each 10 % of cover (FAO-56 ch. 11, from memory). */
    private static final double LITTER_SAVING = 0.5;

    private final double totalEvaporableMm;
    private final double readilyEvaporableMm;
    private final double fieldCapacityMm;
    private final double airDryMm;

    /**
     * Creates the process for the surface layer of a soil.
     *
     * @param profile the soil; its first layer is the evaporating layer Z_e
     */
    public SurfaceEvaporation(SoilProfile profile) {
        SoilLayer top = profile.layers().get(0);
        fieldCapacityMm = 1000.0 * top.fieldCapacity() * top.thicknessM();
        airDryMm = 500.0 * top.wiltingPoint() * top.thicknessM();
        totalEvaporableMm = totalEvaporable(top.fieldCapacity(), top.wiltingPoint(), top.thicknessM());
        readilyEvaporableMm = profile.readilyEvaporableMm();
    }

    /**
     * Total evaporable water TEW, FAO-56 eq. 73.
     *
     * @param fieldCapacity θ_FC [m³ m⁻³]
     * @param wiltingPoint θ_WP [m³ m⁻³]
     * @param depthM Z_e [m]
     * @return TEW [mm]
     */
    public static double totalEvaporable(double fieldCapacity, double wiltingPoint, double depthM) {
        return 1000.0 * (fieldCapacity - 0.5 * wiltingPoint) * depthM;
    }

    /**
     * Evaporation reduction coefficient K_r, FAO-56 eq. 74.
     *
     * @param depletionMm D_e at the start of the day [mm]
     * @param readilyEvaporableMm REW [mm]
     * @param totalEvaporableMm TEW [mm]
     * @return K_r, 0 to 1
     */
    public static double reduction(double depletionMm, double readilyEvaporableMm, double totalEvaporableMm) {
        if (depletionMm <= readilyEvaporableMm) {
            return 1.0;
        }
        return Bound.notNegative((totalEvaporableMm - depletionMm) / (totalEvaporableMm - readilyEvaporableMm));
    }

    /**
     * Upper limit of the crop coefficient K_c max, FAO-56 eq. 72.
     *
     * @param basal K_cb
     * @param climate 0.04 (u_2 - 2) - 0.004 (RH_min - 45)
     * @param heightM h [m]
     * @return K_c max
     */
    public static double maximumCoefficient(double basal, double climate, double heightM) {
        return maximumCoefficient(basal, climate * CropCoefficient.heightFactor(heightM));
    }

    /**
     * The same with the climate term raised by the crop's height already.
     *
     * @param basal K_cb
     * @param climateAtHeight climate term times {@link CropCoefficient#heightFactor}
     * @return K_c max
     */
    public static double maximumCoefficient(double basal, double climateAtHeight) {
        return Bound.atLeast(1.2 + climateAtHeight, basal + 0.05);
    }

    /**
     * Evaporation coefficient K_e, FAO-56 eq. 71.
     *
     * @param reduction K_r
     * @param maximum K_c max
     * @param basal K_cb
     * @param exposedWetted f_ew, share of the soil both exposed and wetted
     * @return K_e
     */
    public static double coefficient(double reduction, double maximum, double basal, double exposedWetted) {
        return Bound.atMost(reduction * (maximum - basal), exposedWetted * maximum);
    }

    /**
     * Evaporation of a day from a wetted surface.
     *
     * @param waterMm water in the surface layer [mm]
     * @param maximum K_c max
     * @param basal K_cb
     * @param exposed share of the soil not shaded by the canopy f_ew
     * @param litterCover share of the ground under litter
     * @param et0Mm ET_0 left for soil and plants [mm/d]
     * @return evaporation, not more than the layer can give [mm/d]
     */
    public double daily(
            double waterMm, double maximum, double basal, double exposed, double litterCover, double et0Mm) {
        double depletion = Bound.notNegative(fieldCapacityMm - waterMm);
        double kr = reduction(depletion, readilyEvaporableMm, totalEvaporableMm);
        double ke = coefficient(kr, maximum, basal, Bound.atLeast(exposed, 0.01));
        double demand = ke * et0Mm * (1.0 - LITTER_SAVING * litterCover);
        return Bound.notNegative(Bound.atMost(demand, waterMm - airDryMm));
    }
}
