package org.thirstline.io.plots;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What can be measured on a plot and simulated. */
public enum PlotVariable {
    /** Harvested dry matter. */
    YIELD(
            "yield",
            "Mg/ha",
            "harvested dry matter",
            Timing.HARVEST,
            80.0,
            List.of("harvested", "harvested dry matter", "dry matter", "dry matter yield", "harvested_mg_ha")),
    /** Green leaf area index. */
    LEAF_AREA_INDEX("leaf_area_index", "m²/m²", "green leaf area index", Timing.DAY, 20.0, List.of("leaf area", "lai")),
    /** Share of PAR intercepted. */
    INTERCEPTED_FRACTION(
            "intercepted_fraction",
            "1",
            "share of PAR intercepted",
            Timing.DAY,
            1.0,
            List.of("intercepted light", "light interception")),
    /** Standing dry matter. */
    STANDING(
            "standing_dry_matter",
            "Mg/ha",
            "standing above-ground dry matter",
            Timing.DAY,
            100.0,
            List.of("standing biomass", "biomass", "standing")),
    /** Soil water. */
    SOIL_WATER(
            "soil_water",
            "mm",
            "water of the soil, down to a depth if there is a column depth_m",
            Timing.DAY,
            5000.0,
            List.of("soil moisture", "soil_moisture", "water content")),
    /** Moisture of the crop at harvest. */
    HARVEST_MOISTURE(
            "harvest_moisture",
            "% wet basis",
            "moisture of the crop at harvest, wet basis",
            Timing.HARVEST,
            95.0,
            List.of("moisture", "moisture at harvest")),
    /** Emergence. */
    EMERGENCE("emergence", "d", "date of canopy emergence", Timing.DATE, 366.0, List.of("emergence date")),
    /** End of the green canopy. */
    CANOPY_END(
            "canopy_end",
            "d",
            "date on which the green canopy ended, by frost or by itself",
            Timing.DATE,
            366.0,
            List.of("frost", "frost date", "canopy end", "killing frost"));

    /** When a value holds. */
    public enum Timing {
        /** At the harvest of a growth year. */
        HARVEST,
        /** On one day. */
        DAY,
        /** The value is itself a date of a growth year. */
        DATE
    }

    /** Unit that stands for a date instead of a number. */
    public static final String DATE_UNIT = "date";

    private static final double MM_PER_M = 1000.0;

    private final String key;
    private final String unit;
    private final String meaning;
    private final Timing timing;
    private final double highest;
    private final List<String> aliases;

    PlotVariable(String key, String unit, String meaning, Timing timing, double highest, List<String> aliases) {
        this.key = key;
        this.unit = unit;
        this.meaning = meaning;
        this.timing = timing;
        this.highest = highest;
        this.aliases = aliases;
    }

    /** Returns the word in plot files and studies. */
    public String key() {
        return key;
    }

    /** Returns the unit in which values are kept; days of dates count from the first day of the growth year, which is 1. */
    public String unit() {
        return unit;
    }

    /** Returns what it means. */
    public String meaning() {
        return meaning;
    }

    /** Returns when a value holds. */
    public Timing timing() {
        return timing;
    }

    /** Returns the largest value that is believed, in {@link #unit()} (our choice). */
    public double highest() {
        return highest;
    }

    /** Returns the variable that a text names. */
    public static Optional<PlotVariable> of(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(variable -> variable.key.equals(plain)
                        || variable.key.replace('_', ' ').equals(plain)
                        || variable.aliases.contains(plain))
                .findFirst();
    }

    /** Returns all words. */
    public static List<String> keys() {
        return Arrays.stream(values()).map(PlotVariable::key).toList();
    }

    /** Returns the units understood. */
    public List<String> units() {
        return switch (this) {
            case YIELD, STANDING -> YieldUnit.texts();
            case EMERGENCE, CANOPY_END -> List.of(DATE_UNIT, "day of year");
            default -> List.copyOf(factors(1.0).keySet());
        };
    }

    /**
     * Returns what a value in a unit is multiplied by.
     *
     * @param text the unit as written
     * @param depthM depth of a soil water content [m], NaN if there is none
     */
    Optional<Double> factor(String text, double depthM) {
        return switch (this) {
            case YIELD, STANDING -> YieldUnit.of(text).map(found -> found.toMgHa(1.0));
            case EMERGENCE, CANOPY_END ->
                units().contains(text.strip().toLowerCase(Locale.ROOT)) ? Optional.of(1.0) : Optional.empty();
            default ->
                Optional.ofNullable(factors(depthM)
                        .get(text.strip()
                                .toLowerCase(Locale.ROOT)
                                .replace('³', '3')
                                .replace('²', '2')));
        };
    }

    private Map<String, Double> factors(double depthM) {
        Map<String, Double> factors = new LinkedHashMap<>();
        switch (this) {
            case LEAF_AREA_INDEX -> {
                factors.put("m2/m2", 1.0);
                factors.put("1", 1.0);
            }
            case INTERCEPTED_FRACTION -> {
                factors.put("1", 1.0);
                factors.put("fraction", 1.0);
                factors.put("%", 0.01);
            }
            case SOIL_WATER -> {
                factors.put("mm", 1.0);
                factors.put("cm", 10.0);
                factors.put("m3/m3", MM_PER_M * depthM);
                factors.put("% vol", 0.01 * MM_PER_M * depthM);
            }
            default -> {
                factors.put("% wet basis", 1.0);
                factors.put("%", 1.0);
                factors.put("fraction", 100.0);
            }
        }
        return factors;
    }
}
