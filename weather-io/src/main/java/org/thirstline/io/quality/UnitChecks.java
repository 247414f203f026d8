package org.thirstline.io.quality;

import org.thirstline.io.error.InputError;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.error.InputException;

/**
 * Refuses columns whose typical value no place on Earth has: they are in another unit than they are said to be. The limits lie well
 * above any climate; common practice, no source.
 */
final class UnitChecks {

    private static final int VALUES_NEEDED = 30;

    private record Limit(RawVariable variable, double highestMedian, String looksLike) {}

    private static final Limit[] LIMITS = {
        new Limit(RawVariable.TMAX, 50.0, "°F, K or tenths of °C"),
        new Limit(RawVariable.TMIN, 42.0, "°F, K or tenths of °C"),
        new Limit(RawVariable.SOLAR, 45.0, "W/m2 or J/cm2"),
        new Limit(RawVariable.WIND, 30.0, "km/d or tenths of m/s"),
        new Limit(RawVariable.VAPOUR_PRESSURE, 6.0, "hPa or Pa"),
        new Limit(RawVariable.SUNSHINE, 24.0, "minutes or seconds"),
        new Limit(RawVariable.HUMIDITY_MEAN, 150.0, "tenths of a percent"),
    };

    private UnitChecks() {}

    static void run(WorkingWeather weather) {
        for (Limit limit : LIMITS) {
            int values = 0;
            int low = 0;
            for (double value : weather.column(limit.variable())) {
                values += Double.isNaN(value) ? 0 : 1;
                low += value <= limit.highestMedian() ? 1 : 0;
            }
            if (values >= VALUES_NEEDED && low <= values / 2) {
                throw new InputException(
                        InputError.UNIT_IMPLAUSIBLE,
                        limit.variable().words(),
                        "half of its values are above " + limit.highestMedian() + ", as if in " + limit.looksLike());
            }
        }
    }
}
