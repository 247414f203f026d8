package org.thirstline.io.text;

import java.util.List;
import org.thirstline.model.error.InputException;

/** Refuses sections whose keys are unknown, missing, doubled or contradicting. */
final class SectionCheck {

    private SectionCheck() {}

    static void check(Section section, Node.Mapping node, SectionKeys keys) {
        node.entries().forEach((key, entry) -> {
            if (keys.find(key).isEmpty()) {
                throw unknown(key, keys).at(section.at(entry.line(), section.join(key)));
            }
        });
        keys.keys().forEach(key -> oneSpelling(section, node, key));
        keys.alternatives().forEach(alternative -> oneAlternative(section, keys, alternative));
        for (KeySpec key : keys.keys()) {
            if (key.required() && !section.has(key.name())) {
                throw new InputException(InputFileError.MISSING_KEY, key.name(), key.meaning(), key.exampleLine())
                        .at(section.place(key.name()));
            }
        }
    }

    private static InputException unknown(String found, SectionKeys keys) {
        for (KeySpec key : keys.keys()) {
            if (key.kind() instanceof ValueKind.Measure measure && found.startsWith(key.name() + "_")) {
                String unit = found.substring(key.name().length() + 1);
                Dimension dimension = measure.dimension();
                String allowed = "%s_%s as the key, or '%s: (number) (unit)' with one of %s"
                        .formatted(
                                key.name(),
                                dimension.suffix(),
                                key.name(),
                                String.join(", ", dimension.factors().keySet()));
                return new InputException(
                        InputFileError.WRONG_UNIT, found, unit, dimension.words() + " in a key", allowed);
            }
        }
        List<String> allowed = keys.spellings();
        return new InputException(
                InputFileError.UNKNOWN_KEY, found, Nearest.hint(found, allowed), String.join(", ", allowed));
    }

    private static void oneSpelling(Section section, Node.Mapping node, KeySpec key) {
        List<String> given =
                key.spellings().stream().filter(node.entries()::containsKey).toList();
        if (given.size() > 1) {
            throw section.refusal(
                    key.name(),
                    InputFileError.CONFLICT,
                    "'" + given.get(0) + "'",
                    "'" + given.get(1) + "'",
                    "keep one");
        }
    }

    private static void oneAlternative(Section section, SectionKeys keys, SectionKeys.Alternative alternative) {
        List<String> given = alternative.names().stream().filter(section::has).toList();
        if (given.size() > 1) {
            String second = given.get(1);
            throw section.refusal(
                    second, InputFileError.CONFLICT, "'" + given.get(0) + "'", "'" + second + "'", "keep one of them");
        }
        if (given.isEmpty() && alternative.required()) {
            KeySpec first = keys.declared(alternative.names().get(0));
            String names = String.join("' or '", alternative.names());
            throw section.refusal(
                    first.name(), InputFileError.MISSING_KEY, names, first.meaning(), first.exampleLine());
        }
    }
}
