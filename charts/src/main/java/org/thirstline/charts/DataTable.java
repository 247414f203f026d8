package org.thirstline.charts;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The numbers behind a chart, in SI units. Immutable and thread-safe.
 *
 * @param columns names, unit included
 * @param rows cells as text, as many as columns
 */
public record DataTable(List<String> columns, List<List<String>> rows) {

    /** Copies the lists. */
    public DataTable {
        columns = List.copyOf(columns);
        rows = rows.stream().map(List::copyOf).toList();
    }

    private static final int DECIMALS = 4;

    /** Gathers rows. */
    static final class Builder {
        private final List<String> columns;
        private final List<List<String>> rows = new ArrayList<>();

        Builder(String... columns) {
            this.columns = List.of(columns);
        }

        Builder row(@Nullable Object... cells) {
            List<String> row = new ArrayList<>();
            for (Object cell : cells) {
                row.add(text(cell));
            }
            rows.add(row);
            return this;
        }

        DataTable build() {
            return new DataTable(columns, rows);
        }

        private static String text(@Nullable Object cell) {
            if (cell == null || cell instanceof Double value && !Double.isFinite(value)) {
                return "";
            }
            if (cell instanceof Double value) {
                return Numbers.plain(value, DECIMALS);
            }
            return cell.toString();
        }
    }

    /** Returns the table as RFC 4180 text. */
    public String csv() {
        StringBuilder text = new StringBuilder();
        append(columns, text);
        rows.forEach(row -> append(row, text));
        return text.toString();
    }

    private static void append(List<String> cells, StringBuilder text) {
        for (int i = 0; i < cells.size(); i++) {
            text.append(i > 0 ? "," : "").append(quoted(cells.get(i)));
        }
        text.append("\r\n");
    }

    private static String quoted(String cell) {
        boolean special =
                cell.indexOf(',') >= 0 || cell.indexOf('"') >= 0 || cell.indexOf('\n') >= 0 || cell.indexOf('\r') >= 0;
        return special ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
