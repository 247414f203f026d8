package org.thirstline.io.text;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.thirstline.model.error.InputException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.TokenStreamFactory;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.dataformat.yaml.YAMLFactory;
import tools.jackson.dataformat.yaml.YAMLParser;

/** Reads YAML or JSON (by the ending {@code .json}) into nodes that know their lines. */
public final class DocumentReader {

    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private static final Pattern YAML_MARK = Pattern.compile(" in reader, line ([0-9]+), column");

    private final String file;
    private final JsonParser parser;

    private DocumentReader(String file, JsonParser parser) {
        this.file = file;
        this.parser = parser;
    }

    /**
     * Reads a file whose top level is a section of keys.
     *
     * @throws InputException if the file is absent, not UTF-8, not well-formed, or holds anything but one section
     */
    public static Node.Mapping read(Path path) {
        return parse(path.toString(), textOf(path));
    }

    /** Reads a document from text; {@code file} is the name used in messages. */
    public static Node.Mapping parse(String file, String text) {
        String content = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
        boolean json = file.toLowerCase(Locale.ROOT).endsWith(".json");
        // A mapper would build all that it needs to fill objects, which a parser does not.
        TokenStreamFactory factory = json ? new JsonFactory() : new YAMLFactory();
        try (JsonParser parser = factory.createParser(ObjectReadContext.empty(), content)) {
            return new DocumentReader(file, parser).document();
        } catch (JacksonException malformed) {
            throw syntaxError(file, malformed);
        }
    }

    /** YAML messages run over several lines, with excerpts of the file indented between the reasons; the last mark is the place. */
    private static InputException syntaxError(String file, JacksonException malformed) {
        String message = malformed.getOriginalMessage();
        String reason = message.lines()
                .filter(part -> !part.isBlank() && !Character.isWhitespace(part.charAt(0)))
                .collect(Collectors.joining(", "));
        int line = malformed.getLocation() == null
                ? 1
                : Math.max(1, malformed.getLocation().getLineNr());
        Matcher mark = YAML_MARK.matcher(message);
        while (mark.find()) {
            line = Integer.parseInt(mark.group(1));
        }
        return new InputException(InputFileError.SYNTAX, reason).at(file + ":" + line);
    }

    private static String textOf(Path path) {
        try {
            return Files.readString(path);
        } catch (NoSuchFileException absent) {
            throw new InputException(
                    InputFileError.FILE_NOT_FOUND, path, path.toAbsolutePath().normalize());
        } catch (CharacterCodingException coding) {
            throw new InputException(InputFileError.UNREADABLE, "it is not UTF-8 text").at(path.toString());
        } catch (IOException failed) {
            throw new InputException(InputFileError.UNREADABLE, String.valueOf(failed.getMessage()))
                    .at(path.toString());
        }
    }

    private Node.Mapping document() {
        JsonToken first = parser.nextToken();
        if (first != JsonToken.START_OBJECT) {
            int line = first == null ? 1 : line();
            String found = first == null ? "an empty file" : value().kind();
            throw refused(line, InputFileError.WRONG_KIND, found, "keys with values");
        }
        Node.Mapping root = mapping();
        if (parser.nextToken() != null) {
            throw refused(line(), InputFileError.SYNTAX, "a second document starts here; one file holds one");
        }
        return root;
    }

    private Node value() {
        if (parser instanceof YAMLParser yaml && yaml.isCurrentAlias()) {
            throw refused(line(), InputFileError.SYNTAX, "references to anchors (*name) are not supported");
        }
        return switch (parser.currentToken()) {
            case START_OBJECT -> mapping();
            case START_ARRAY -> sequence();
            case VALUE_NULL -> new Node.Scalar(line(), "", Node.ScalarKind.NOTHING);
            case VALUE_TRUE, VALUE_FALSE -> new Node.Scalar(line(), parser.getString(), Node.ScalarKind.FLAG);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT ->
                new Node.Scalar(line(), parser.getString(), Node.ScalarKind.NUMBER);
            default -> new Node.Scalar(line(), parser.getString(), Node.ScalarKind.TEXT);
        };
    }

    private Node.Sequence sequence() {
        int line = line();
        List<Node> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(value());
        }
        return new Node.Sequence(line, items);
    }

    private Node.Mapping mapping() {
        int line = line();
        Map<String, Node.Entry> entries = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            int keyLine = line();
            parser.nextToken();
            Node.Entry before = entries.put(key, new Node.Entry(keyLine, value()));
            if (before != null) {
                throw refused(keyLine, InputFileError.DUPLICATE_KEY, key, before.line());
            }
        }
        return new Node.Mapping(line, entries);
    }

    private int line() {
        return parser.currentTokenLocation().getLineNr();
    }

    private InputException refused(int line, InputFileError error, Object... arguments) {
        return new InputException(error, arguments).at(file + ":" + line);
    }
}
