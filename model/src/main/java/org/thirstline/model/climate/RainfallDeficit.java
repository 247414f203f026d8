package org.thirstline.model.climate;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;

/**
 * Rainfall deficit of each growth year: normal minus actual rain in a window, positive when rain fell short. Immutable and thread-safe.
 */
public final class RainfallDeficit {

    private final GrowingSeason window;
    private final List<WindowRain> years;
    private final Normals normals;

    private RainfallDeficit(GrowingSeason window, List<WindowRain> years, Normals normals) {
        this.window = window;
        this.years = years;
        this.normals = normals;
    }

    /**
     * Compares every growth year whose window lies wholly in the series with the normal of a period.
     *
     * @param weather daily weather
     * @param site where
     * @param window days of the year to sum over, inside one growth year
     * @param period what is normal
     * @throws InputException if the window runs backwards or the period holds no usable year
     */
    public static RainfallDeficit of(WeatherSeries weather, Site site, GrowingSeason window, NormalPeriod period) {
        List<WindowRain> years = WindowRain.of(weather, site, window);
        return new RainfallDeficit(window, years, Normals.of(years, period));
    }

    /**
     * Compares every growth year with the mean of all usable years of the series, for records that end before or start after the
     * standard period.
     *
     * @param weather daily weather
     * @param site where
     * @param window days of the year to sum over, inside one growth year
     * @throws InputException if the window runs backwards or no year is usable
     */
    public static RainfallDeficit ofWholeRecord(WeatherSeries weather, Site site, GrowingSeason window) {
        NormalPeriod period =
                NormalPeriod.of(weather.start().getYear() - 1, weather.end().getYear());
        return of(weather, site, window, period);
    }

    /** Returns the window. */
    public GrowingSeason window() {
        return window;
    }

    /** Returns the normal and the years behind it. */
    public Normals normals() {
        return normals;
    }

    /** Returns the rain of every growth year whose window the weather holds, in order. */
    public List<WindowRain> years() {
        return years;
    }

    /**
     * Returns rain of a growth year.
     *
     * @param growthYear which
     */
    public Optional<WindowRain> year(int growthYear) {
        return years.stream().filter(year -> year.growthYear() == growthYear).findFirst();
    }

    /**
     * Returns normal minus actual rain of a growth year [mm], absent when the weather does not hold its whole window.
     *
     * @param growthYear which
     */
    public OptionalDouble deficitMm(int growthYear) {
        return year(growthYear)
                .map(year -> OptionalDouble.of(normals.meanRainMm() - year.rainMm()))
                .orElseGet(OptionalDouble::empty);
    }

    /**
     * Returns whether a growth year's rain is measured well enough to be called dry or wet: a filled day is a guess, and a gap is not
     * a dry day.
     *
     * @param growthYear which
     */
    public boolean isReliable(int growthYear) {
        return year(growthYear)
                .map(year -> year.filledDays() <= normals.period().maximumFilledDays())
                .orElse(false);
    }
}
