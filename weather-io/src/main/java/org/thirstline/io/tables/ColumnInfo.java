package org.thirstline.io.tables;

/**
 * What a column of a result table holds. Immutable and thread-safe.
 *
 * @param name name in the header, unit included
 * @param type kind of value
 * @param unit unit as text, "1" for a share or ratio, empty for what has none
 * @param meaning what it means
 */
public record ColumnInfo(String name, Type type, String unit, String meaning) {

    /** Kinds of values, by their names in data package descriptors. */
    public enum Type {
        /** Text. */
        STRING("string"),
        /** Whole number. */
        INTEGER("integer"),
        /** Decimal number. */
        NUMBER("number"),
        /** ISO date. */
        DATE("date");

        private final String word;

        Type(String word) {
            this.word = word;
        }

        /** Returns the name in descriptors. */
        public String word() {
            return word;
        }
    }

    /** Returns a column of decimal numbers. */
    public static ColumnInfo number(String name, String unit, String meaning) {
        return new ColumnInfo(name, Type.NUMBER, unit, meaning);
    }

    /** Returns a column of whole numbers. */
    public static ColumnInfo integer(String name, String unit, String meaning) {
        return new ColumnInfo(name, Type.INTEGER, unit, meaning);
    }

    /** Returns a column of texts. */
    public static ColumnInfo text(String name, String meaning) {
        return new ColumnInfo(name, Type.STRING, "", meaning);
    }

    /** Returns a column of dates. */
    public static ColumnInfo date(String name, String meaning) {
        return new ColumnInfo(name, Type.DATE, "", meaning);
    }
}
