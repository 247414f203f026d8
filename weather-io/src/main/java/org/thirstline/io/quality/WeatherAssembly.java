package org.thirstline.io.quality;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.io.weather.LayeredWeather;
import org.thirstline.io.weather.RadiationSkill;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.WeatherFiles;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;

/** Turns weather as found into weather without gaps: joins files, checks values, fills gaps, and keeps account of it all. */
public final class WeatherAssembly {

    private WeatherAssembly() {}

    /**
     * Assembles one file.
     *
     * @param raw what a reader gave
     * @param site where, or null to take it from the file
     * @param settings how to fill gaps
     * @throws InputException if the place is not known or a needed variable is absent
     */
    public static WeatherRecord assemble(RawWeather raw, @Nullable Site site, AssemblySettings settings) {
        return assemble(List.of(raw), site == null ? SiteInfo.UNKNOWN : SiteInfo.of(site), settings);
    }

    /**
     * Assembles the files of one place.
     *
     * @param files what the readers gave, at least one
     * @param given what is known about the place beside the files; it stands above what they say
     * @param settings how to fill gaps
     * @throws InputException if the place is not known, a needed variable is absent, or the files do not belong together
     */
    public static WeatherRecord assemble(List<RawWeather> files, SiteInfo given, AssemblySettings settings) {
        return assemble(new LayeredWeather(WeatherFiles.join(files), List.of()), null, given, settings);
    }

    /**
     * Assembles several sources, and fills gaps from another station.
     *
     * @param layers the sources laid over each other
     * @param second another station that fills gaps, or null
     * @param given what is known about the place beside the files; it stands above what they say
     * @param settings how to check values and fill gaps
     * @throws InputException if the place is not known, a needed variable is absent, or suspect values are to stop
     */
    public static WeatherRecord assemble(
            LayeredWeather layers, @Nullable RawWeather second, SiteInfo given, AssemblySettings settings) {
        RawWeather raw = layers.weather();
        Site site = site(given.or(raw.site()), raw.format().description());
        WorkingWeather weather = new WorkingWeather(raw, site, settings.suspectRule());
        UnitChecks.run(weather);
        new QualityChecks(weather).run();
        new SeriesChecks(weather).run();
        weather.stopAtSuspects();
        requireVariable(weather, RawVariable.TMIN);
        requireVariable(weather, RawVariable.TMAX);
        cutToTemperatures(weather);
        boolean rainKnown = isKnown(weather, RawVariable.RAIN);
        if (!rainKnown && settings.rainRequired()) {
            requireVariable(weather, RawVariable.RAIN);
        }
        if (settings.rainSumsSpread()) {
            RainSums.spread(weather);
        }
        if (second != null) {
            new SecondStation(weather, second).fill();
        }
        RadiationSkill skill = RadiationFit.of(weather, settings);
        double coefficient = skill == null ? settings.solarTemperatureCoefficient() : skill.coefficient();
        new GapFilling(weather, settings.withSolarTemperatureCoefficient(coefficient)).run(rainKnown);
        return new WeatherRecord(
                weather.series(),
                site,
                weather.issues(),
                raw.format(),
                raw.isInvented(),
                rainKnown,
                raw.sources(),
                raw.notes(),
                layers.shares(),
                skill);
    }

    private static Site site(SiteInfo known, String format) {
        Double latitudeDeg = known.latitudeDeg();
        Double elevationM = known.elevationM();
        if (latitudeDeg == null) {
            throw new InputException(InputError.LATITUDE_NEEDED, format);
        }
        if (elevationM == null) {
            throw new InputException(InputError.ELEVATION_NEEDED, format);
        }
        String name = known.name();
        return new Site(name == null ? "unnamed site" : name, latitudeDeg, elevationM);
    }

    private static boolean isKnown(WorkingWeather weather, RawVariable variable) {
        for (int day = weather.firstDay(); day < weather.endDay(); day++) {
            if (!weather.isMissing(variable, day)) {
                return true;
            }
        }
        return false;
    }

    private static void requireVariable(WorkingWeather weather, RawVariable variable) {
        if (!isKnown(weather, variable)) {
            throw new InputException(InputError.VARIABLE_ABSENT, variable.words(), variable.column());
        }
    }

    private static void cutToTemperatures(WorkingWeather weather) {
        int first = weather.firstDay();
        int end = weather.endDay();
        while (first < end && !hasTemperatures(weather, first)) {
            first++;
        }
        if (first == end) {
            throw new InputException(InputError.NO_USABLE_DAYS);
        }
        while (!hasTemperatures(weather, end - 1)) {
            end--;
        }
        weather.cut(first, end);
    }

    private static boolean hasTemperatures(WorkingWeather weather, int day) {
        return !weather.isMissing(RawVariable.TMIN, day) && !weather.isMissing(RawVariable.TMAX, day);
    }
}
