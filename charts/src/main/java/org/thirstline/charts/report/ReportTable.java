package org.thirstline.charts.report;

import java.util.List;

/**
 * A table of the report. Immutable and thread-safe.
 *
 * @param caption what it shows
 * @param columns names, with unit where there is one
 * @param rows cells as text, as many as columns
 */
public record ReportTable(String caption, List<Column> columns, List<List<String>> rows) {

    /** Copies the lists. */
    public ReportTable {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
        for (List<String> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        caption + ": a row has " + row.size() + " cells for " + columns.size() + " columns");
            }
        }
    }

    /**
     * A column.
     *
     * @param name what it holds
     * @param unit its unit, empty for none
     * @param numeric whether cells are set right
     */
    public record Column(String name, String unit, boolean numeric) {

        /** Returns a column of words. */
        public static Column text(String name) {
            return new Column(name, "", false);
        }

        /** Returns a column of numbers. */
        public static Column number(String name, String unit) {
            return new Column(name, unit, true);
        }
    }
}
