package org.thirstline.calibration.age;

import java.util.Optional;

/**
 * The answer to age or weather. Immutable and thread-safe.
 *
 * @param verdict one of three
 * @param sentence the verdict with its numbers
 * @param withWeatherLeftIn decline fitted to the yields as harvested, weather and all; absent with too few years
 * @param withWeatherTakenOut decline fitted to observed over simulated; absent without a simulation or with too few years
 */
public record AgeFindings(
        AgeVerdict verdict,
        String sentence,
        Optional<DeclineFit> withWeatherLeftIn,
        Optional<DeclineFit> withWeatherTakenOut) {}
