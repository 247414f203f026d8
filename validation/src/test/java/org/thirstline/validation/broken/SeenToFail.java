package org.thirstline.validation.broken;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thirstline.validation.catalogue.AllFamilies;
import org.thirstline.validation.catalogue.Family;
import org.thirstline.validation.catalogue.Verdict;
import org.thirstline.validation.observed.ObservedWorld;

/** What each family of checks makes of code that is wrong on purpose. */
public final class SeenToFail {

    private static final Path KEPT = Path.of("src/test/resources/observed/broken.csv");

    private SeenToFail() {}

    /**
     * One slip and what came of it.
     *
     * @param words what was wrong
     * @param passes checks that passed with the right code
     * @param remaining of them, checks that pass with the slip
     * @param changed results that the slip changes, where they are kept and compared; else 0
     */
    public record Outcome(String words, long passes, long remaining, long changed) {

        /** Returns whether a test fails because of the slip. */
        public boolean noticed() {
            return remaining < passes || changed > 0;
        }

        /** Returns it as a cell of the page. */
        public String cell() {
            String results = changed > 0 ? "; %d results are not those kept".formatted(changed) : "";
            return "%s: %d of %d passes left%s".formatted(words, remaining, passes, results);
        }
    }

    /** Makes every slip; those of families that need real files come from the outcomes kept. */
    public static Map<String, Outcome> outcomes(List<Family> families) throws IOException {
        Map<String, Outcome> kept = kept();
        Map<String, Outcome> outcomes = new LinkedHashMap<>();
        for (Slip slip : Slip.read()) {
            outcomes.put(
                    slip.family(),
                    ObservedWorld.has(slip.family()) ? kept.get(slip.family()) : calculated(slip, families));
        }
        return outcomes;
    }

    private static Outcome calculated(Slip slip, List<Family> families) {
        Family right = families.stream()
                .filter(family -> family.slug().equals(slip.family()))
                .findFirst()
                .orElseThrow();
        return new Outcome(slip.words(), right.count(Verdict.PASS), passes(slip), 0);
    }

    private static long passes(Slip slip) {
        try {
            return (long) new BrokenCode(slip).call(AllFamilies.class.getName(), "passes");
        } catch (InvocationTargetException e) {
            throw new IllegalStateException("the slip ends the calculation: " + slip, e);
        }
    }

    /** Makes the slips of the observed world over the real files. */
    static Map<String, Outcome> observed() throws IOException {
        Map<String, Outcome> outcomes = new LinkedHashMap<>();
        for (Slip slip : Slip.read()) {
            if (ObservedWorld.has(slip.family())) {
                outcomes.put(slip.family(), observed(slip));
            }
        }
        return outcomes;
    }

    private static Outcome observed(Slip slip) throws IOException {
        Map<String, Double> right = new TreeMap<>(ObservedWorld.kept());
        right.keySet().removeIf(key -> !key.startsWith(slip.family().replace("observed-", "") + "/"));
        Map<String, Double> wrong = wrong(slip);
        long changed = right.entrySet().stream()
                .filter(entry -> !entry.getValue().equals(wrong.get(entry.getKey())))
                .count();
        return new Outcome(slip.words(), passes(slip.family(), right), passes(slip.family(), wrong), changed);
    }

    @SuppressWarnings("unchecked") // what ObservedWorld.calculateFamily returns, loaded a second time
    private static Map<String, Double> wrong(Slip slip) {
        try {
            return (Map<String, Double>) new BrokenCode(slip).call(ObservedWorld.class.getName(), "calculateFamily");
        } catch (InvocationTargetException e) {
            throw new IllegalStateException("the slip ends the calculation: " + slip, e);
        }
    }

    private static long passes(String slug, Map<String, Double> results) throws IOException {
        return ObservedWorld.families(results).stream()
                .filter(family -> family.slug().equals(slug))
                .mapToLong(family -> family.count(Verdict.PASS))
                .sum();
    }

    /** Makes the slips of the observed world anew where the real files are at hand, and keeps what came of them. */
    public static void recordIfPresent() throws IOException {
        if (ObservedWorld.isPresent()) {
            StringBuilder text = new StringBuilder("family;words;passes;remaining;changed\n");
            observed().forEach((family, outcome) -> text.append(String.join(
                            ";",
                            family,
                            outcome.words(),
                            Long.toString(outcome.passes()),
                            Long.toString(outcome.remaining()),
                            Long.toString(outcome.changed())))
                    .append('\n'));
            Files.writeString(KEPT, text);
        }
    }

    static Map<String, Outcome> kept() throws IOException {
        Map<String, Outcome> kept = new LinkedHashMap<>();
        for (String line : Files.readAllLines(KEPT)) {
            String[] cells = line.split(";");
            if (!cells[0].equals("family")) {
                kept.put(
                        cells[0],
                        new Outcome(
                                cells[1],
                                Long.parseLong(cells[2]),
                                Long.parseLong(cells[3]),
                                Long.parseLong(cells[4])));
            }
        }
        return kept;
    }
}
