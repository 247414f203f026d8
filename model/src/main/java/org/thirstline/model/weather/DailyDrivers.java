package org.thirstline.model.weather;

import java.time.LocalDate;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.evapotranspiration.ReferenceEvapotranspiration;
import org.thirstline.model.solar.SolarGeometry;

/**
 * What follows from site and weather alone, computed once for a series and shared by every run over it. Immutable and thread-safe;
 * arrays handed out are live and must not be written.
 */
public final class DailyDrivers {

    private final Site site;
    private final WeatherSeries weather;
    private final double[] tmin;
    private final double[] tmax;
    private final double[] rain;
    private final double[] solar;
    private final double[] extraterrestrial;
    private final double[] dayLength;
    private final double[] et0;
    private final double[] relativeHumidity;
    private final double[] cropCoefficientClimate;

    private DailyDrivers(Site site, WeatherSeries weather) {
        this.site = site;
        this.weather = weather;
        int days = weather.days();
        tmin = weather.column(WeatherVariable.TMIN);
        tmax = weather.column(WeatherVariable.TMAX);
        rain = weather.column(WeatherVariable.RAIN);
        solar = weather.column(WeatherVariable.SOLAR);
        extraterrestrial = new double[days];
        dayLength = new double[days];
        et0 = new double[days];
        relativeHumidity = new double[days];
        cropCoefficientClimate = new double[days];
        fill();
    }

    /**
     * Derives the drivers of a series.
     *
     * @param site where
     * @param weather the series
     */
    public static DailyDrivers of(Site site, WeatherSeries weather) {
        return new DailyDrivers(site, weather);
    }

    private void fill() {
        double latitude = site.latitudeRad();
        double gamma = Atmosphere.psychrometricConstant(Atmosphere.pressure(site.elevationM()));
        LocalDate date = weather.start();
        for (int day = 0; day < tmin.length; day++, date = date.plusDays(1)) {
            int dayOfYear = date.getDayOfYear();
            double wind = weather.value(WeatherVariable.WIND, day);
            double vapourPressure = weather.value(WeatherVariable.VAPOUR_PRESSURE, day);
            extraterrestrial[day] = SolarGeometry.extraterrestrialRadiation(latitude, dayOfYear);
            dayLength[day] = SolarGeometry.dayLengthHours(latitude, dayOfYear);
            double clearSky = NetRadiation.clearSky(extraterrestrial[day], site.elevationM());
            et0[day] = ReferenceEvapotranspiration.penmanMonteith(
                    tmin[day], tmax[day], solar[day], clearSky, wind, vapourPressure, gamma);
            double saturated = Atmosphere.meanSaturationVapourPressure(tmin[day], tmax[day]);
            relativeHumidity[day] = Math.min(100.0, 100.0 * vapourPressure / saturated);
            double minimumHumidity =
                    Math.min(100.0, 100.0 * vapourPressure / Atmosphere.saturationVapourPressure(tmax[day]));
            cropCoefficientClimate[day] = climateTerm(wind, minimumHumidity);
        }
    }

    /**
     * Climate term of the crop coefficients, FAO-56 eqs 70 and 72, with wind and humidity inside the range the equations were
     * fitted to (1 to 6 m/s, 20 to 80 %; FAO-56 p. 136).
     */
    private static double climateTerm(double windMs, double minimumHumidityPct) {
        double wind = Math.max(1.0, Math.min(6.0, windMs));
        double humidity = Math.max(20.0, Math.min(80.0, minimumHumidityPct));
        return CropCoefficient.climateTerm(wind, humidity);
    }

    /** Returns the place. */
    public Site site() {
        return site;
    }

    /** Returns the weather the drivers were derived from. */
    public WeatherSeries weather() {
        return weather;
    }

    /** Returns the number of days. */
    public int days() {
        return tmin.length;
    }

    /** Returns daily minimum temperature [°C]. */
    public double tmin(int day) {
        return tmin[day];
    }

    /** Returns daily maximum temperature [°C]. */
    public double tmax(int day) {
        return tmax[day];
    }

    /** Returns daily mean temperature, half-way between the extremes (FAO-56 eq. 9) [°C]. */
    public double tmean(int day) {
        return 0.5 * (tmin[day] + tmax[day]);
    }

    /** Returns precipitation [mm/d]. */
    public double rain(int day) {
        return rain[day];
    }

    /** Returns global solar radiation R_s [MJ m⁻² d⁻¹]. */
    public double solar(int day) {
        return solar[day];
    }

    /** Returns extraterrestrial radiation R_a [MJ m⁻² d⁻¹]. */
    public double extraterrestrial(int day) {
        return extraterrestrial[day];
    }

    /** Returns day length N [h]. */
    public double dayLength(int day) {
        return dayLength[day];
    }

    /** Returns reference evapotranspiration ET_0 [mm/d]. */
    public double et0(int day) {
        return et0[day];
    }

    /** Returns mean relative humidity e_a/e_s [%]. */
    public double relativeHumidity(int day) {
        return relativeHumidity[day];
    }

    /** Returns the climate term of the crop coefficients [-], FAO-56 eqs 70 and 72 before the height factor. */
    public double cropCoefficientClimate(int day) {
        return cropCoefficientClimate[day];
    }
}
