package org.thirstline.model.soil;

import org.thirstline.model.error.Check;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * Soil water of a texture by the regressions of Saxton &amp; Rawls (2006), Soil Sci. Soc. Am. J. 70:1569-1578, Table 1, without their
 * adjustments for gravel, salinity and compaction. The regressions hold up to 60 % clay and 8 % organic matter, and so does this class.
 * Immutable and thread-safe.
 *
 * @param wiltingPoint water content at -1500 kPa [m³ m⁻³]
 * @param fieldCapacity water content at -33 kPa [m³ m⁻³]
 * @param saturation water content with all pores full [m³ m⁻³]
 * @param saturatedConductivityMmH saturated hydraulic conductivity [mm/h]
 */
public record TextureEstimate(
        double wiltingPoint, double fieldCapacity, double saturation, double saturatedConductivityMmH) {

    /** Highest clay content the regressions were fitted to [%]. */
    public static final double MAX_CLAY_PCT = 60.0;

    /** Highest organic matter content the regressions were fitted to [%]. */
    public static final double MAX_ORGANIC_MATTER_PCT = 8.0;

    private static final double HOURS_PER_DAY = 24.0;
    private static final double MM_PER_M = 1000.0;
    private static final double FULL_PCT = 100.0;

    /**
     * Estimates the soil water of a texture.
     *
     * @param sandPct sand [% by mass of the mineral soil]
     * @param clayPct clay [% by mass of the mineral soil], 0 to 60
     * @param organicMatterPct organic matter [% by mass], 0 to 8
     * @return the estimate
     * @throws InputException if a share is outside its limits, sand and clay exceed 100 %, or the regressions give water contents out of
     *     order, as they do at a few corners of the texture triangle
     */
    public static TextureEstimate of(double sandPct, double clayPct, double organicMatterPct) {
        double s = Check.range("sand", sandPct, "%", 0.0, FULL_PCT) / FULL_PCT;
        double c = Check.range("clay", clayPct, "%", 0.0, MAX_CLAY_PCT) / FULL_PCT;
        double om = Check.range("organic matter", organicMatterPct, "%", 0.0, MAX_ORGANIC_MATTER_PCT);
        if (sandPct + clayPct > FULL_PCT) {
            throw new InputException(
                    ModelError.INCONSISTENT, "sand (" + sandPct + " %) and clay (" + clayPct + " %) exceed 100 %");
        }
        double wiltingPoint = waterAt1500(s, c, om);
        double fieldCapacity = waterAt33(s, c, om);
        double saturation = fieldCapacity + drainablePores(s, c, om) - 0.097 * s + 0.043;
        Check.below("wilting point of the texture", wiltingPoint, "its field capacity", fieldCapacity, "m3/m3");
        Check.below("field capacity of the texture", fieldCapacity, "its saturation", saturation, "m3/m3");
        Check.range("wilting point of the texture", wiltingPoint, "m3/m3", 0.001, 1.0);
        double lambda = (Math.log(fieldCapacity) - Math.log(wiltingPoint)) / (Math.log(1500.0) - Math.log(33.0));
        double conductivity = 1930.0 * Math.pow(saturation - fieldCapacity, 3.0 - lambda);
        return new TextureEstimate(wiltingPoint, fieldCapacity, saturation, conductivity);
    }

    /** Equation 1. */
    private static double waterAt1500(double s, double c, double om) {
        double t = -0.024 * s + 0.487 * c + 0.006 * om + 0.005 * s * om - 0.013 * c * om + 0.068 * s * c + 0.031;
        return t + (0.14 * t - 0.02);
    }

    /** Equation 2. */
    private static double waterAt33(double s, double c, double om) {
        double t = -0.251 * s + 0.195 * c + 0.011 * om + 0.006 * s * om - 0.027 * c * om + 0.452 * s * c + 0.299;
        return t + (1.283 * t * t - 0.374 * t - 0.015);
    }

    /** Equation 3: water between saturation and -33 kPa before the density correction of equation 5. */
    private static double drainablePores(double s, double c, double om) {
        double t = 0.278 * s + 0.034 * c + 0.022 * om - 0.018 * s * om - 0.027 * c * om - 0.584 * s * c + 0.078;
        return t + (0.636 * t - 0.107);
    }

    /** Returns the bulk density of the fine soil [g cm⁻³], at 2.65 g cm⁻³ of the particles (equation 6). */
    public double bulkDensityGCm3() {
        return 2.65 * (1.0 - saturation);
    }

    /**
     * Returns the share of the water above field capacity that leaves a layer in a day when the layer drains as a linear reservoir at its
     * saturated conductivity: 1 - exp(-24 K_s / ((θ_S - θ_33) thickness)).
     *
     * @param thicknessM thickness of the layer [m]
     */
    public double drainageRatePerDay(double thicknessM) {
        double drainableMm = (saturation - fieldCapacity) * thicknessM * MM_PER_M;
        return 1.0 - Math.exp(-saturatedConductivityMmH * HOURS_PER_DAY / drainableMm);
    }

    /**
     * Returns a layer of this soil.
     *
     * @param thicknessM thickness [m]
     */
    public SoilLayer layer(double thicknessM) {
        return new SoilLayer(thicknessM, wiltingPoint, fieldCapacity, saturation, drainageRatePerDay(thicknessM));
    }
}
