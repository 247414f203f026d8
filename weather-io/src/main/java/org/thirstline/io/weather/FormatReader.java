package org.thirstline.io.weather;

import java.util.List;

/** Reads one format. Implementations have no state, and convert units. */
interface FormatReader {

    /** Returns whether the first lines of a file are of this format. */
    boolean recognises(List<String> head);

    /**
     * Reads a file from its first line.
     *
     * @throws org.thirstline.model.error.InputException without the place, which the caller adds
     */
    void read(LineReader lines, ReadOptions options, RawWeatherBuilder out);
}
