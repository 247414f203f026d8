package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.io.error.NearestName;
import org.thirstline.model.error.InputException;

/** The lines of a file under a header of column names. Confined to one read. */
final class Table {

    /** Index of a column that is not there; its values are missing. */
    static final int ABSENT = -1;

    private final LineReader lines;
    private final Fields fields;
    private final List<String> names;
    private List<String> missing = List.of();
    private boolean moreColumns;

    private Table(LineReader lines, Fields fields, List<String> names) {
        this.lines = lines;
        this.fields = fields;
        this.names = names;
    }

    /** Opens the table under a header line that was just read. */
    static Table under(String header, LineReader lines) {
        return under(header, lines, new Fields(Fields.separatorOf(header)));
    }

    /** Opens a table that has no header line. */
    static Table headerless(List<String> names, LineReader lines, Fields fields) {
        Table table = new Table(lines, fields, List.copyOf(names));
        table.moreColumns = true;
        return table;
    }

    /** Opens the table under a header line, its lines cut up in a given way. */
    static Table under(String header, LineReader lines, Fields fields) {
        fields.split(header);
        List<String> names = new ArrayList<>();
        for (int i = 0; i < fields.count(); i++) {
            names.add(fields.text(i).toLowerCase(Locale.ROOT));
        }
        return new Table(lines, fields, names);
    }

    /** Takes these texts for missing values; returns the table itself. */
    Table missing(List<String> texts) {
        missing = List.copyOf(texts);
        return this;
    }

    /** Returns the column names in lower case. */
    List<String> names() {
        return names;
    }

    /** Returns the first of these columns that is there, or {@link #ABSENT}. */
    int find(String... wanted) {
        for (String name : wanted) {
            int at = names.indexOf(name.toLowerCase(Locale.ROOT));
            if (at >= 0) {
                return at;
            }
        }
        return ABSENT;
    }

    /** Returns the column whose name begins with this word and goes on, if at all, with a unit; or {@link #ABSENT}. */
    int findWord(String word) {
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            boolean ends = name.length() == word.length();
            if (name.startsWith(word) && (ends || !Character.isLetterOrDigit(name.charAt(word.length())))) {
                return i;
            }
        }
        return ABSENT;
    }

    /** Returns the first of these columns that is there, or fails. */
    int require(String meaning, String... wanted) {
        int at = find(wanted);
        if (at == ABSENT) {
            String near = NearestName.within(wanted[0], names, 2);
            String hint =
                    near == null ? ". Expected: " + wanted[0] : ". Is '" + near + "' meant to be " + wanted[0] + "?";
            throw new InputException(InputError.COLUMN_MISSING, meaning, String.join(", ", names), hint);
        }
        return at;
    }

    /** Moves to the next line that is not blank; false at the end. */
    boolean next() {
        String line = lines.nextFilled();
        return line != null && accept(line);
    }

    /** Moves to the next line; false at the end or at a blank line. */
    boolean nextInBlock() {
        String line = lines.next();
        return line != null && !line.isBlank() && accept(line);
    }

    /** Moves to the next line that is not blank; false at the end or at a line that starts with this text. */
    boolean nextUnless(String end) {
        String line = lines.nextFilled();
        return line != null && !line.startsWith(end) && accept(line);
    }

    private boolean accept(String line) {
        fields.split(line);
        if (fields.count() < names.size()) {
            throw new InputException(
                    InputError.FIELD_COUNT, fields.count(), names.size(), "the line is cut short or lacks a separator");
        }
        for (int extra = names.size(); !moreColumns && extra < fields.count(); extra++) {
            if (!fields.isEmpty(extra)) {
                throw new InputException(
                        InputError.FIELD_COUNT, fields.count(), names.size(), "a decimal comma would do this");
            }
        }
        return true;
    }

    /** Returns a number, NaN where it is missing or the column absent. */
    double number(int column) {
        if (column == ABSENT) {
            return Double.NaN;
        }
        double value = fields.number(column);
        if (value == Numbers.NO_NUMBER && !isMissing(column)) {
            throw new InputException(InputError.NOT_A_NUMBER, names.get(column), fields.text(column));
        }
        return value == Numbers.NO_NUMBER ? Double.NaN : value;
    }

    private boolean isMissing(int column) {
        for (String text : missing) {
            if (fields.is(column, text)) {
                return true;
            }
        }
        return false;
    }

    /** Returns a number that must be there. */
    double needed(int column) {
        double value = number(column);
        if (Double.isNaN(value)) {
            throw new InputException(InputError.NOT_A_NUMBER, names.get(column), fields.text(column));
        }
        return value;
    }

    /** Returns a whole number that must be there, e.g. a year, also when written as 2001.0. */
    int whole(int column) {
        double value = needed(column);
        if (value != Math.rint(value) || Math.abs(value) > 1.0e9) {
            throw new InputException(InputError.NOT_A_NUMBER, names.get(column), fields.text(column));
        }
        return (int) value;
    }

    /** Returns a field as text. */
    String text(int column) {
        return fields.text(column);
    }

    /** Returns a field as text, or null if it is empty or the column absent. */
    @Nullable
    String textOrNull(int column) {
        return column == ABSENT || fields.isEmpty(column) ? null : fields.text(column);
    }
}
