package org.thirstline.validation.published;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.opentest4j.TestAbortedException;

/**
 * A file of published numbers: lines {@code # key = value} with what holds for every row, a header row, then one number per row. A
 * column left empty takes the value from the top. With {@code # counted = no} the rows are tested but not counted as reproduced.
 */
final class Catalogue {

    private final String title;
    private final String note;
    private final boolean counted;
    private final List<PublishedNumber> numbers;

    private Catalogue(String title, String note, boolean counted, List<PublishedNumber> numbers) {
        this.title = title;
        this.note = note;
        this.counted = counted;
        this.numbers = numbers;
    }

    String title() {
        return title;
    }

    /** What holds for every row and a reader of tables should know. */
    String note() {
        return note;
    }

    boolean counted() {
        return counted;
    }

    List<PublishedNumber> numbers() {
        return numbers;
    }

    static Catalogue read(String file) {
        Map<String, String> defaults = new HashMap<>();
        List<List<String>> rows = new ArrayList<>();
        for (String line : lines("/published/" + file)) {
            if (line.startsWith("#")) {
                int equals = line.indexOf('=');
                defaults.put(
                        line.substring(1, equals).trim(),
                        line.substring(equals + 1).trim());
            } else {
                rows.add(cells(line));
            }
        }
        List<String> header = rows.get(0);
        List<PublishedNumber> numbers = rows.subList(1, rows.size()).stream()
                .map(row -> number(header, row, defaults))
                .toList();
        return new Catalogue(
                defaults.getOrDefault("title", file),
                defaults.getOrDefault("note", ""),
                !"no".equals(defaults.get("counted")),
                numbers);
    }

    private static PublishedNumber number(List<String> header, List<String> row, Map<String, String> defaults) {
        Map<String, String> cells = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
            String key = header.get(i);
            cells.put(key, row.get(i).isEmpty() ? defaults.getOrDefault(key, "") : row.get(i));
        }
        return new PublishedNumber(
                cells.get("id"),
                cells.get("what"),
                cells.get("quantity"),
                new Inputs(cells.get("inputs")),
                cells.get("expected"),
                cells.get("tolerance"),
                cells.get("tolerance_reason"),
                cells.get("source"),
                cells.get("seen"));
    }

    static List<String> lines(String resource) {
        try (InputStream stream = Catalogue.class.getResourceAsStream(resource)) {
            if (stream == null) {
                throw new IllegalArgumentException("no test resource " + resource);
            }
            return new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))
                    .lines()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Splits a line of RFC 4180 without line breaks in cells. */
    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"' && quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                cell.append(c);
                i++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    /** One test for each number; a number that the engine does not model is reported as skipped, with the reason. */
    Stream<DynamicTest> tests(Map<String, ToDoubleFunction<Inputs>> quantities) {
        return numbers.stream().map(number -> DynamicTest.dynamicTest(number.name(), () -> run(number, quantities)));
    }

    private void run(PublishedNumber number, Map<String, ToDoubleFunction<Inputs>> quantities) {
        if (number.isSkipped()) {
            PublishedTally.skipped(title);
            throw new TestAbortedException(number.reason());
        }
        ToDoubleFunction<Inputs> quantity = quantities.get(number.quantity());
        if (quantity == null) {
            throw new AssertionError("nothing calculates " + number.quantity());
        }
        if (counted) {
            PublishedTally.tried(title);
        }
        number.check(quantity.applyAsDouble(number.inputs()));
        if (counted) {
            PublishedTally.passed(title);
        }
    }
}
