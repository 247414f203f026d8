package org.thirstline.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.sweep.CellOutcome;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.Decimals;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** What a sweep writes: a row for each cell, or one for each growth year of each cell. Immutable and thread-safe. */
final class SweepTable {

    private static final String DONE = "ok";

    private static final List<SeasonVariable> OF_YEARS = List.of(
            SeasonVariable.HARVESTED,
            SeasonVariable.HARVEST_MOISTURE,
            SeasonVariable.PEAK_BIOMASS,
            SeasonVariable.SEASON_RAIN,
            SeasonVariable.SEASON_ET0,
            SeasonVariable.TRANSPIRATION,
            SeasonVariable.MEAN_WATER_FACTOR,
            SeasonVariable.MAX_LEAF_AREA_INDEX);

    private static final List<SeasonVariable> OF_PENALTY = List.of(
            SeasonVariable.POTENTIAL_HARVESTED, SeasonVariable.DROUGHT_PENALTY, SeasonVariable.DROUGHT_PENALTY_PCT);

    private final boolean byYear;
    private final boolean penalty;

    SweepTable(boolean byYear, boolean penalty) {
        this.byYear = byYear;
        this.penalty = penalty;
    }

    /** Returns name and columns of the table. */
    TableInfo info() {
        return byYear ? yearInfo() : cellInfo();
    }

    private TableInfo yearInfo() {
        List<ColumnInfo> columns = new ArrayList<>(List.of(
                ColumnInfo.text("cell", "Name of the cell"),
                ColumnInfo.integer("growth_year", "yr", "Calendar year in which the canopy emerges"),
                ColumnInfo.integer("stand_age", "yr", "Age of the stand in growth years, planting year = 1"),
                ColumnInfo.text("status", "Whether the yield can be used; why the cell has none"),
                ColumnInfo.date("harvest_date", "Day of the cut")));
        yearVariables().forEach(variable -> columns.add(of("", variable, "")));
        return new TableInfo("cell-seasons.csv", "Growth years by cell", columns);
    }

    private List<SeasonVariable> yearVariables() {
        List<SeasonVariable> variables = new ArrayList<>(OF_YEARS);
        if (penalty) {
            variables.addAll(OF_PENALTY);
        }
        return variables;
    }

    private TableInfo cellInfo() {
        List<ColumnInfo> columns = new ArrayList<>(List.of(
                ColumnInfo.text("cell", "Name of the cell"),
                ColumnInfo.text("outcome", "ok, or why the cell has no usable yield"),
                ColumnInfo.integer(
                        "years",
                        "1",
                        "Growth years behind the values: complete, of a stand aged " + StudySimulation.FULL_GROWN_AGE
                                + " or more"),
                ColumnInfo.integer("first_year", "yr", "First of them"),
                ColumnInfo.integer("last_year", "yr", "Last of them"),
                of("mean_", SeasonVariable.HARVESTED, ", mean of the years"),
                of("lowest_", SeasonVariable.HARVESTED, ", lowest of the years"),
                ColumnInfo.integer("lowest_year", "yr", "Year of the lowest harvest, the first of equals"),
                of("highest_", SeasonVariable.HARVESTED, ", highest of the years"),
                of("mean_", SeasonVariable.SEASON_RAIN, ", mean of the years"),
                of("mean_", SeasonVariable.MEAN_WATER_FACTOR, ", mean of the years")));
        if (penalty) {
            columns.add(of("mean_", SeasonVariable.DROUGHT_PENALTY, ", mean of the years"));
            columns.add(of("mean_", SeasonVariable.DROUGHT_PENALTY_PCT, ", mean of the years"));
            columns.add(of("worst_", SeasonVariable.DROUGHT_PENALTY, ", highest of the years"));
            columns.add(ColumnInfo.integer("worst_year", "yr", "Year of the highest penalty, the first of equals"));
        }
        return new TableInfo("cell-yields.csv", "Yields by cell", columns);
    }

    private static ColumnInfo of(String before, SeasonVariable variable, String after) {
        String column = variable.column();
        String name = column.startsWith(before) ? column : before + column;
        return ColumnInfo.number(name, variable.unit(), variable.meaning() + after);
    }

    /** Returns the header row. */
    byte[] header() {
        CsvTable table = new CsvTable();
        info().header(table);
        return table.toBytes();
    }

    /** Returns the rows of a cell, at least one. */
    byte[] rows(CellOutcome outcome) {
        CsvTable table = new CsvTable();
        if (!byYear) {
            summary(table, outcome);
        } else if (outcome.seasons().isEmpty()) {
            table.text(outcome.cell())
                    .empty()
                    .empty()
                    .text(outcome.refusal().orElse(DONE))
                    .empty();
            yearVariables().forEach(variable -> table.empty());
            table.endRow();
        } else {
            outcome.seasons().forEach(season -> year(table, outcome.cell(), season));
        }
        return table.toBytes();
    }

    private void year(CsvTable table, String cell, SeasonRecord season) {
        table.text(cell)
                .whole(season.growthYear())
                .whole(season.standAge())
                .text(season.status().words())
                .date(season.dates().harvest());
        yearVariables().forEach(variable -> number(table, variable, season.value(variable)));
        table.endRow();
    }

    private void summary(CsvTable table, CellOutcome outcome) {
        List<SeasonRecord> years = outcome.seasons().stream()
                .filter(season -> season.isComplete() && season.standAge() >= StudySimulation.FULL_GROWN_AGE)
                .toList();
        String done = years.isEmpty()
                ? "no complete growth year of a stand aged " + StudySimulation.FULL_GROWN_AGE + " or more"
                : DONE;
        table.text(outcome.cell()).text(outcome.refusal().orElse(done)).whole(years.size());
        Optional<SeasonRecord> lowest = years.stream().min(by(SeasonVariable.HARVESTED));
        integer(table, years.stream().findFirst());
        integer(table, years.isEmpty() ? Optional.empty() : Optional.of(years.get(years.size() - 1)));
        mean(table, SeasonVariable.HARVESTED, years);
        value(table, SeasonVariable.HARVESTED, lowest);
        integer(table, lowest);
        value(table, SeasonVariable.HARVESTED, years.stream().max(by(SeasonVariable.HARVESTED)));
        mean(table, SeasonVariable.SEASON_RAIN, years);
        mean(table, SeasonVariable.MEAN_WATER_FACTOR, years);
        if (penalty) {
            penalty(table, years);
        }
        table.endRow();
    }

    private static void penalty(CsvTable table, List<SeasonRecord> years) {
        mean(table, SeasonVariable.DROUGHT_PENALTY, years);
        mean(table, SeasonVariable.DROUGHT_PENALTY_PCT, years);
        Optional<SeasonRecord> worst =
                years.stream().min(by(SeasonVariable.DROUGHT_PENALTY).reversed());
        value(table, SeasonVariable.DROUGHT_PENALTY, worst);
        integer(table, worst);
    }

    private static Comparator<SeasonRecord> by(SeasonVariable variable) {
        return Comparator.comparingDouble(season -> season.value(variable));
    }

    private static void integer(CsvTable table, Optional<SeasonRecord> season) {
        season.ifPresentOrElse(known -> table.whole(known.growthYear()), table::empty);
    }

    private static void value(CsvTable table, SeasonVariable variable, Optional<SeasonRecord> season) {
        number(table, variable, season.map(known -> known.value(variable)).orElse(Double.NaN));
    }

    private static void mean(CsvTable table, SeasonVariable variable, List<SeasonRecord> years) {
        double sum = 0.0;
        for (SeasonRecord year : years) {
            sum += year.value(variable);
        }
        number(table, variable, years.isEmpty() ? Double.NaN : sum / years.size());
    }

    private static void number(CsvTable table, SeasonVariable variable, double value) {
        table.number(value, Decimals.of(variable.unit()));
    }
}
