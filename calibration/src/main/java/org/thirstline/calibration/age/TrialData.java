package org.thirstline.calibration.age;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/**
 * Plot yields of one or many plantings, at one or many sites, in a fixed order. Immutable and thread-safe.
 */
public final class TrialData {

    private static final Comparator<PlotYear> ORDER = Comparator.comparing(PlotYear::site)
            .thenComparing(PlotYear::planting)
            .thenComparing(PlotYear::plot)
            .thenComparingInt(PlotYear::growthYear);

    private final List<PlotYear> rows;
    private final boolean simulated;

    private TrialData(List<PlotYear> rows) {
        this.rows = rows;
        this.simulated = rows.get(0).hasSimulation();
    }

    /**
     * Collects plot years; their order does not matter.
     *
     * @throws InputException if there are none, a plot has a year twice, a planting has two sites or planting years, or only some plot years are
     *     simulated
     */
    public static TrialData of(List<PlotYear> plotYears) {
        List<PlotYear> rows = plotYears.stream().sorted(ORDER).toList();
        if (rows.isEmpty()) {
            throw new InputException(CalibrationError.NO_PLOT_YEARS);
        }
        requireConsistent(rows);
        return new TrialData(rows);
    }

    private static void requireConsistent(List<PlotYear> rows) {
        Set<String> seen = new HashSet<>();
        Map<String, PlotYear> plantings = new HashMap<>();
        for (PlotYear row : rows) {
            if (!seen.add(row.plotKey() + '\u0000' + row.growthYear())) {
                throw new InputException(
                        CalibrationError.PLOT_YEAR_TWICE, row.plot(), row.planting(), row.growthYear());
            }
            PlotYear first = plantings.computeIfAbsent(row.planting(), name -> row);
            if (first.plantingYear() != row.plantingYear() || !first.site().equals(row.site())) {
                throw new InputException(CalibrationError.PLANTING_DIFFERS, row.planting());
            }
            if (row.hasSimulation() != rows.get(0).hasSimulation()) {
                PlotYear bare = row.hasSimulation() ? rows.get(0) : row;
                throw new InputException(
                        CalibrationError.SIMULATION_INCOMPLETE, bare.plot(), bare.planting(), bare.growthYear());
            }
        }
    }

    /** Returns the plot years, ordered by site, planting, plot and year. */
    public List<PlotYear> rows() {
        return rows;
    }

    /** Returns whether every plot year has a simulated yield. */
    public boolean hasSimulation() {
        return simulated;
    }

    /** Returns the same yields without what was simulated. */
    public TrialData withoutSimulation() {
        return new TrialData(rows.stream()
                .map(row -> new PlotYear(
                        row.site(),
                        row.planting(),
                        row.plot(),
                        row.plantingYear(),
                        row.growthYear(),
                        row.observedMgHa(),
                        Double.NaN,
                        row.errorMgHa()))
                .toList());
    }

    /** Returns the plot years at or over an age. */
    List<PlotYear> from(int age) {
        return rows.stream().filter(row -> row.standAge() >= age).toList();
    }

    int lastYear() {
        return rows.stream().mapToInt(PlotYear::growthYear).max().orElseThrow();
    }

    int oldestAge() {
        return rows.stream().mapToInt(PlotYear::standAge).max().orElseThrow();
    }
}
