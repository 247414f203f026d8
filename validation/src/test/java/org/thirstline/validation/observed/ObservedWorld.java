package org.thirstline.validation.observed;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thirstline.validation.catalogue.Family;

/** The observed world beside the untuned defaults. */
public final class ObservedWorld {

    private static final Path RESULTS = Path.of("src/test/resources/observed/results.csv");
    private static final MathContext KEPT = new MathContext(4);

    private ObservedWorld() {}

    /** Calculates every result from the real files. */
    static Map<String, Double> calculate() throws IOException {
        Map<String, Double> results = new TreeMap<>();
        YieldStudy.run(Facts.read(), results);
        SoilWaterStudy.run(results);
        SeasonStudy.run(results);
        results.values().removeIf(value -> !Double.isFinite(value));
        results.replaceAll((key, value) -> new BigDecimal(value).round(KEPT).doubleValue());
        return results;
    }

    /** Calculates every result anew where the real files are at hand, and keeps it. */
    public static void recordIfPresent() throws IOException {
        if (RealData.isPresent()) {
            StringBuilder text = new StringBuilder("key,computed\n");
            calculate()
                    .forEach((key, value) ->
                            text.append(key).append(',').append(value).append('\n'));
            Files.writeString(RESULTS, text);
        }
    }

    /** Returns the results kept. */
    static Map<String, Double> kept() throws IOException {
        Map<String, Double> kept = new TreeMap<>();
        for (String line : Files.readAllLines(RESULTS)) {
            int comma = line.indexOf(',');
            if (!line.startsWith("key,")) {
                kept.put(line.substring(0, comma), Double.valueOf(line.substring(comma + 1)));
            }
        }
        return kept;
    }

    /** Returns the families with the results kept. */
    public static List<Family> families() throws IOException {
        return Facts.read().families(kept());
    }
}
