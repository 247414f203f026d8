package org.thirstline.io.plots;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.io.text.Nearest;
import org.thirstline.io.weather.LineReader;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.error.InputException;

/** Reads one file of plot data. Confined to one reading. */
final class PlotReader {

    /** Above every published harvest of these grasses, so that a wrong unit is found (our choice) [Mg/ha]. */
    private static final double LARGEST_MG_HA = 80.0;

    /** Below this a yield is nothing: it has no logarithm that means something [Mg/ha]. */
    private static final double NOTHING_MG_HA = 0.01;

    private final Study study;
    private final List<String> zones;
    private final int studyPlantingYear;
    private final MeasurementReader measurements;
    private final Set<String> otherSites = new LinkedHashSet<>();
    private final Map<PlotVariable, Set<String>> units = new EnumMap<>(PlotVariable.class);
    private final List<PlotYield> yields = new ArrayList<>();
    private final Map<String, Integer> lineOf = new HashMap<>();
    private final List<Integer> emptyLines = new ArrayList<>();
    private final List<Integer> nothingLines = new ArrayList<>();
    private boolean invented;
    private int line;

    PlotReader(Study study) {
        this.study = study;
        measurements = new MeasurementReader(study.site());
        zones = study.zones().stream().map(Zone::name).toList();
        studyPlantingYear =
                GrowthCalendar.growthYear(study.site(), study.stand().plantingDate());
    }

    PlotTable read(Path file) {
        try (LineReader lines = new LineReader(file)) {
            try {
                return read(lines);
            } catch (InputException refused) {
                throw refused.at(lines.place());
            }
        }
    }

    private PlotTable read(LineReader lines) {
        String header = lines.nextFilled();
        while (header != null && header.startsWith("#")) {
            invented |= header.substring(1).strip().toLowerCase(Locale.ROOT).matches("invented\\s*:\\s*true");
            header = lines.nextFilled();
        }
        if (header == null) {
            throw new InputException(PlotError.NO_YIELDS);
        }
        PlotColumns columns = new PlotColumns(header, zones.size() == 1);
        for (String text = lines.nextFilled(); text != null; text = lines.nextFilled()) {
            line = lines.lineNumber();
            if (!text.startsWith("#") && !text.matches("[,;\\s]*")) {
                columns.split(text);
                row(columns);
            }
        }
        return new PlotTable(yields, measurements.observations(), List.copyOf(otherSites), notices(columns), invented);
    }

    private void row(PlotColumns columns) {
        invented |= "true".equals(columns.text("invented"));
        String site = columns.text(PlotColumns.SITE);
        if (site != null && !site.equalsIgnoreCase(study.site().name())) {
            otherSites.add(site);
            return;
        }
        String zone = zone(columns);
        String name = columns.needed(PlotColumns.PLOT, "the name of a plot");
        String block = columns.text(PlotColumns.BLOCK);
        String plot = block == null ? name : block + " " + name;
        int planted = columns.text(PlotColumns.PLANTING_YEAR) == null
                ? studyPlantingYear
                : columns.year(PlotColumns.PLANTING_YEAR);
        PlotVariable variable = columns.isWide() ? PlotVariable.YIELD : variable(columns);
        if (variable != PlotVariable.YIELD) {
            measured(columns, variable, zone, plot, planted);
            return;
        }
        YieldUnit unit = unit(columns);
        units.computeIfAbsent(variable, key -> new TreeSet<>()).add(unit.text());
        if (columns.isWide()) {
            new TreeMap<>(columns.years())
                    .forEach((year, column) -> add(columns, column, unit, zone, plot, planted, year));
            return;
        }
        add(columns, columns.at(PlotColumns.VALUE), unit, zone, plot, planted, columns.growthYear(study.site()));
    }

    private void measured(PlotColumns columns, PlotVariable variable, String zone, String plot, int planted) {
        String what = measurements.add(columns, variable, line, zone, plot, planted);
        if (what == null) {
            emptyLines.add(line);
            return;
        }
        units.computeIfAbsent(variable, key -> new TreeSet<>()).add(columns.needed(PlotColumns.UNIT, ""));
        Integer before = lineOf.putIfAbsent(String.join("\n", zone, plot, planted + " " + what), line);
        if (before != null) {
            throw new InputException(PlotError.MEASURED_TWICE, plot, what, before);
        }
    }

    private void add(PlotColumns columns, int column, YieldUnit unit, String zone, String plot, int planted, int year) {
        double value = columns.number(column);
        if (Double.isNaN(value)) {
            emptyLines.add(line);
            return;
        }
        double mgHa = unit.toMgHa(value);
        if (value < 0.0 || mgHa > LARGEST_MG_HA) {
            String found = columns.written(column) + " " + unit.text();
            throw new InputException(
                    PlotError.YIELD_IMPOSSIBLE, columns.name(column), found, text(mgHa), text(LARGEST_MG_HA));
        }
        if (year < planted) {
            throw new InputException(PlotError.BEFORE_PLANTING, year, planted);
        }
        Integer before = lineOf.putIfAbsent(String.join("\n", zone, plot, planted + " " + year), line);
        if (before != null) {
            throw new InputException(PlotError.TWICE, plot, year, before);
        }
        if (mgHa < NOTHING_MG_HA) {
            nothingLines.add(line);
            return;
        }
        yields.add(new PlotYield(line, zone, plot, planted, year, mgHa, error(columns, unit)));
    }

    private static double error(PlotColumns columns, YieldUnit unit) {
        double error = columns.number(columns.at(PlotColumns.ERROR));
        if (error < 0.0 || unit.toMgHa(error) > LARGEST_MG_HA) {
            throw new InputException(
                    PlotError.BAD_FIELD,
                    PlotColumns.ERROR,
                    columns.written(columns.at(PlotColumns.ERROR)),
                    "a standard error in the unit of the value, or nothing");
        }
        return unit.toMgHa(error);
    }

    static String text(double mgHa) {
        return String.format(Locale.ROOT, "%.4g", mgHa).replaceAll("\\.?0+$", "");
    }

    private String zone(PlotColumns columns) {
        String zone = columns.text(PlotColumns.ZONE);
        if (zone == null && zones.size() == 1) {
            return zones.get(0);
        }
        String found = zone == null ? "" : zone;
        return zones.stream()
                .filter(found::equalsIgnoreCase)
                .findFirst()
                .orElseThrow(() -> new InputException(
                        PlotError.UNKNOWN_ZONE, found, String.join(", ", zones), Nearest.hint(found, zones)));
    }

    private static YieldUnit unit(PlotColumns columns) {
        String found = columns.needed(PlotColumns.UNIT, String.join(", ", YieldUnit.texts()));
        return YieldUnit.of(found)
                .orElseThrow(() -> new InputException(
                        PlotError.UNKNOWN_UNIT,
                        found,
                        String.join(", ", YieldUnit.texts()),
                        Nearest.hint(found, YieldUnit.texts())));
    }

    private static PlotVariable variable(PlotColumns columns) {
        String allowed = String.join(", ", PlotVariable.keys());
        String found = columns.needed(PlotColumns.VARIABLE, allowed);
        return PlotVariable.of(found)
                .orElseThrow(() -> new InputException(
                        PlotError.UNKNOWN_VARIABLE, found, allowed, Nearest.hint(found, PlotVariable.keys())));
    }

    private List<String> notices(PlotColumns columns) {
        List<String> notices = new ArrayList<>();
        if (!emptyLines.isEmpty()) {
            notices.add(count(emptyLines, "that is missing") + " left out.");
        }
        if (!nothingLines.isEmpty()) {
            notices.add(count(nothingLines, "of nothing")
                    + " left out, since shares of nothing cannot be compared; give none for a plot that was not cut.");
        }
        units.forEach((variable, found) -> {
            if (found.size() > 1) {
                notices.add("Units are mixed in " + variable.key() + " (" + String.join(", ", found)
                        + "); each value was converted by its own.");
            }
        });
        if (!otherSites.isEmpty()) {
            notices.add("Rows of other sites left out: " + String.join(", ", otherSites) + "; this study is of "
                    + study.site().name() + ".");
        }
        if (!columns.ignored().isEmpty()) {
            notices.add("Columns not read: " + String.join(", ", columns.ignored()) + ".");
        }
        if (columns.at(PlotColumns.PLANTING_YEAR) < 0) {
            notices.add("The plot data name no planting year; the study's, " + studyPlantingYear + ", is taken.");
        }
        return notices;
    }

    private static String count(List<Integer> lines, String what) {
        String values = lines.size() == 1 ? "1 plot value " : lines.size() + " plot values ";
        return values + what + " (first on line " + lines.get(0) + ")";
    }
}
