package org.thirstline.validation.observed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.thirstline.validation.catalogue.CheckRow;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.catalogue.Verdict;

/**
 * What was observed, written by hand: lines {@code # family | title | note}, then {@code family; id; what; observed; lowest; highest; why these;
 * source; seen}. No limits, no verdict.
 */
final class Facts {

    static final Path FILE = Path.of("src/test/resources/observed/facts.csv");

    /** One observation. */
    private record Fact(String family, String[] cells) {

        private String key() {
            return family + "/" + cells[1];
        }

        private double number(int cell) {
            return cells[cell].isBlank() ? Double.NaN : Double.parseDouble(cells[cell]);
        }
    }

    private final Map<String, String[]> families = new LinkedHashMap<>();
    private final List<Fact> facts = new ArrayList<>();

    static Facts read() throws IOException {
        Facts read = new Facts();
        for (String line : Files.readAllLines(FILE)) {
            if (line.startsWith("#")) {
                String[] parts = line.substring(1).split("\\|", -1);
                read.families.put(parts[0].trim(), new String[] {parts[1].trim(), parts[2].trim()});
            } else if (!line.isBlank()) {
                String[] cells = line.split(";", -1);
                for (int i = 0; i < cells.length; i++) {
                    cells[i] = cells[i].trim();
                }
                if (cells.length != 9 || !read.families.containsKey(cells[0])) {
                    throw new IllegalStateException("facts.csv: " + line);
                }
                read.facts.add(new Fact(cells[0], cells));
            }
        }
        return read;
    }

    /** Returns the observed number of a key, NaN if there is none. */
    double expected(String key) {
        return facts.stream()
                .filter(fact -> fact.key().equals(key))
                .mapToDouble(fact -> fact.number(3))
                .findFirst()
                .orElse(Double.NaN);
    }

    /** Returns the middle of the published range of a key, NaN if there is none. */
    double middle(String key) {
        return facts.stream()
                .filter(fact -> fact.key().equals(key))
                .mapToDouble(fact -> 0.5 * (fact.number(4) + fact.number(5)))
                .findFirst()
                .orElse(Double.NaN);
    }

    /** Returns every key there is a fact for. */
    List<String> keys() {
        return facts.stream().map(Fact::key).toList();
    }

    List<Family> families(Map<String, Double> results) {
        List<Family> made = new ArrayList<>();
        families.forEach((slug, words) -> {
            List<CheckRow> rows = facts.stream()
                    .filter(fact -> fact.family().equals(slug))
                    .filter(fact -> results.containsKey(fact.key()))
                    .map(fact -> row(fact, results.get(fact.key())))
                    .toList();
            made.add(new Family(
                    "observed-" + slug,
                    "Observed world: " + words[0],
                    words[1],
                    "validation/src/test/resources/observed/facts.csv",
                    false,
                    false,
                    rows));
        });
        return made;
    }

    private static CheckRow row(Fact fact, double computed) {
        double low = fact.number(4);
        double high = fact.number(5);
        boolean judged = Double.isFinite(low) && Double.isFinite(high);
        boolean inside = computed >= low && computed <= high;
        return new CheckRow(
                fact.cells()[1],
                fact.cells()[2],
                fact.cells()[3].isBlank() ? "–" : fact.cells()[3],
                low,
                high,
                computed,
                fact.cells()[6],
                fact.cells()[7],
                fact.cells()[8],
                judged ? (inside ? Verdict.PASS : Verdict.MISS) : Verdict.SHOWN);
    }
}
