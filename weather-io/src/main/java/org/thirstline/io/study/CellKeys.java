package org.thirstline.io.study;

import java.util.List;
import java.util.Set;
import org.thirstline.io.text.Dimension;
import org.thirstline.io.text.KeySpec;
import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;

/** The columns of a table of cells: those of the study file's stand and soil, laid side by side, and what a place needs. */
final class CellKeys {

    static final String NAME = "cell";

    private static final ValueKind TEXT = new ValueKind.Text();
    private static final Set<String> NOT_IN_A_TABLE = Set.of("layers", "texture");

    /** The soil's, without layers; the texture's parts are columns of their own. */
    static final List<KeySpec> SOIL = StudyKeys.SOIL.keys().stream()
            .filter(key -> !NOT_IN_A_TABLE.contains(key.name()))
            .toList();

    static final List<KeySpec> TEXTURE = StudyKeys.TEXTURE.keys();

    static final SectionKeys CELL = cell();

    private CellKeys() {}

    private static SectionKeys cell() {
        SectionKeys.Builder keys = SectionKeys.of(NAME)
                .required(NAME, TEXT, "r014-c203", "name of the cell; each name once")
                .optional(
                        "weather",
                        TEXT,
                        "grid/014-203.csv",
                        "weather file, relative to the table; the study's if empty")
                .optional("format", TEXT, "plain", "name of the file's format; the study's if empty, else recognised")
                .optional("station", TEXT, "USW00003870", "station to take from a file with several")
                .optional(
                        "latitude",
                        StudyKeys.measure(Dimension.ANGLE, -90, 90),
                        "44.6 deg",
                        "latitude, north positive; the weather file's if empty")
                .optional(
                        "longitude",
                        StudyKeys.measure(Dimension.ANGLE, -180, 360),
                        "-88.37 deg",
                        "longitude, east positive; not used")
                .optional(
                        "elevation",
                        StudyKeys.measure(Dimension.LENGTH, -430, 8850),
                        "213 m",
                        "elevation above sea level; the weather file's if empty")
                .optional("crop", TEXT, "switchgrass", "crop, or crop file relative to the table; the study's if empty")
                .optional(
                        "planting_year",
                        new ValueKind.Plain(1800, 2299),
                        "1996",
                        "year of planting, on the study's day; instead of planted");
        StudyKeys.STAND.keys().forEach(key -> add(keys, key));
        keys.optional(
                "zone", TEXT, "valley", "zone of the study whose soil the cell has, instead of columns of the soil");
        SOIL.forEach(key -> add(keys, key));
        TEXTURE.forEach(key -> add(keys, key));
        return keys.atMostOneOf("planted", "planting_year")
                .atMostOneOf("spacing", "plants")
                .atMostOneOf("available_water", "sand")
                .build();
    }

    private static void add(SectionKeys.Builder keys, KeySpec key) {
        keys.optional(key.name(), key.kind(), key.example(), key.meaning());
    }
}
