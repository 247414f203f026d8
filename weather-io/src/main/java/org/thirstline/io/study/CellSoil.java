package org.thirstline.io.study;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.io.text.KeySpec;
import org.thirstline.io.text.Node;
import org.thirstline.io.text.Section;
import org.thirstline.model.error.InputException;
import org.thirstline.model.soil.SoilProfile;

/** The soil of a cell, read as the study file's. */
final class CellSoil {

    private CellSoil() {}

    /** Returns the filled columns that describe a soil. */
    static Map<String, String> fields(CellRow row) {
        Map<String, String> soil = new LinkedHashMap<>();
        copy(row, CellKeys.SOIL, soil);
        copy(row, CellKeys.TEXTURE, soil);
        return soil;
    }

    private static void copy(CellRow row, List<KeySpec> keys, Map<String, String> into) {
        for (KeySpec key : keys) {
            for (String spelling : key.spellings()) {
                String text = row.fields().get(spelling);
                if (text != null) {
                    into.put(spelling, text);
                }
            }
        }
    }

    static SoilProfile read(CellRow row, Map<String, String> fields) {
        Map<String, String> texture = new LinkedHashMap<>();
        copy(row, CellKeys.TEXTURE, texture);
        boolean described =
                !texture.isEmpty() || fields.keySet().stream().anyMatch(name -> name.startsWith("available_water"));
        boolean deep = fields.containsKey("depth") || fields.containsKey("depth_m");
        if (!described || !deep) {
            throw new InputException(CellError.SOIL_INCOMPLETE, String.join(", ", fields.keySet()))
                    .at(row.file() + ":" + row.line());
        }
        Map<String, Node.Entry> entries = new LinkedHashMap<>();
        fields.forEach((column, text) -> {
            if (!texture.containsKey(column)) {
                entries.put(column, entry(row, text));
            }
        });
        if (!texture.isEmpty()) {
            Map<String, Node.Entry> parts = new LinkedHashMap<>();
            texture.forEach((column, text) -> parts.put(column, entry(row, text)));
            entries.put("texture", new Node.Entry(row.line(), new Node.Mapping(row.line(), parts)));
        }
        Section soil = Section.root(row.file(), new Node.Mapping(row.line(), entries), StudyKeys.SOIL);
        return SoilReader.read(soil, assumption -> {});
    }

    private static Node.Entry entry(CellRow row, String text) {
        return new Node.Entry(row.line(), new Node.Scalar(row.line(), text, Node.ScalarKind.TEXT));
    }
}
