package org.thirstline.io.weather;

import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Weather in JSON. A century of a dozen variables has about ten megabytes, so larger documents are refused, not held in memory. */
final class JsonDocuments {

    private static final long LONGEST_DOCUMENT_BYTES = 32L << 20;

    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxDocumentLength(LONGEST_DOCUMENT_BYTES)
                            .maxNestingDepth(50)
                            .maxStringLength(100_000)
                            .build())
                    .disable(StreamReadFeature.AUTO_CLOSE_SOURCE)
                    .build())
            .build();

    private JsonDocuments() {}

    private static Map<WeatherFormat, JsonReader> readers() {
        Map<WeatherFormat, JsonReader> readers = new EnumMap<>(WeatherFormat.class);
        readers.put(WeatherFormat.NASA_POWER, new NasaPowerJsonReader());
        readers.put(WeatherFormat.OPEN_METEO, new OpenMeteoJsonReader());
        return readers;
    }

    /** Reads a document of a known format. */
    static RawWeatherBuilder read(InputStream in, ReadOptions options) {
        JsonNode document = parse(in);
        for (Map.Entry<WeatherFormat, JsonReader> entry : readers().entrySet()) {
            boolean forced = options.format() == entry.getKey();
            if (forced || (options.format() == null && entry.getValue().recognises(document))) {
                RawWeatherBuilder out = new RawWeatherBuilder(entry.getKey());
                entry.getValue().read(document, out);
                return out;
            }
        }
        throw new InputException(
                InputError.FORMAT_UNKNOWN,
                "{ (JSON)",
                "in JSON: " + WeatherFormat.NASA_POWER.description() + "; " + WeatherFormat.OPEN_METEO.description());
    }

    private static JsonNode parse(InputStream in) {
        try {
            return MAPPER.readTree(in);
        } catch (JacksonException e) {
            throw new InputException(
                    InputError.LINE_MALFORMED,
                    "JSON that breaks off or is too long",
                    "a whole document: " + e.getOriginalMessage());
        }
    }

    /** Returns a number, NaN for null; fails at anything else. */
    static double number(JsonNode node, String name) {
        if (node.isNull() || node.isMissingNode()) {
            return Double.NaN;
        }
        double value = node.isNumber() ? node.asDouble() : Numbers.NO_NUMBER;
        if (!Double.isFinite(value)) {
            throw new InputException(InputError.NOT_A_NUMBER, name, shown(node));
        }
        return value;
    }

    /** Returns a number, or null where there is none. */
    static @Nullable Double numberOrNull(JsonNode node) {
        return node.isNumber() && Double.isFinite(node.asDouble()) ? (Double) node.asDouble() : null;
    }

    private static String shown(JsonNode node) {
        String text = node.toString();
        return text.length() > 60 ? text.substring(0, 60) + "..." : text;
    }
}
