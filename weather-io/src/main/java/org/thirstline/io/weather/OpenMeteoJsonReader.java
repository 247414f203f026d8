package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.List;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import tools.jackson.databind.JsonNode;

/** Open-Meteo daily in JSON: one array for each variable, units beside them. */
final class OpenMeteoJsonReader implements JsonReader {

    private record Series(RawVariable variable, String name, DailyUnit unit, JsonNode values) {}

    @Override
    public boolean recognises(JsonNode document) {
        JsonNode place = document.isArray() ? document.path(0) : document;
        return place.path("daily").path("time").isArray();
    }

    @Override
    public void read(JsonNode document, RawWeatherBuilder out) {
        if (document.isArray() && document.size() > 1) {
            throw new InputException(InputError.STATION_NEEDED, "several places; download one place a file");
        }
        JsonNode place = document.isArray() ? document.path(0) : document;
        JsonNode daily = place.path("daily");
        JsonNode times = daily.path("time");
        if (!times.isArray() || !daily.has("temperature_2m_max")) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH,
                    WeatherFormat.OPEN_METEO.description(),
                    "no daily temperature_2m_max; daily values are needed, not hourly ones");
        }
        out.setSite(new SiteInfo(
                null,
                JsonDocuments.numberOrNull(place.path("latitude")),
                JsonDocuments.numberOrNull(place.path("longitude")),
                JsonDocuments.numberOrNull(place.path("elevation"))));
        out.setWindHeightM(OpenMeteoReader.WIND_HEIGHT_M);
        long offsetSeconds = place.path("utc_offset_seconds").asLong(0);
        List<Series> series = series(daily, place.path("daily_units"), out);
        for (int i = 0; i < times.size(); i++) {
            JsonNode time = times.path(i);
            out.beginDay(OpenMeteoReader.date(time.isNumber() ? time.toString() : time.asString(""), offsetSeconds));
            for (Series one : series) {
                double value = JsonDocuments.number(one.values().path(i), one.name());
                out.set(one.variable(), one.unit().convert(value));
            }
        }
    }

    private static List<Series> series(JsonNode daily, JsonNode units, RawWeatherBuilder out) {
        List<Series> series = new ArrayList<>();
        for (OpenMeteoReader.Wanted wanted : OpenMeteoReader.WANTED) {
            for (String name : wanted.names()) {
                if (daily.has(name) && series.stream().noneMatch(s -> s.variable() == wanted.variable())) {
                    String column = name + " (" + units.path(name).asString("") + ")";
                    DailyUnit unit = OpenMeteoReader.unit(column, wanted.variable());
                    series.add(new Series(wanted.variable(), name, unit, daily.path(name)));
                    out.note(wanted.variable(), "series " + column);
                }
            }
        }
        return series;
    }
}
