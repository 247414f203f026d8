package org.thirstline.io.quality;

import org.thirstline.model.error.Check;

/**
 * How values are checked and gaps are filled. Immutable.
 *
 * @param solarTemperatureCoefficient k_Rs of FAO-56 eq. 50 [°C⁻⁰·⁵], 0.16 inland, 0.19 at coasts
 * @param coefficientFitted whether a year of measured radiation in the record replaces that coefficient by its own
 * @param defaultWindMs wind speed at 2 m where there is none [m/s], 2 by FAO-56 p. 63
 * @param rainRequired whether a file without any rain is refused
 * @param suspectRule what happens to values that are hard to believe
 * @param rainSumsSpread whether a sum of several days is spread over them; else they count as missing
 */
public record AssemblySettings(
        double solarTemperatureCoefficient,
        boolean coefficientFitted,
        double defaultWindMs,
        boolean rainRequired,
        SuspectRule suspectRule,
        boolean rainSumsSpread) {

    /** As FAO-56 has it, for simulations. */
    public static final AssemblySettings DEFAULT = new AssemblySettings(0.16, true, 2.0, true, SuspectRule.KEEP, false);

    /** Refuses settings outside any published range. */
    public AssemblySettings {
        Check.range("solar temperature coefficient", solarTemperatureCoefficient, "°C^-0.5", 0.05, 0.35);
        Check.range("default wind", defaultWindMs, "m/s", 0.5, 20.0);
    }

    /** Returns these settings with rain required or not. */
    public AssemblySettings withRainRequired(boolean required) {
        return new AssemblySettings(
                solarTemperatureCoefficient, coefficientFitted, defaultWindMs, required, suspectRule, rainSumsSpread);
    }

    /** Returns these settings with another k_Rs, which then is not fitted. */
    public AssemblySettings withSolarTemperatureCoefficient(double coefficient) {
        return new AssemblySettings(coefficient, false, defaultWindMs, rainRequired, suspectRule, rainSumsSpread);
    }

    /** Returns these settings with another rule for suspect values. */
    public AssemblySettings withSuspectRule(SuspectRule rule) {
        return new AssemblySettings(
                solarTemperatureCoefficient, coefficientFitted, defaultWindMs, rainRequired, rule, rainSumsSpread);
    }

    /** Returns these settings with sums of several days spread over them or not. */
    public AssemblySettings withRainSumsSpread(boolean spread) {
        return new AssemblySettings(
                solarTemperatureCoefficient, coefficientFitted, defaultWindMs, rainRequired, suspectRule, spread);
    }
}
