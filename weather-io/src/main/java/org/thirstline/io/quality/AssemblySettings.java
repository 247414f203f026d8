package org.thirstline.io.quality;

import org.thirstline.model.error.Check;

/**
 * How gaps are filled. Immutable.
 *
 * @param solarTemperatureCoefficient k_Rs of FAO-56 eq. 50 [°C⁻⁰·⁵], 0.16 inland, 0.19 at coasts
 * @param defaultWindMs wind speed at 2 m where there is none [m/s], 2 by FAO-56 p. 63
 * @param rainRequired whether a file without any rain is refused
 */
public record AssemblySettings(double solarTemperatureCoefficient, double defaultWindMs, boolean rainRequired) {

    /** As FAO-56 has it, for simulations. */
    public static final AssemblySettings DEFAULT = new AssemblySettings(0.16, 2.0, true);

    /** Refuses settings outside any published range. */
    public AssemblySettings {
        Check.range("solar temperature coefficient", solarTemperatureCoefficient, "°C^-0.5", 0.05, 0.30);
        Check.range("default wind", defaultWindMs, "m/s", 0.5, 20.0);
    }

    /** Returns these settings with rain required or not. */
    public AssemblySettings withRainRequired(boolean required) {
        return new AssemblySettings(solarTemperatureCoefficient, defaultWindMs, required);
    }

    /** Returns these settings with another k_Rs. */
    public AssemblySettings withSolarTemperatureCoefficient(double coefficient) {
        return new AssemblySettings(coefficient, defaultWindMs, rainRequired);
    }
}
