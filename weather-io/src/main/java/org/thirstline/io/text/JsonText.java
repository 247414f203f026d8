package org.thirstline.io.text;

import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.json.JsonMapper;

/** Writes JSON for people: two spaces, a line feed on every machine, the order it was built in. */
public final class JsonText {

    private static final DefaultIndenter INDENT = new DefaultIndenter("  ", "\n");

    private static final ObjectWriter WRITER = JsonMapper.builder()
            .build()
            .writer()
            .with(new DefaultPrettyPrinter().withObjectIndenter(INDENT).withArrayIndenter(INDENT));

    private JsonText() {}

    /** Returns the text with a line feed at its end. */
    public static String of(JsonNode node) {
        return WRITER.writeValueAsString(node) + "\n";
    }
}
