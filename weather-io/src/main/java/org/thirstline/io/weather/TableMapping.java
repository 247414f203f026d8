package org.thirstline.io.weather;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * How to read a table of the user's own. Immutable.
 *
 * @param columns the columns that are read; others are passed over
 * @param separator what stands between fields, or null to tell it by the header
 * @param decimalComma whether decimals follow a comma
 * @param missing texts or numbers that stand for a missing value, beside nothing, NA and NaN
 */
public record TableMapping(
        List<MappedColumn> columns, @Nullable Character separator, boolean decimalComma, List<String> missing) {

    /** Refuses a mapping without a date, or with two columns for the same. */
    public TableMapping {
        columns = List.copyOf(columns);
        missing = List.copyOf(missing);
        for (int i = 0; i < columns.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (columns.get(i).gives().equals(columns.get(j).gives())) {
                    throw new InputException(
                            InputError.COLUMN_TWICE,
                            columns.get(i).gives(),
                            columns.get(j).name(),
                            columns.get(i).name());
                }
            }
        }
        boolean dated = gives(columns, MappedColumn.DATE)
                || (gives(columns, MappedColumn.YEAR)
                        && (gives(columns, MappedColumn.DAY_OF_YEAR)
                                || (gives(columns, MappedColumn.MONTH) && gives(columns, MappedColumn.DAY))));
        if (!dated) {
            throw new InputException(
                    InputError.COLUMN_MISSING,
                    "the date",
                    String.join(", ", columns.stream().map(MappedColumn::gives).toList()),
                    "; give date, or year and day_of_year, or year, month and day");
        }
    }

    private static boolean gives(List<MappedColumn> columns, String what) {
        return columns.stream().anyMatch(column -> column.gives().equals(what));
    }

    /** Returns the column that gives something, or null. */
    @Nullable
    MappedColumn find(String what) {
        return columns.stream()
                .filter(column -> column.gives().equals(what))
                .findFirst()
                .orElse(null);
    }

    /** Returns whether the columns are numbers, so that the table has no header. */
    boolean isHeaderless() {
        return columns.stream().allMatch(column -> column.name().matches("[0-9]{1,4}"));
    }
}
