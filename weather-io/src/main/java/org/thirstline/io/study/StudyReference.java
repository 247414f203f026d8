package org.thirstline.io.study;

import java.util.Locale;
import org.thirstline.io.text.Dimension;
import org.thirstline.io.text.KeySpec;
import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;

/** The reference of study files in Markdown, made from their keys. */
public final class StudyReference {

    private StudyReference() {}

    /** Returns the page. */
    public static String markdown() {
        StringBuilder page = new StringBuilder("""
                # The fields of a study file

                A study is a YAML file (or JSON with the same keys). Relative paths in it count from its own folder.

                Every value with a unit is written in one of two ways:

                    elevation_m: 213          # the key ends in the unit, the number is bare
                    elevation: 700 ft         # the plain key, number and unit behind it

                Dates are `year-month-day`, days of any year `month-day`, windows `02-01 to 04-15`, spans of years `1991-2020`.

                """);
        StudyKeys.sections().forEach(section -> append(page, section));
        page.append("## Units\n\n| what | key ending | units accepted behind the number |\n|---|---|---|\n");
        for (Dimension dimension : Dimension.values()) {
            page.append("| %s | `_%s` | %s |\n"
                    .formatted(
                            dimension.words(),
                            dimension.suffix(),
                            String.join(", ", dimension.factors().keySet())));
        }
        return page.toString();
    }

    private static void append(StringBuilder page, SectionKeys section) {
        String name = section.name();
        page.append("## ")
                .append(name.substring(0, 1).toUpperCase(Locale.ROOT))
                .append(name.substring(1))
                .append("\n\n");
        for (SectionKeys.Alternative alternative : section.alternatives()) {
            String rule = alternative.required() ? "Exactly one of" : "Not both of";
            page.append(rule)
                    .append(" `")
                    .append(String.join("`, `", alternative.names()))
                    .append("`.\n");
        }
        page.append(section.alternatives().isEmpty() ? "" : "\n")
                .append("| key | needed | meaning | example |\n|---|---|---|---|\n");
        section.keys().forEach(key -> append(page, key));
        page.append('\n');
    }

    private static void append(StringBuilder page, KeySpec key) {
        boolean nested = key.kind() instanceof ValueKind.Nested || key.kind() instanceof ValueKind.NestedList;
        String example = nested && key.example().isEmpty() ? "see below" : "`" + key.exampleLine() + "`";
        page.append("| `%s` | %s | %s | %s |\n"
                .formatted(String.join("`, `", key.spellings()), key.required() ? "yes" : "", key.meaning(), example));
    }
}
