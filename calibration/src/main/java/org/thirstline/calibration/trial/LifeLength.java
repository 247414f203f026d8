package org.thirstline.calibration.trial;

import java.util.stream.IntStream;
import org.thirstline.calibration.age.StandLife;

/**
 * Dry matter by stand life under the fitted decline and without one. Immutable and thread-safe.
 *
 * @param declining with the fitted decline
 * @param steady without any
 * @param gapYears years without yield between two stands
 * @param oldestSeen oldest age with a yield; what lies past it is carried forward, not seen
 */
public record LifeLength(StandLife declining, StandLife steady, double gapYears, int oldestSeen) {

    /** Ages looked at: as long as stands are said to live. */
    private static final int AGES = 30;

    /** One year for clearing and planting (our choice). */
    private static final double GAP_YEARS = 1.0;

    static LifeLength of(AgeCurve curve, double[] buildUp, int oldestSeen) {
        double[] declining = IntStream.rangeClosed(1, AGES)
                .mapToDouble(age -> share(age, buildUp) * curve.at(age))
                .toArray();
        double[] steady = IntStream.rangeClosed(1, AGES)
                .mapToDouble(age -> share(age, buildUp) * curve.levelMgHa())
                .toArray();
        return new LifeLength(
                StandLife.of(declining, GAP_YEARS), StandLife.of(steady, GAP_YEARS), GAP_YEARS, oldestSeen);
    }

    private static double share(int age, double[] buildUp) {
        return age <= buildUp.length ? buildUp[age - 1] : 1.0;
    }
}
