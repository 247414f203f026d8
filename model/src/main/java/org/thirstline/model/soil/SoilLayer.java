package org.thirstline.model.soil;

import org.thirstline.model.error.Check;

/**
 * One layer of soil. Immutable and thread-safe.
 *
 * @param thicknessM thickness [m]
 * @param wiltingPoint water content at -1500 kPa [m³ m⁻³] (FAO-56 θ_WP)
 * @param fieldCapacity water content at field capacity [m³ m⁻³] (FAO-56 θ_FC)
 * @param saturation water content with all pores full [m³ m⁻³]
 * @param drainageRate share of the water above field capacity that drains in a day [d⁻¹]
 */
public record SoilLayer(
        double thicknessM, double wiltingPoint, double fieldCapacity, double saturation, double drainageRate) {

    /** Refuses layers whose water contents are out of order or off the scale. */
    public SoilLayer {
        Check.range("layer thickness", thicknessM, "m", 0.005, 10.0);
        Check.range("wilting point", wiltingPoint, "m3/m3", 0.0, 0.6);
        Check.range("field capacity", fieldCapacity, "m3/m3", 0.01, 0.9);
        Check.range("saturation", saturation, "m3/m3", 0.02, 0.95);
        Check.below("wilting point", wiltingPoint, "field capacity", fieldCapacity, "m3/m3");
        Check.below("field capacity", fieldCapacity, "saturation", saturation, "m3/m3");
        Check.range("drainage rate", drainageRate, "per day", 0.0, 1.0);
    }

    /** Returns the available water capacity of the layer [mm]. */
    public double availableWaterMm() {
        return (fieldCapacity - wiltingPoint) * thicknessM * 1000.0;
    }

    /**
     * Returns this layer with another thickness.
     *
     * @param otherThicknessM [m]
     */
    public SoilLayer withThickness(double otherThicknessM) {
        return new SoilLayer(otherThicknessM, wiltingPoint, fieldCapacity, saturation, drainageRate);
    }
}
