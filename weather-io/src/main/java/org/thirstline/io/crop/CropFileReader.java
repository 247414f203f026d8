package org.thirstline.io.crop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Node;
import org.thirstline.io.text.Scalars;
import org.thirstline.io.text.Section;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.error.Check;

/** Turns a crop document into a crop file. Confined to one reading. */
final class CropFileReader {

    private static final String NO_SOURCE = "none given in the crop file";

    private final Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
    private final Map<CropParameter, ParameterNote> notes = new EnumMap<>(CropParameter.class);

    private CropFileReader() {}

    static CropFile read(String file, Node.Mapping document) {
        return new CropFileReader().read(Section.root(file, document, CropFileKeys.CROP));
    }

    private CropFile read(Section root) {
        String name = root.required("name", root.text("name"));
        CropFile base = root.text("based_on")
                .map(baseName -> root.build("based_on", () -> CropFiles.bundled(baseName)))
                .orElse(null);
        root.section("parameters").ifPresent(section -> readParameters(section, base));
        List<String> cautions = new ArrayList<>(root.values("cautions", Scalars::text));
        String species = root.text("species").orElse("");
        if (base == null) {
            requireAll(root);
        } else {
            inherit(base);
            cautions.addAll(0, base.cautions());
            species = species.isEmpty() ? base.species() : species;
        }
        CropParameters parameters = root.build("parameters", () -> CropParameters.of(name, values));
        return new CropFile(
                name,
                species,
                parameters,
                notes,
                cautions,
                root.section("calibration").map(section -> CropCalibrationReader.read(section, parameters)));
    }

    private void requireAll(Section root) {
        List<String> missing = Arrays.stream(CropParameter.values())
                .filter(parameter -> !values.containsKey(parameter))
                .map(CropParameter::key)
                .toList();
        if (!missing.isEmpty()) {
            throw root.refusal(
                    "parameters",
                    InputFileError.INCONSISTENT,
                    "without 'based_on' every parameter must be given; missing are " + String.join(", ", missing));
        }
    }

    private void inherit(CropFile base) {
        for (CropParameter parameter : CropParameter.values()) {
            values.putIfAbsent(parameter, base.parameters().get(parameter));
            notes.putIfAbsent(parameter, base.note(parameter));
        }
    }

    private void readParameters(Section section, @Nullable CropFile base) {
        for (CropParameter parameter : CropParameter.values()) {
            Node.Entry entry = section.node().entries().get(parameter.key());
            if (entry != null) {
                ParameterNote before = base == null ? null : base.note(parameter);
                read(parameter, section, entry.value() instanceof Node.Scalar, before);
            }
        }
    }

    private void read(CropParameter parameter, Section section, boolean bare, @Nullable ParameterNote before) {
        String key = parameter.key();
        double value;
        if (bare) {
            value = section.required(key, section.value(key, Scalars::anyNumber));
            notes.put(parameter, note(Optional.empty(), before));
        } else {
            Section details = section.section(key).orElseThrow();
            requireUnit(parameter, details);
            value = details.number("value").orElseThrow();
            notes.put(parameter, note(Optional.of(details), before));
        }
        values.put(
                parameter,
                section.build(
                        key,
                        () -> Check.range(
                                "the value", value, parameter.unit(), parameter.lowest(), parameter.highest())));
    }

    private static void requireUnit(CropParameter parameter, Section details) {
        details.text("unit").ifPresent(unit -> {
            if (!unit.equals(parameter.unit())) {
                throw details.refusal(
                        "unit", InputFileError.WRONG_UNIT, unit, unit, parameter.key(), "'" + parameter.unit() + "'");
            }
        });
    }

    private static ParameterNote note(Optional<Section> details, @Nullable ParameterNote before) {
        double low =
                details.map(section -> section.number("low").orElse(Double.NaN)).orElse(Double.NaN);
        double high = details.map(section -> section.number("high").orElse(Double.NaN))
                .orElse(Double.NaN);
        details.ifPresent(section -> requireOrder(section, low, high));
        String noRange = details.flatMap(section -> section.text("no_range")).orElse(null);
        if (Double.isNaN(low) && noRange == null) {
            return new ParameterNote(
                    before == null ? low : before.low(),
                    before == null ? high : before.high(),
                    before == null ? "none given in the crop file" : before.noRange(),
                    source(details),
                    basis(details, before),
                    status(details));
        }
        return new ParameterNote(low, high, noRange, source(details), basis(details, before), status(details));
    }

    private static void requireOrder(Section section, double low, double high) {
        if (Double.isNaN(low) != Double.isNaN(high)) {
            String given = Double.isNaN(low) ? "high" : "low";
            throw section.refusal(given, InputFileError.INCONSISTENT, "'low' and 'high' are only given together");
        }
        if (low > high) {
            throw section.refusal("low", InputFileError.INCONSISTENT, "low (" + low + ") is above high (" + high + ")");
        }
    }

    private static String source(Optional<Section> details) {
        return details.flatMap(section -> section.text("source")).orElse(NO_SOURCE);
    }

    private static String basis(Optional<Section> details, @Nullable ParameterNote before) {
        return details.flatMap(section -> section.text("basis")).orElse(before == null ? "" : before.basis());
    }

    private static Evidence status(Optional<Section> details) {
        return details.flatMap(section -> section.choice("status"))
                .map(word -> Evidence.values()[Evidence.keys().indexOf(word)])
                .orElse(Evidence.JUDGEMENT);
    }
}
