package org.thirstline.io.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.thirstline.io.text.Dimension;
import org.thirstline.io.text.JsonText;
import org.thirstline.io.text.KeySpec;
import org.thirstline.io.text.SectionKeys;
import org.thirstline.io.text.ValueKind;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The JSON Schema of study files, made from their keys. */
public final class StudySchema {

    /** Name of the packaged schema, beside this class. */
    public static final String RESOURCE = "study.schema.json";

    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
    private static final String NUMBER = "[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]+)?";
    private static final String MONTH_DAY = "(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])";

    private StudySchema() {}

    /** Returns the schema, JSON Schema 2020-12. */
    public static String text() {
        ObjectNode schema = JSON.objectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", "Thirstline study");
        schema.put(
                "description",
                "A study file. A value with a unit is written in one of two ways: a key that ends in the unit with a bare"
                        + " number (elevation_m: 213), or the plain key with number and unit (elevation: 700 ft).");
        describe(StudyKeys.STUDY, schema);
        ObjectNode definitions = schema.putObject("$defs");
        for (SectionKeys section : StudyKeys.sections()) {
            if (section != StudyKeys.STUDY) {
                describe(section, definitions.putObject(id(section)));
            }
        }
        return JsonText.of(schema);
    }

    private static String id(SectionKeys section) {
        return section.name().replace(' ', '-');
    }

    private static void describe(SectionKeys section, ObjectNode schema) {
        schema.put("type", "object");
        schema.put("additionalProperties", false);
        ObjectNode properties = schema.putObject("properties");
        section.keys().forEach(key -> describe(key, properties));
        ArrayNode rules = JSON.arrayNode();
        for (KeySpec key : section.keys()) {
            if (key.required()) {
                rules.add(oneOf(key.spellings()));
            } else if (key.spellings().size() > 1) {
                rules.add(notBoth(key.spellings(), Collections.emptyList()));
            }
        }
        section.alternatives().forEach(alternative -> rules.add(rule(section, alternative)));
        if (!rules.isEmpty()) {
            schema.set("allOf", rules);
        }
    }

    private static ObjectNode rule(SectionKeys section, SectionKeys.Alternative alternative) {
        List<List<String>> spellings = alternative.names().stream()
                .map(name -> section.find(name).orElseThrow().spellings())
                .toList();
        if (alternative.required()) {
            return oneOf(spellings.stream().flatMap(List::stream).toList());
        }
        return notBoth(spellings.get(0), spellings.get(1));
    }

    private static ObjectNode oneOf(List<String> keys) {
        ObjectNode rule = JSON.objectNode();
        if (keys.size() == 1) {
            rule.putArray("required").add(keys.get(0));
            return rule;
        }
        ArrayNode choices = rule.putArray("oneOf");
        keys.forEach(key -> choices.addObject().putArray("required").add(key));
        return rule;
    }

    /** No two of the first list if the second is empty, else none of the first with one of the second. */
    private static ObjectNode notBoth(List<String> first, List<String> second) {
        ObjectNode rule = JSON.objectNode();
        ArrayNode pairs = rule.putObject("not").putArray("anyOf");
        if (second.isEmpty()) {
            pairs.addObject().putArray("required").add(first.get(0)).add(first.get(1));
        } else {
            first.forEach(a -> second.forEach(
                    b -> pairs.addObject().putArray("required").add(a).add(b)));
        }
        return rule;
    }

    private static void describe(KeySpec key, ObjectNode properties) {
        for (String spelling : key.spellings()) {
            ObjectNode property = properties.putObject(spelling);
            property.put("description", description(key, spelling));
            if (key.kind() instanceof ValueKind.Measure measure && !spelling.equals(key.name())) {
                bounds(property, measure.lowest(), measure.highest());
            } else {
                describe(key.kind(), property);
            }
        }
    }

    private static String description(KeySpec key, String spelling) {
        String example =
                key.example().isEmpty() || !spelling.equals(key.name()) ? "" : " Example: " + key.exampleLine();
        String unit = key.kind() instanceof ValueKind.Measure measure && !spelling.equals(key.name())
                ? " [" + measure.dimension().unit() + "]"
                : "";
        String meaning = key.meaning();
        return Character.toUpperCase(meaning.charAt(0)) + meaning.substring(1) + unit + "." + example;
    }

    private static void describe(ValueKind kind, ObjectNode property) {
        if (kind instanceof ValueKind.Flag) {
            property.put("type", "boolean");
        } else if (kind instanceof ValueKind.Choice choice) {
            ArrayNode words = property.putArray("enum");
            choice.words().forEach(words::add);
        } else if (kind instanceof ValueKind.Plain plain) {
            bounds(property, plain.lowest(), plain.highest());
        } else if (kind instanceof ValueKind.Nested nested) {
            property.put("$ref", "#/$defs/" + id(nested.keys().get()));
        } else if (kind instanceof ValueKind.NestedList list) {
            array(property).put("$ref", "#/$defs/" + id(list.keys().get()));
        } else if (kind instanceof ValueKind.YearList) {
            bounds(array(property), 1000, 9999);
        } else if (kind instanceof ValueKind.TextList) {
            array(property).put("type", "string");
        } else if (kind instanceof ValueKind.Text) {
            property.putArray("type").add("string").add("number");
        } else if (kind instanceof ValueKind.Years) {
            property.putArray("type").add("string").add("integer");
            property.put("pattern", "^[0-9]{4}( *(-|to) *[0-9]{4})?$");
        } else {
            property.put("type", "string");
            property.put("pattern", "^" + pattern(kind) + "$");
        }
    }

    private static String pattern(ValueKind kind) {
        if (kind instanceof ValueKind.Measure measure) {
            return quantity(measure.dimension());
        } else if (kind instanceof ValueKind.Spacing) {
            return quantity(Dimension.LENGTH) + " *[xX×] *" + quantity(Dimension.LENGTH);
        } else if (kind instanceof ValueKind.Date) {
            return "[0-9]{4}-" + MONTH_DAY;
        } else if (kind instanceof ValueKind.DayOfYear) {
            return MONTH_DAY;
        } else if (kind instanceof ValueKind.DayWindow) {
            return MONTH_DAY + " +to +" + MONTH_DAY;
        }
        throw new IllegalArgumentException(kind.toString());
    }

    private static String quantity(Dimension dimension) {
        List<String> units = new ArrayList<>(dimension.factors().keySet());
        return NUMBER + " *(" + units.stream().map(StudySchema::escaped).collect(Collectors.joining("|")) + ")";
    }

    private static String escaped(String unit) {
        return Pattern.compile("([^A-Za-z0-9 %/°µ])").matcher(unit).replaceAll("\\\\$1");
    }

    private static ObjectNode array(ObjectNode property) {
        property.put("type", "array");
        property.put("minItems", 1);
        return property.putObject("items");
    }

    private static void bounds(ObjectNode property, double lowest, double highest) {
        property.put("type", "number");
        property.put("minimum", lowest);
        property.put("maximum", highest);
    }
}
