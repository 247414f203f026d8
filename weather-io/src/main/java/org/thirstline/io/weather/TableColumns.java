package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.List;

/** Which columns of a table are read, into which variable and from which unit. Confined to one read. */
final class TableColumns {

    private record Column(RawVariable variable, int index, DailyUnit unit) {}

    private final Table table;
    private final double[] missingCodes;
    private final List<Column> columns = new ArrayList<>();

    /**
     * Starts without any column.
     *
     * @param missingCodes numbers that stand for a missing value, whatever their decimals
     */
    TableColumns(Table table, double... missingCodes) {
        this.table = table;
        this.missingCodes = missingCodes.clone();
    }

    /** Reads a variable from the first of these columns that is there; from none if none is. */
    TableColumns with(RawVariable variable, DailyUnit unit, String... names) {
        int index = table.find(names);
        for (int i = 0; index == Table.ABSENT && i < names.length; i++) {
            index = table.findWord(names[i]);
        }
        if (index != Table.ABSENT) {
            columns.add(new Column(variable, index, unit));
        }
        return this;
    }

    /** Returns whether a variable is read. */
    boolean has(RawVariable variable) {
        return columns.stream().anyMatch(column -> column.variable() == variable);
    }

    /** Returns whether nothing is read. */
    boolean isEmpty() {
        return columns.isEmpty();
    }

    /** Sets all values of the line, in our units, for the day begun last. */
    void setAll(RawWeatherBuilder out) {
        for (Column column : columns) {
            double value = table.number(column.index());
            out.set(
                    column.variable(),
                    isMissing(value) ? Double.NaN : column.unit().convert(value));
        }
    }

    private boolean isMissing(double value) {
        for (double code : missingCodes) {
            if (value == code) {
                return true;
            }
        }
        return false;
    }
}
