package org.thirstline.cli;

import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;

/**
 * A table of results and what it holds.
 *
 * @param info its columns
 * @param table its rows, header included
 */
record ResultTable(TableInfo info, CsvTable table) {

    static ResultTable start(TableInfo info) {
        CsvTable table = new CsvTable();
        info.header(table);
        return new ResultTable(info, table);
    }
}
