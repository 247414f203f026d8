package org.thirstline.io.crop;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
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
        crop.calibration().ifPresent(calibration -> append(text, calibration));
        return text.toString();
    }

    /**
     * Returns the YAML text of a crop file that holds only what differs from a crop that comes with the program.
     *
     * @param base name of that crop
     * @param crop the crop
     * @param changed parameters to write
     */
    public static String basedOn(String base, CropFile crop, Set<CropParameter> changed) {
        StringBuilder text = new StringBuilder();
        line(text, 0, "name", quoted(crop.name()));
        line(text, 0, "based_on", quoted(base));
        if (!changed.isEmpty()) {
            text.append("parameters:\n");
            changed.stream().sorted().forEach(parameter -> append(text, crop, parameter));
        }
        crop.calibration().ifPresent(calibration -> append(text, calibration));
        return text.toString();
    }

    private static void append(StringBuilder text, CropCalibration calibration) {
        text.append("calibration:\n");
        line(text, 2, "study", quoted(calibration.study()));
        line(text, 2, "date", calibration.date());
        line(text, 2, "observations", Integer.toString(calibration.observations()));
        line(text, 2, "invented", Boolean.toString(calibration.invented()));
        list(text, "data", calibration.data(), data -> {
            line(text, 6, "file", quoted(data.file()));
            line(text, 6, "sha256", quoted(data.sha256()));
        });
        list(text, "fitted", calibration.fitted(), fitted -> {
            line(text, 6, "parameter", quoted(fitted.parameter()));
            line(text, 6, "value", number(fitted.value()));
            optional(text, "standard_error", fitted.standardError());
            optional(text, "low", fitted.low());
            optional(text, "high", fitted.high());
            optional(text, "lowest", fitted.lowest());
            optional(text, "highest", fitted.highest());
        });
        rows(text, "correlations", calibration.correlations());
        list(text, "errors", calibration.errors(), error -> {
            line(text, 6, "variable", quoted(error.variable()));
            line(text, 6, "kind", error.kind());
            line(text, 6, "size", number(error.size()));
            line(text, 6, "estimated", Boolean.toString(error.estimated()));
        });
        if (calibration.unsettled()) {
            line(text, 2, "unsettled", "true");
        }
        if (!calibration.draws().isEmpty()) {
            text.append("  draw_names:\n");
            calibration
                    .drawNames()
                    .forEach(name -> text.append("    - ").append(quoted(name)).append('\n'));
            rows(text, "draws", calibration.draws());
        }
    }

    private static void rows(StringBuilder text, String key, List<List<Double>> rows) {
        if (rows.isEmpty()) {
            return;
        }
        text.append("  ").append(key).append(":\n");
        rows.forEach(row -> text.append("    - ")
                .append(quoted(row.stream().map(CropFileText::number).collect(Collectors.joining(" "))))
                .append('\n'));
    }

    /** Writes a list of sections; the dash of each goes in front of its first line. */
    private static <T> void list(StringBuilder text, String key, List<T> items, Consumer<T> writer) {
        if (items.isEmpty()) {
            return;
        }
        text.append("  ").append(key).append(":\n");
        for (T item : items) {
            int start = text.length();
            writer.accept(item);
            text.setCharAt(start + 4, '-');
        }
    }

    private static void optional(StringBuilder text, String key, double value) {
        if (!Double.isNaN(value)) {
            line(text, 6, key, number(value));
        }
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
