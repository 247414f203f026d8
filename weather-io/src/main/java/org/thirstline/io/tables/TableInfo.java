package org.thirstline.io.tables;

import java.util.List;

/**
 * What a result table holds. Immutable and thread-safe.
 *
 * @param path file name inside the result folder
 * @param title what the table is
 * @param columns its columns, in order
 */
public record TableInfo(String path, String title, List<ColumnInfo> columns) {

    /** Copies the list. */
    public TableInfo {
        columns = List.copyOf(columns);
    }

    /** Appends the header row to a table. */
    public void header(CsvTable table) {
        columns.forEach(column -> table.text(column.name()));
        table.endRow();
    }
}
