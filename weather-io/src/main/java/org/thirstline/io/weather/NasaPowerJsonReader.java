package org.thirstline.io.weather;

import java.util.Map;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import tools.jackson.databind.JsonNode;

/** NASA POWER daily point in JSON, of today and with the features array of before 2021. */
final class NasaPowerJsonReader implements JsonReader {

    private static final String SOLAR = "ALLSKY_SFC_SW_DWN";

    private static final Map<String, RawVariable> PARAMETERS = Map.of(
            "T2M_MIN",
            RawVariable.TMIN,
            "T2M_MAX",
            RawVariable.TMAX,
            "T2M",
            RawVariable.TMEAN,
            "PRECTOTCORR",
            RawVariable.RAIN,
            "PRECTOT",
            RawVariable.RAIN,
            "RH2M",
            RawVariable.HUMIDITY_MEAN,
            "T2MDEW",
            RawVariable.DEW_POINT,
            "WS2M",
            RawVariable.WIND,
            "WS10M",
            RawVariable.WIND,
            SOLAR,
            RawVariable.SOLAR);

    @Override
    public boolean recognises(JsonNode document) {
        return feature(document).path("properties").path("parameter").isObject();
    }

    private static JsonNode feature(JsonNode document) {
        JsonNode features = document.path("features");
        return features.isArray() ? features.path(0) : document;
    }

    @Override
    public void read(JsonNode document, RawWeatherBuilder out) {
        JsonNode feature = feature(document);
        JsonNode parameters = feature.path("properties").path("parameter");
        if (!parameters.isObject() || !parameters.has("T2M_MIN") || !parameters.has("T2M_MAX")) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.NASA_POWER.description(), "no T2M_MIN and T2M_MAX");
        }
        JsonNode place = feature.path("geometry").path("coordinates");
        out.setSite(new SiteInfo(
                null,
                JsonDocuments.numberOrNull(place.path(1)),
                JsonDocuments.numberOrNull(place.path(0)),
                JsonDocuments.numberOrNull(place.path(2))));
        JsonNode header = document.path("header");
        double missing = missing(header.has("fill_value") ? header.path("fill_value") : header.path("fillValue"));
        if (parameters.has("WS10M") && !parameters.has("WS2M")) {
            out.setWindHeightM(10.0);
        }
        PARAMETERS.forEach((name, variable) -> {
            boolean second = (name.equals("WS10M") && parameters.has("WS2M"))
                    || (name.equals("PRECTOT") && parameters.has("PRECTOTCORR"));
            if (parameters.has(name) && !second) {
                take(name, variable, parameters.path(name), missing, out);
            }
        });
        convertSolar(document.path("parameters").path(SOLAR).path("units").asString(""), out);
    }

    private static double missing(JsonNode fill) {
        if (fill.isString()) {
            String text = fill.asString();
            return Numbers.parse(text, 0, text.length());
        }
        return fill.isNumber() ? fill.asDouble() : -999.0;
    }

    private static void take(
            String name, RawVariable variable, JsonNode byDate, double missing, RawWeatherBuilder out) {
        for (Map.Entry<String, JsonNode> entry : byDate.properties()) {
            long day = Numbers.compactDate(entry.getKey());
            out.markPresent(day);
            double value = JsonDocuments.number(entry.getValue(), name);
            if (value != missing && value != -999.0) {
                out.setOnce(day, variable, value);
            }
        }
    }

    private static void convertSolar(String unit, RawWeatherBuilder out) {
        if (out.has(RawVariable.SOLAR)) {
            out.convert(RawVariable.SOLAR, unit.isEmpty() ? NasaPowerReader.guess(out) : NasaPowerReader.unit(unit));
        }
    }
}
