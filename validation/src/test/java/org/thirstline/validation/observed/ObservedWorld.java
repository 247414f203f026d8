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
import org.thirstline.validation.catalogue.TextTable;

/** The observed world beside the untuned defaults. */
public final class ObservedWorld {

    private static final Path RESULTS = Path.of("src/test/resources/observed/results.csv");
    private static final Path CALIBRATED = Path.of("src/test/resources/observed/calibrated.csv");
    private static final MathContext KEPT = new MathContext(4);

    private static final String PREFIX = "observed-";

    private ObservedWorld() {}

    /** Calculates every result from the real files. */
    static Map<String, Double> calculate() throws IOException {
        Map<String, Double> results = new TreeMap<>();
        YieldStudy.run(Facts.read(), results);
        SoilWaterStudy.run(results);
        SeasonStudy.run(results);
        return asKept(results);
    }

    private static Map<String, Double> asKept(Map<String, Double> results) {
        results.values().removeIf(value -> !Double.isFinite(value));
        results.replaceAll((key, value) -> new BigDecimal(value).round(KEPT).doubleValue());
        return results;
    }

    /** Calculates the results of one family from the real files, whatever the code is that calculates them. */
    public static Map<String, Double> calculateFamily(String slug) throws IOException {
        Map<String, Double> results = new TreeMap<>();
        switch (slug) {
            case "observed-yields" -> YieldStudy.run(Facts.read(), results);
            case "observed-soil-moisture", "observed-soil-water-elsewhere" -> SoilWaterStudy.run(results);
            default -> SeasonStudy.run(results);
        }
        results.keySet().removeIf(key -> !key.startsWith(slug.replace(PREFIX, "") + "/"));
        return asKept(results);
    }

    /** Returns whether a family belongs to the observed world. */
    public static boolean has(String slug) {
        return slug.startsWith(PREFIX);
    }

    /** Returns whether the real files are at hand. */
    public static boolean isPresent() {
        return RealData.isPresent();
    }

    /** Calculates every result anew where the real files are at hand, and keeps it. */
    public static void recordIfPresent() throws IOException {
        if (RealData.isPresent()) {
            StringBuilder text = new StringBuilder("key,computed\n");
            calculate()
                    .forEach((key, value) ->
                            text.append(key).append(',').append(value).append('\n'));
            Files.writeString(RESULTS, text);
            Files.writeString(CALIBRATED, TextTable.text(CalibrationStudy.run()));
        }
    }

    /** Returns the results kept. */
    public static Map<String, Double> kept() throws IOException {
        Map<String, Double> kept = new TreeMap<>();
        for (String line : Files.readAllLines(RESULTS)) {
            int comma = line.indexOf(',');
            if (!line.startsWith("key,")) {
                kept.put(line.substring(0, comma), Double.valueOf(line.substring(comma + 1)));
            }
        }
        return kept;
    }

    /** Returns what calibrations change, as kept. */
    public static List<TextTable> calibrated() throws IOException {
        return TextTable.read(CALIBRATED);
    }

    /** Returns the families with the results kept. */
    public static List<Family> families() throws IOException {
        return families(kept());
    }

    /** Returns the families with other results. */
    public static List<Family> families(Map<String, Double> results) throws IOException {
        return Facts.read().families(results);
    }
}
