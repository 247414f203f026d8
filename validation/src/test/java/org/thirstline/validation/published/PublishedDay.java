package org.thirstline.validation.published;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.evapotranspiration.ReferenceEvapotranspiration;
import org.thirstline.model.solar.SolarGeometry;
import org.thirstline.model.weather.Site;

/** A day of a worked example, with whatever of its weather the example gives. */
final class PublishedDay {

    /** Every quantity of atmosphere, radiation and evapotranspiration by its key. */
    static final Map<String, ToDoubleFunction<Inputs>> QUANTITIES = Map.ofEntries(
            entry("pressure", PublishedDay::pressure),
            entry("psychrometric_constant", PublishedDay::psychrometricConstant),
            entry("saturation", day -> Atmosphere.saturationVapourPressure(day.in.get("temperature_c"))),
            entry("mean_saturation", PublishedDay::meanSaturation),
            entry("vapour_pressure", PublishedDay::vapourPressure),
            entry("vapour_deficit", day -> day.meanSaturation() - day.vapourPressure()),
            entry("slope", day -> Atmosphere.saturationSlope(0.5 * (day.tmin() + day.tmax()))),
            entry("slope_at", day -> Atmosphere.saturationSlope(day.in.get("temperature_c"))),
            entry("latitude_rad", PublishedDay::latitude),
            entry("relative_distance", day -> SolarGeometry.inverseRelativeDistance(day.dayOfYear())),
            entry("declination", day -> SolarGeometry.declination(day.dayOfYear())),
            entry("sunset_hour_angle", PublishedDay::sunsetHourAngle),
            entry("extraterrestrial", PublishedDay::extraterrestrial),
            entry("day_length", PublishedDay::dayLength),
            entry("hour_angle", PublishedDay::hourAngle),
            entry("hourly_extraterrestrial", PublishedDay::hourlyExtraterrestrial),
            entry("hourly_clear_sky", day -> NetRadiation.clearSky(day.hourlyExtraterrestrial(), day.elevation())),
            entry("solar", PublishedDay::solar),
            entry("clear_sky", PublishedDay::clearSky),
            entry("black_body", day -> NetRadiation.blackBody(day.in.get("temperature_c"))),
            entry("net_shortwave", day -> NetRadiation.netShortwave(day.solar())),
            entry("net_longwave", PublishedDay::netLongwave),
            entry("net_radiation", day -> NetRadiation.netShortwave(day.solar()) - day.netLongwave()),
            entry("wind_factor", day -> Atmosphere.windAtTwoMetres(1.0, day.in.get("wind_height_m"))),
            entry("wind_two_metres", PublishedDay::wind),
            entry("reference_et", PublishedDay::referenceEvapotranspiration),
            entry("temperature_only_et", PublishedDay::temperatureOnly),
            entry("standardized_net_radiation", PublishedDay::standardizedNetRadiation),
            entry(
                    "standardized_longwave",
                    day -> NetRadiation.netShortwave(day.solar()) - day.standardizedNetRadiation()),
            entry("standardized_short", day -> day.standardized(false)),
            entry("standardized_tall", day -> day.standardized(true)));

    private final Inputs in;

    private PublishedDay(Inputs in) {
        this.in = in;
    }

    private static Map.Entry<String, ToDoubleFunction<Inputs>> entry(String key, ToDoubleFunction<PublishedDay> value) {
        return Map.entry(key, inputs -> value.applyAsDouble(new PublishedDay(inputs)));
    }

    private double tmin() {
        return in.get("tmin_c");
    }

    private double tmax() {
        return in.get("tmax_c");
    }

    private double elevation() {
        return in.get("elevation_m");
    }

    private int dayOfYear() {
        return in.whole("day_of_year");
    }

    private double latitude() {
        return new Site("published case", in.get("latitude_deg"), 0.0).latitudeRad();
    }

    private double pressure() {
        return Atmosphere.pressure(elevation());
    }

    private double psychrometricConstant() {
        return Atmosphere.psychrometricConstant(pressure());
    }

    private double meanSaturation() {
        return Atmosphere.meanSaturationVapourPressure(tmin(), tmax());
    }

    private double vapourPressure() {
        if (in.has("vapour_pressure_kpa")) {
            return in.get("vapour_pressure_kpa");
        }
        if (in.has("wet_bulb_c")) {
            return Atmosphere.vapourPressureFromWetBulb(
                    in.get("dry_bulb_c"), in.get("wet_bulb_c"), pressure(), in.get("psychrometer"));
        }
        if (in.has("dew_point_c")) {
            return Atmosphere.saturationVapourPressure(in.get("dew_point_c"));
        }
        if (in.has("humidity_mean_pct")) {
            return Atmosphere.vapourPressureFromMeanHumidity(tmin(), tmax(), in.get("humidity_mean_pct"));
        }
        return Atmosphere.vapourPressureFromHumidity(
                tmin(), tmax(), in.get("humidity_min_pct"), in.get("humidity_max_pct"));
    }

    private double sunsetHourAngle() {
        return SolarGeometry.sunsetHourAngle(latitude(), SolarGeometry.declination(dayOfYear()));
    }

    private double extraterrestrial() {
        return SolarGeometry.extraterrestrialRadiation(latitude(), dayOfYear());
    }

    private double dayLength() {
        return SolarGeometry.dayLengthHours(latitude(), dayOfYear());
    }

    private double hourAngle() {
        return SolarGeometry.hourAngle(
                dayOfYear(), in.get("clock_hour"), in.get("longitude_west_deg"), in.get("zone_longitude_west_deg"));
    }

    private double hourlyExtraterrestrial() {
        double halfHour = Math.PI / 24.0;
        return SolarGeometry.extraterrestrialRadiation(
                latitude(), dayOfYear(), hourAngle() - halfHour, hourAngle() + halfHour);
    }

    private double solar() {
        if (in.has("solar_mj_m2")) {
            return in.get("solar_mj_m2");
        }
        if (in.has("sunshine_h")) {
            return NetRadiation.solarFromSunshine(in.get("sunshine_h"), dayLength(), extraterrestrial());
        }
        return NetRadiation.solarFromTemperatureRange(tmin(), tmax(), extraterrestrial(), in.get("krs"), elevation());
    }

    private double clearSky() {
        return NetRadiation.clearSky(extraterrestrial(), elevation());
    }

    private double netLongwave() {
        return NetRadiation.netLongwave(tmin(), tmax(), vapourPressure(), solar(), clearSky());
    }

    private double wind() {
        // FAO-56 gives measurements at 2 m no correction; eq. 47 would change them by 0.02 %.
        double height = in.get("wind_height_m");
        return height == 2.0 ? in.get("wind_m_s") : Atmosphere.windAtTwoMetres(in.get("wind_m_s"), height);
    }

    private double referenceEvapotranspiration() {
        return ReferenceEvapotranspiration.penmanMonteith(
                tmin(), tmax(), solar(), clearSky(), wind(), vapourPressure(), psychrometricConstant());
    }

    private double temperatureOnly() {
        return ReferenceEvapotranspiration.temperatureOnly(tmin(), tmax(), extraterrestrial());
    }

    private double standardizedNetRadiation() {
        return ReferenceEvapotranspiration.standardizedNetRadiation(
                tmin(), tmax(), solar(), clearSky(), vapourPressure());
    }

    private double standardized(boolean tall) {
        return ReferenceEvapotranspiration.standardized(
                tall, tmin(), tmax(), solar(), clearSky(), wind(), vapourPressure(), psychrometricConstant());
    }
}
