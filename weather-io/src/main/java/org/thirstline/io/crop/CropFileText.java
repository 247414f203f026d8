package org.thirstline.io.crop;

import org.thirstline.model.crop.CropParameter;

/** Writes crop files that {@link CropFiles#read} takes. */
public final class CropFileText {

    private CropFileText() {}

    /** Returns the YAML text of a crop file. */
    public static String of(CropFile crop) {
        StringBuilder text = new StringBuilder();
        line(text, 0, "name", quoted(crop.name()));
        if (!crop.species().isEmpty()) {
            line(text, 0, "species", quoted(crop.species()));
        }
        if (!crop.cautions().isEmpty()) {
            text.append("cautions:\n");
            crop.cautions()
                    .forEach(caution ->
                            text.append("  - ").append(quoted(caution)).append('\n'));
        }
        text.append("parameters:\n");
        for (CropParameter parameter : CropParameter.values()) {
            append(text, crop, parameter);
        }
        return text.toString();
    }

    private static void append(StringBuilder text, CropFile crop, CropParameter parameter) {
        ParameterNote note = crop.note(parameter);
        text.append("  ").append(parameter.key()).append(":\n");
        line(text, 4, "value", number(crop.parameters().get(parameter)));
        line(text, 4, "unit", quoted(parameter.unit()));
        if (note.hasRange()) {
            line(text, 4, "low", number(note.low()));
            line(text, 4, "high", number(note.high()));
        } else if (note.noRange() != null) {
            line(text, 4, "no_range", quoted(note.noRange()));
        }
        line(text, 4, "source", quoted(note.source()));
        if (!note.basis().isEmpty()) {
            line(text, 4, "basis", quoted(note.basis()));
        }
        line(text, 4, "status", note.status().key());
    }

    private static void line(StringBuilder text, int indent, String key, String value) {
        text.append(" ".repeat(indent)).append(key).append(": ").append(value).append('\n');
    }

    private static String number(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n") + '"';
    }
}
