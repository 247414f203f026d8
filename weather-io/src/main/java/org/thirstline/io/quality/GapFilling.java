package org.thirstline.io.quality;

import org.thirstline.io.weather.RawVariable;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Fills what is missing: temperatures from neighbouring days or other years, rain with what is usual at that time of year (a gap is not
 * a dry day), the rest after FAO-56 chapter 3 (Allen et al. 1998).
 */
final class GapFilling {

    /** Longest run of days without temperature that is interpolated. */
    private static final int LONGEST_INTERPOLATION_DAYS = 5;

    private static final int TEMPERATURE_WINDOW_DAYS = 7;
    private static final int RAIN_WINDOW_DAYS = 15;

    /** Rain is uneven, so its mean takes more days than one; common practice, no source. */
    private static final int ENOUGH_RAIN_DAYS = 10;

    /** Ratio of the molecular weights of water and dry air, FAO-56 eq. 8. */
    private static final double WATER_TO_AIR = 0.622;

    private static final double STANDARD_HEIGHT_M = 2.0;

    private final WorkingWeather weather;
    private final AssemblySettings settings;
    private final String windDefault;
    private final String windMoved;
    private final String solarFromRange;

    GapFilling(WorkingWeather weather, AssemblySettings settings) {
        this.weather = weather;
        this.settings = settings;
        windDefault = "default wind of " + settings.defaultWindMs() + " m/s (FAO-56 p. 63)";
        windMoved = "brought from " + weather.windHeightM() + " m to 2 m (FAO-56 eq. 47)";
        solarFromRange = "from the temperature range, coefficient " + settings.solarTemperatureCoefficient()
                + " (FAO-56 eq. 50)";
    }

    /** Fills all variables; rain only if there is any. */
    void run(boolean rainKnown) {
        Climatology tmin = climatology(RawVariable.TMIN, TEMPERATURE_WINDOW_DAYS, 1);
        Climatology tmax = climatology(RawVariable.TMAX, TEMPERATURE_WINDOW_DAYS, 1);
        temperaturesFromMean();
        temperature(WeatherVariable.TMIN, tmin);
        temperature(WeatherVariable.TMAX, tmax);
        orderTemperatures();
        rain(rainKnown);
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            wind(day);
            vapourPressure(day);
            solar(day);
        }
    }

    private Climatology climatology(RawVariable variable, int halfWindowDays, int enough) {
        return new Climatology(
                weather.calendar(),
                weather.firstDay(),
                weather.endDay(),
                weather.column(variable),
                halfWindowDays,
                enough);
    }

    /** The daily mean is half-way between the extremes (FAO-56 eq. 9), so it and one of them give the other. */
    private void temperaturesFromMean() {
        String action = "from the mean and the other extreme (FAO-56 eq. 9)";
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double mean = weather.value(RawVariable.TMEAN, day);
            double tmin = weather.value(RawVariable.TMIN, day);
            double tmax = weather.value(RawVariable.TMAX, day);
            if (Double.isNaN(tmin) && mean <= tmax) {
                weather.fill(WeatherVariable.TMIN, day, 2.0 * mean - tmax, Origin.ESTIMATED, action);
            } else if (Double.isNaN(tmax) && mean >= tmin) {
                weather.fill(WeatherVariable.TMAX, day, 2.0 * mean - tmin, Origin.ESTIMATED, action);
            }
        }
    }

    private void temperature(WeatherVariable variable, Climatology usual) {
        double[] column = weather.column(RawVariable.of(variable));
        int day = weather.firstDay();
        while (day < weather.endDay()) {
            if (!Double.isNaN(column[day])) {
                day++;
                continue;
            }
            int after = day;
            while (after < weather.endDay() && Double.isNaN(column[after])) {
                after++;
            }
            fillTemperature(variable, usual, day, after);
            day = after;
        }
    }

    private void fillTemperature(WeatherVariable variable, Climatology usual, int from, int after) {
        double[] column = weather.column(RawVariable.of(variable));
        int days = after - from;
        boolean interpolate =
                days <= LONGEST_INTERPOLATION_DAYS && from > weather.firstDay() && after < weather.endDay();
        for (int day = from; day < after; day++) {
            if (interpolate) {
                double share = (day - from + 1.0) / (days + 1.0);
                double value = column[from - 1] + share * (column[after] - column[from - 1]);
                weather.fill(variable, day, value, Origin.INTERPOLATED, "straight line across a gap of up to 5 days");
            } else {
                String action = "mean of the same dates (7 days either side) in the record";
                weather.fill(variable, day, usual.at(weather.calendar().date(day)), Origin.CLIMATOLOGY, action);
            }
        }
    }

    /** A filled extreme must not cross the other. */
    private void orderTemperatures() {
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            double tmin = weather.value(RawVariable.TMIN, day);
            double tmax = weather.value(RawVariable.TMAX, day);
            if (tmin > tmax && weather.isMeasured(WeatherVariable.TMIN, day)) {
                weather.correct(WeatherVariable.TMAX, day, tmin);
            } else if (tmin > tmax) {
                weather.correct(WeatherVariable.TMIN, day, tmax);
            }
        }
    }

    private void rain(boolean rainKnown) {
        Climatology usual = rainKnown ? climatology(RawVariable.RAIN, RAIN_WINDOW_DAYS, ENOUGH_RAIN_DAYS) : null;
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            if (!weather.isMissing(RawVariable.RAIN, day)) {
                continue;
            }
            if (usual == null) {
                weather.fill(
                        WeatherVariable.RAIN, day, 0.0, Origin.CLIMATOLOGY, "the file gives no rain; none is written");
            } else {
                String action =
                        "mean daily rain of the time of year (15 days either side), so that a gap is no drought";
                weather.fill(
                        WeatherVariable.RAIN, day, usual.at(weather.calendar().date(day)), Origin.CLIMATOLOGY, action);
            }
        }
    }

    private void wind(int day) {
        double wind = weather.value(RawVariable.WIND, day);
        double heightM = weather.windHeightM();
        if (Double.isNaN(wind)) {
            weather.fill(WeatherVariable.WIND, day, settings.defaultWindMs(), Origin.ESTIMATED, windDefault);
        } else if (heightM != STANDARD_HEIGHT_M && weather.isMeasured(WeatherVariable.WIND, day)) {
            double atTwoMetres = Atmosphere.windAtTwoMetres(wind, heightM);
            weather.fill(WeatherVariable.WIND, day, atTwoMetres, Origin.ESTIMATED, windMoved);
        }
    }

    private void vapourPressure(int day) {
        if (!weather.isMissing(RawVariable.VAPOUR_PRESSURE, day)) {
            return;
        }
        double tmin = weather.value(RawVariable.TMIN, day);
        double tmax = weather.value(RawVariable.TMAX, day);
        double dewPoint = weather.value(RawVariable.DEW_POINT, day);
        double specific = weather.value(RawVariable.SPECIFIC_HUMIDITY, day);
        double lowest = humidity(RawVariable.HUMIDITY_MIN, day);
        double highest = humidity(RawVariable.HUMIDITY_MAX, day);
        double mean = humidity(RawVariable.HUMIDITY_MEAN, day);
        if (!Double.isNaN(dewPoint)) {
            fillVapourPressure(day, Atmosphere.saturationVapourPressure(dewPoint), "from dew point (FAO-56 eq. 14)");
        } else if (!Double.isNaN(specific)) {
            double pressure = Atmosphere.pressure(weather.site().elevationM());
            double value = specific * pressure / (WATER_TO_AIR + (1.0 - WATER_TO_AIR) * specific);
            fillVapourPressure(day, value, "from specific humidity and the pressure at the elevation (FAO-56 eq. 7)");
        } else if (!Double.isNaN(lowest + highest)) {
            double value = Atmosphere.vapourPressureFromHumidity(tmin, tmax, lowest, highest);
            fillVapourPressure(day, value, "from relative humidity extremes (FAO-56 eq. 17)");
        } else if (!Double.isNaN(mean)) {
            double value = Atmosphere.vapourPressureFromMeanHumidity(tmin, tmax, mean);
            fillVapourPressure(day, value, "from mean relative humidity (FAO-56 eq. 19)");
        } else {
            double value = Atmosphere.saturationVapourPressure(tmin);
            fillVapourPressure(day, value, "dew point taken as minimum temperature (FAO-56 eq. 48)");
        }
    }

    private double humidity(RawVariable variable, int day) {
        return Math.min(100.0, weather.value(variable, day));
    }

    private void fillVapourPressure(int day, double value, String action) {
        weather.fill(WeatherVariable.VAPOUR_PRESSURE, day, value, Origin.ESTIMATED, action);
    }

    private void solar(int day) {
        if (!weather.isMissing(RawVariable.SOLAR, day)) {
            return;
        }
        double sunshine = weather.value(RawVariable.SUNSHINE, day);
        double top = weather.extraterrestrial(day);
        if (!Double.isNaN(sunshine)) {
            double value = NetRadiation.solarFromSunshine(sunshine, weather.dayLength(day), top);
            weather.fill(WeatherVariable.SOLAR, day, value, Origin.ESTIMATED, "from sunshine (FAO-56 eq. 35)");
            return;
        }
        double value = NetRadiation.solarFromTemperatureRange(
                weather.value(RawVariable.TMIN, day),
                weather.value(RawVariable.TMAX, day),
                top,
                settings.solarTemperatureCoefficient(),
                weather.site().elevationM());
        weather.fill(WeatherVariable.SOLAR, day, value, Origin.ESTIMATED, solarFromRange);
    }
}
