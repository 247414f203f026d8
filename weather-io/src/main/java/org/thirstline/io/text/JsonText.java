package org.thirstline.io.text;

import java.io.StringWriter;
import java.util.Map;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.JsonNode;

/**
 * Writes JSON for people: two spaces, a line feed on every machine, the order it was built in. A tree is walked here, for a mapper of
 * objects takes longer to start than all of it to write. Thread-safe.
 */
public final class JsonText {

    private static final JsonFactory FACTORY = new JsonFactory();
    private static final DefaultIndenter INDENT = new DefaultIndenter("  ", "\n");

    private JsonText() {}

    private static final class Layout extends ObjectWriteContext.Base {

        @Override
        public boolean hasPrettyPrinter() {
            return true;
        }

        @Override
        public PrettyPrinter getPrettyPrinter() {
            return new DefaultPrettyPrinter().withObjectIndenter(INDENT).withArrayIndenter(INDENT);
        }
    }

    /** Returns the text with a line feed at its end. */
    public static String of(JsonNode node) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(new Layout(), text)) {
            write(node, json);
        }
        return text + "\n";
    }

    private static void write(JsonNode node, JsonGenerator json) {
        switch (node.getNodeType()) {
            case OBJECT -> {
                json.writeStartObject();
                for (Map.Entry<String, JsonNode> property : node.properties()) {
                    json.writeName(property.getKey());
                    write(property.getValue(), json);
                }
                json.writeEndObject();
            }
            case ARRAY -> {
                json.writeStartArray();
                for (JsonNode element : node) {
                    write(element, json);
                }
                json.writeEndArray();
            }
            case STRING -> json.writeString(node.stringValue());
            case BOOLEAN -> json.writeBoolean(node.booleanValue());
            case NUMBER -> number(node, json);
            case NULL -> json.writeNull();
            default -> throw new IllegalArgumentException("JSON has no " + node.getNodeType());
        }
    }

    private static void number(JsonNode node, JsonGenerator json) {
        switch (node.numberType()) {
            case INT -> json.writeNumber(node.intValue());
            case LONG -> json.writeNumber(node.longValue());
            case DOUBLE -> json.writeNumber(node.doubleValue());
            default -> json.writeNumber(node.decimalValue());
        }
    }
}
