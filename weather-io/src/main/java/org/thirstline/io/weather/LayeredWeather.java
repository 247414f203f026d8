package org.thirstline.io.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Several sources as one record: each value comes from the first source that has it. Sources need not lie in the same place. Immutable.
 *
 * @param weather the values
 * @param shares how many of them came from which source, by variable and year; empty for a single source
 */
public record LayeredWeather(RawWeather weather, List<SourceShare> shares) {

    private static final double STANDARD_HEIGHT_M = 2.0;

    /** Different ways to say how moist the air is: the first source that says it in any of them is believed. */
    private static final Set<RawVariable> HUMIDITY = EnumSet.of(
            RawVariable.VAPOUR_PRESSURE,
            RawVariable.DEW_POINT,
            RawVariable.SPECIFIC_HUMIDITY,
            RawVariable.HUMIDITY_MIN,
            RawVariable.HUMIDITY_MAX,
            RawVariable.HUMIDITY_MEAN);

    /** Copies the list. */
    public LayeredWeather {
        shares = List.copyOf(shares);
    }

    private record Key(RawVariable variable, int year, String source) {}

    /**
     * Lays sources over each other.
     *
     * @param layers at least one, the one with precedence first
     */
    public static LayeredWeather of(List<WeatherLayer> layers) {
        if (layers.size() == 1 && layers.get(0).variables().isEmpty()) {
            return new LayeredWeather(layers.get(0).weather(), List.of());
        }
        RawWeatherBuilder out = new RawWeatherBuilder(layers.get(0).weather().format());
        Map<Key, SourceShare> shares = new LinkedHashMap<>();
        boolean sameHeight = windHeights(layers) == 1;
        for (WeatherLayer layer : layers) {
            RawWeather weather = layer.weather();
            out.setSite(out.site().or(weather.site()));
            out.setInvented(out.isInvented() || weather.isInvented());
            weather.sources().forEach(out::addSource);
            if (layer.gives(RawVariable.RAIN)) {
                weather.rainSums().forEach(out::addRainSum);
            }
            for (WeatherIssue issue : weather.issues()) {
                RawVariable variable = issue.variable();
                if (issue.kind() != IssueKind.ABSENT_DATE && (variable == null || layer.gives(variable))) {
                    out.addIssue(issue);
                }
            }
            if (weather.has(RawVariable.WIND) && layer.gives(RawVariable.WIND)) {
                out.setWindHeightM(sameHeight ? weather.windHeightM() : STANDARD_HEIGHT_M);
            }
            add(layer, sameHeight, out, shares);
        }
        return new LayeredWeather(out.build(), new ArrayList<>(shares.values()));
    }

    private static long windHeights(List<WeatherLayer> layers) {
        return layers.stream()
                .filter(layer -> layer.weather().has(RawVariable.WIND) && layer.gives(RawVariable.WIND))
                .mapToDouble(layer -> layer.weather().windHeightM())
                .distinct()
                .count();
    }

    private static void add(
            WeatherLayer layer, boolean sameHeight, RawWeatherBuilder out, Map<Key, SourceShare> shares) {
        RawWeather weather = layer.weather();
        boolean lift = !sameHeight && weather.windHeightM() != STANDARD_HEIGHT_M;
        for (RawVariable variable : weather.given()) {
            if (layer.gives(variable)) {
                out.note(variable, layer.name() + note(weather, variable));
            }
        }
        for (int day = 0; day < weather.days(); day++) {
            LocalDate date = weather.date(day);
            long epochDay = date.toEpochDay();
            boolean moistKnown = HUMIDITY.stream().anyMatch(v -> !Double.isNaN(out.value(epochDay, v)));
            for (RawVariable variable : weather.given()) {
                double value = weather.value(variable, day);
                boolean taken =
                        !Double.isNaN(out.value(epochDay, variable)) || (moistKnown && HUMIDITY.contains(variable));
                if (!layer.gives(variable) || Double.isNaN(value) || taken) {
                    continue;
                }
                boolean lifted = lift && variable == RawVariable.WIND;
                out.markPresent(epochDay);
                out.put(epochDay, variable, lifted ? Atmosphere.windAtTwoMetres(value, weather.windHeightM()) : value);
                takeOrigin(weather, variable, day, lifted, out);
                shares.merge(
                        new Key(variable, date.getYear(), layer.name()),
                        new SourceShare(variable, layer.name(), date.getYear(), 1, epochDay, epochDay),
                        (before, one) -> before.andDay(epochDay));
            }
        }
    }

    private static String note(RawWeather weather, RawVariable variable) {
        String note = weather.notes().get(variable);
        return note == null ? "" : ", " + note;
    }

    private static void takeOrigin(
            RawWeather weather, RawVariable variable, int day, boolean lifted, RawWeatherBuilder out) {
        WeatherVariable engineVariable = variable.engineVariable();
        if (engineVariable == null) {
            return;
        }
        Origin origin = lifted ? Origin.ESTIMATED : weather.origin(engineVariable, day);
        if (origin != Origin.MEASURED) {
            out.setOrigin(weather.date(day).toEpochDay(), engineVariable, origin);
        }
    }
}
