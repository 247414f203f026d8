package org.thirstline.validation.catalogue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A table that is kept as text: a line {@code # title}, the header, the rows, cells between semicolons.
 *
 * @param title its heading
 * @param header names of the columns
 * @param rows its cells
 */
public record TextTable(String title, List<String> header, List<List<String>> rows) {

    /** Copies the lists. */
    public TextTable {
        header = List.copyOf(header);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** Reads tables. */
    public static List<TextTable> read(Path file) throws IOException {
        List<TextTable> tables = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        String title = "";
        for (String line : Files.readAllLines(file)) {
            if (line.startsWith("# ")) {
                add(tables, title, rows);
                title = line.substring(2);
                rows.clear();
            } else {
                rows.add(Arrays.asList(line.split(";", -1)));
            }
        }
        add(tables, title, rows);
        return tables;
    }

    private static void add(List<TextTable> tables, String title, List<List<String>> rows) {
        if (!rows.isEmpty()) {
            tables.add(new TextTable(title, rows.get(0), rows.subList(1, rows.size())));
        }
    }

    /** Returns tables as text. */
    public static String text(List<TextTable> tables) {
        StringBuilder text = new StringBuilder();
        for (TextTable table : tables) {
            text.append("# ").append(table.title()).append('\n');
            text.append(String.join(";", table.header())).append('\n');
            table.rows().forEach(row -> text.append(String.join(";", row)).append('\n'));
        }
        return text.toString();
    }

    void markdown(StringBuilder text) {
        text.append("\n### ")
                .append(title)
                .append("\n\n| ")
                .append(String.join(" | ", header))
                .append(" |\n|");
        text.append("---|".repeat(header.size())).append('\n');
        for (List<String> row : rows) {
            text.append("| ")
                    .append(String.join(" | ", row.stream().map(Html::cell).toList()))
                    .append(" |\n");
        }
    }

    void html(StringBuilder text) {
        text.append("<h3>").append(Html.escape(title)).append("</h3>\n<table>\n<tr>");
        header.forEach(head -> text.append("<th>").append(Html.escape(head)).append("</th>"));
        text.append("</tr>\n");
        for (List<String> row : rows) {
            text.append("<tr>");
            row.forEach(cell -> text.append("<td>").append(Html.escape(cell)).append("</td>"));
            text.append("</tr>\n");
        }
        text.append("</table>\n");
    }
}
