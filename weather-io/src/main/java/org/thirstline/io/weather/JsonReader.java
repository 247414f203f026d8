package org.thirstline.io.weather;

import tools.jackson.databind.JsonNode;

/** Reads one format out of a JSON document. Implementations have no state, and convert units. */
interface JsonReader {

    /** Returns whether a document is of this format. */
    boolean recognises(JsonNode document);

    /**
     * Reads a document.
     *
     * @throws org.thirstline.model.error.InputException without the place, which the caller adds
     */
    void read(JsonNode document, RawWeatherBuilder out);
}
