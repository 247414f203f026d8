package org.thirstline.io.weather;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Weather without gaps, and all that was done to get there. Immutable and thread-safe.
 *
 * @param series a value for every variable and day
 * @param site where
 * @param issues what was found in the files and what was filled
 * @param format format of the (first) file
 * @param invented whether the file says that its weather is invented
 * @param rainKnown whether the file gives rain at all; if not, the rain in the series means nothing
 * @param sources the files
 * @param notes remarks on where variables come from
 * @param shares how many values came from which of several sources; empty if there is one
 * @param radiation how good estimated radiation is where both it and measured radiation exist, or null where they do not
 */
public record WeatherRecord(
        WeatherSeries series,
        Site site,
        List<WeatherIssue> issues,
        WeatherFormat format,
        boolean invented,
        boolean rainKnown,
        List<SourceFile> sources,
        Map<RawVariable, String> notes,
        List<SourceShare> shares,
        @Nullable RadiationSkill radiation) {

    /** Copies lists and map. */
    public WeatherRecord {
        issues = List.copyOf(issues);
        sources = List.copyOf(sources);
        notes = Map.copyOf(notes);
        shares = List.copyOf(shares);
    }

    /** Returns the number of values of a variable with an origin. */
    public int count(WeatherVariable variable, Origin origin) {
        return series.count(variable, origin, 0, series.days() - 1);
    }
}
