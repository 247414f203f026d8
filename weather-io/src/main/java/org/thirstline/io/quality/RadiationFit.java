package org.thirstline.io.quality;

import org.jspecify.annotations.Nullable;
import org.thirstline.io.weather.RadiationSkill;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Fits the coefficient of radiation from the temperature range (FAO-56 eq. 50; Hargreaves and Samani 1982) to measured radiation, by
 * least squares through the origin, and says how good the estimates are.
 */
final class RadiationFit {

    private static final int DAYS_NEEDED = 365;
    private static final double LOWEST = 0.05;
    private static final double HIGHEST = 0.35;

    private RadiationFit() {}

    /** Returns the skill of the coefficient that is used; null if radiation was measured on fewer days than a year has. */
    static @Nullable RadiationSkill of(WorkingWeather weather, AssemblySettings settings) {
        double products = 0.0;
        double squares = 0.0;
        int days = 0;
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            if (isUsable(weather, day)) {
                double driver = weather.extraterrestrial(day) * Math.sqrt(range(weather, day));
                products += driver * weather.value(RawVariable.SOLAR, day);
                squares += driver * driver;
                days++;
            }
        }
        if (days < DAYS_NEEDED || squares == 0.0) {
            return null;
        }
        double best = Math.max(LOWEST, Math.min(HIGHEST, products / squares));
        double rounded = Math.rint(best * 1.0e4) / 1.0e4;
        double used = settings.coefficientFitted() ? rounded : settings.solarTemperatureCoefficient();
        return skill(weather, used, settings.coefficientFitted(), days);
    }

    private static RadiationSkill skill(WorkingWeather weather, double coefficient, boolean fitted, int days) {
        double sum = 0.0;
        double squares = 0.0;
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            if (isUsable(weather, day)) {
                double estimate = NetRadiation.solarFromTemperatureRange(
                        weather.value(RawVariable.TMIN, day),
                        weather.value(RawVariable.TMAX, day),
                        weather.extraterrestrial(day),
                        coefficient,
                        weather.site().elevationM());
                double error = estimate - weather.value(RawVariable.SOLAR, day);
                sum += error;
                squares += error * error;
            }
        }
        return new RadiationSkill(coefficient, fitted, days, Math.sqrt(squares / days), sum / days);
    }

    private static double range(WorkingWeather weather, int day) {
        return weather.value(RawVariable.TMAX, day) - weather.value(RawVariable.TMIN, day);
    }

    private static boolean isUsable(WorkingWeather weather, int day) {
        return range(weather, day) >= 0.0
                && !weather.isMissing(RawVariable.SOLAR, day)
                && weather.isMeasured(WeatherVariable.SOLAR, day)
                && weather.isMeasured(WeatherVariable.TMIN, day)
                && weather.isMeasured(WeatherVariable.TMAX, day);
    }
}
