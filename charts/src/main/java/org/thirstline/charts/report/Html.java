package org.thirstline.charts.report;

import java.util.List;
import java.util.regex.Pattern;

/** Writes HTML; every text is escaped. Confined to one report. */
final class Html {

    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

    private final StringBuilder out = new StringBuilder(1 << 18);

    /** Makes room for so many more characters at once. */
    void reserve(int more) {
        out.ensureCapacity(out.length() + more);
    }

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    /** Writes markup as it is. */
    Html raw(String markup) {
        out.append(markup);
        return this;
    }

    /** Writes an element with text. */
    Html element(String tag, String text) {
        out.append('<').append(tag).append('>').append(escape(text));
        out.append("</").append(tag.split(" ", 2)[0]).append(">\n");
        return this;
    }

    Html list(List<String> items) {
        if (!items.isEmpty()) {
            out.append("<ul>\n");
            items.forEach(item -> element("li", item));
            out.append("</ul>\n");
        }
        return this;
    }

    Html table(ReportTable table) {
        out.append("<div class=\"wide\" role=\"group\" tabindex=\"0\" aria-label=\"")
                .append(escape(table.caption()))
                .append("\">\n<table>\n");
        element("caption", table.caption());
        out.append("<thead><tr>");
        for (int i = 0; i < table.columns().size(); i++) {
            ReportTable.Column column = table.columns().get(i);
            out.append(column.numeric() && i > 0 ? "<th scope=\"col\" class=\"n\">" : "<th scope=\"col\">")
                    .append(escape(column.name()));
            if (!column.unit().isEmpty()) {
                out.append(" <span class=\"unit\">")
                        .append(escape(column.unit()))
                        .append("</span>");
            }
            out.append("</th>");
        }
        out.append("</tr></thead>\n<tbody>\n");
        table.rows().forEach(row -> row(table, row));
        out.append("</tbody>\n</table>\n</div>\n");
        return this;
    }

    private void row(ReportTable table, List<String> row) {
        out.append("<tr>");
        for (int i = 0; i < row.size(); i++) {
            String tag = table.columns().get(i).numeric()
                    ? "<td class=\"n\">"
                    : DATE.matcher(row.get(i)).matches() ? "<td class=\"d\">" : "<td>";
            // A head without words would head nothing.
            boolean head = i == 0 && !row.get(i).isBlank();
            out.append(head ? "<th scope=\"row\">" : tag)
                    .append(escape(row.get(i)))
                    .append(head ? "</th>" : "</td>");
        }
        out.append("</tr>\n");
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
