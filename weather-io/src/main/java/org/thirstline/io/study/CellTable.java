package org.thirstline.io.study;

import java.io.Closeable;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.NearestName;
import org.thirstline.io.text.Dimension;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.KeySpec;
import org.thirstline.io.text.ValueKind;
import org.thirstline.io.weather.Fields;
import org.thirstline.io.weather.LineReader;
import org.thirstline.model.error.InputException;

/**
 * A table of cells read line by line, however long: a header of known columns, then one line for each cell. Blank lines and lines that start
 * with # are passed over. Confined to one reading.
 */
public final class CellTable implements Closeable {

    private static final int SHORTEST_SLIP = 4;

    private final LineReader lines;
    private final String file;
    private final Fields fields;
    private final List<String> columns = new ArrayList<>();
    private final List<String> ignored = new ArrayList<>();
    private final Map<String, Integer> lineOf = new HashMap<>();

    private CellTable(Path path, LineReader lines) {
        this.lines = lines;
        file = String.valueOf(path.getFileName());
        String header = nextLine();
        if (header == null) {
            throw new InputException(CellError.NO_CELLS).at(lines.place());
        }
        fields = new Fields(Fields.separatorOf(header));
        try {
            readHeader(header);
        } catch (InputException refused) {
            throw refused.at(lines.place());
        }
    }

    /**
     * Opens a table and checks its header.
     *
     * @throws InputException if the file cannot be read, or the header has no cell column, a column twice or a slip in a name
     */
    public static CellTable open(Path path) {
        LineReader lines = new LineReader(path);
        try {
            return new CellTable(path, lines);
        } catch (InputException refused) {
            lines.close();
            throw refused;
        }
    }

    /**
     * Reads a whole table, so that a slip in its last line is found before the first cell is simulated.
     *
     * @return the number of its cells, at least 1
     * @throws InputException as {@link #open} and {@link #next}, or if there is no cell
     */
    public static int check(Path path) {
        try (CellTable table = open(path)) {
            int count = 0;
            while (table.next() != null) {
                count++;
            }
            if (count == 0) {
                throw new InputException(CellError.NO_CELLS).at(path.toString());
            }
            return count;
        }
    }

    private void readHeader(String header) {
        fields.split(header);
        for (int i = 0; i < fields.count(); i++) {
            String name = fields.text(i).toLowerCase(Locale.ROOT).replace(' ', '_');
            if (columns.contains(name)) {
                throw new InputException(CellError.COLUMN_TWICE, name);
            }
            columns.add(name);
        }
        columns.forEach(this::judge);
        if (!columns.contains(CellKeys.NAME)) {
            String near = NearestName.within(CellKeys.NAME, columns, 2);
            String hint = near == null ? "" : ". Is '" + near + "' meant to be " + CellKeys.NAME + "?";
            throw new InputException(
                    CellError.COLUMN_MISSING, CellKeys.NAME, "name of the cell", String.join(", ", columns), hint);
        }
    }

    /** A name that is nearly known, or known with a unit that is not, is refused; others are somebody's own and not read. */
    private void judge(String column) {
        if (CellKeys.CELL.find(column).isPresent()) {
            return;
        }
        for (KeySpec key : CellKeys.CELL.keys()) {
            if (key.kind() instanceof ValueKind.Measure measure && column.startsWith(key.name() + "_")) {
                Dimension dimension = measure.dimension();
                String allowed = "%s_%s, or a column '%s' with numbers and units"
                        .formatted(key.name(), dimension.suffix(), key.name());
                String unit = column.substring(key.name().length() + 1);
                throw new InputException(
                        InputFileError.WRONG_UNIT, column, unit, dimension.words() + " in a column", allowed);
            }
        }
        List<String> known = CellKeys.CELL.spellings();
        String near =
                column.length() < SHORTEST_SLIP ? null : NearestName.within(column, known, column.length() > 6 ? 2 : 1);
        if (near != null && !columns.contains(near)) {
            throw new InputException(CellError.COLUMN_UNKNOWN, column, near);
        }
        ignored.add(column);
    }

    /** Returns columns that are there but not read. */
    public List<String> ignored() {
        return List.copyOf(ignored);
    }

    /**
     * Returns the next cell, or null at the end.
     *
     * @throws InputException if the line has another number of fields than the header, or the name is missing or used before
     */
    public @Nullable CellRow next() {
        String line = nextLine();
        if (line == null) {
            return null;
        }
        try {
            return row(line);
        } catch (InputException refused) {
            throw refused.at(lines.place());
        }
    }

    private CellRow row(String line) {
        fields.split(line);
        if (fields.count() != columns.size()) {
            throw new InputException(CellError.FIELD_COUNT, fields.count(), columns.size());
        }
        Map<String, String> filled = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            if (!fields.isEmpty(i) && CellKeys.CELL.find(columns.get(i)).isPresent()) {
                filled.put(columns.get(i), fields.text(i));
            }
        }
        String name = filled.get(CellKeys.NAME);
        if (name == null) {
            throw new InputException(CellError.NAME_MISSING);
        }
        Integer before = lineOf.putIfAbsent(name, lines.lineNumber());
        if (before != null) {
            throw new InputException(CellError.NAME_TWICE, name, before);
        }
        return new CellRow(file, lines.lineNumber(), name, filled);
    }

    private @Nullable String nextLine() {
        String line = lines.nextFilled();
        while (line != null && line.startsWith("#")) {
            line = lines.nextFilled();
        }
        return line;
    }

    @Override
    public void close() {
        lines.close();
    }
}
