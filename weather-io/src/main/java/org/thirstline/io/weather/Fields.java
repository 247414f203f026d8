package org.thirstline.io.weather;

import java.util.Arrays;

/**
 * One line cut into trimmed fields, by commas (RFC 4180 quotes understood), semicolons, tabs, or runs of blanks. Reused line after line.
 * Confined to one read.
 */
final class Fields {

    /** Separator that stands for a run of blanks. */
    static final char BLANKS = ' ';

    private final char separator;
    private final boolean decimalComma;
    private String line = "";
    private int[] starts = new int[48];
    private int[] ends = new int[48];
    private int count;

    Fields(char separator) {
        this(separator, false);
    }

    Fields(char separator, boolean decimalComma) {
        this.separator = separator;
        this.decimalComma = decimalComma;
    }

    /** Returns the separator of a header line. */
    static char separatorOf(String header) {
        for (char candidate : new char[] {',', ';', '\t'}) {
            if (header.indexOf(candidate) >= 0) {
                return candidate;
            }
        }
        return BLANKS;
    }

    char separator() {
        return separator;
    }

    void split(String text) {
        line = text;
        count = 0;
        if (separator == BLANKS) {
            splitAtBlanks();
        } else {
            splitAtSeparator();
        }
    }

    private void splitAtBlanks() {
        int at = 0;
        while (at < line.length()) {
            while (at < line.length() && isBlank(line.charAt(at))) {
                at++;
            }
            int from = at;
            while (at < line.length() && !isBlank(line.charAt(at))) {
                at++;
            }
            if (at > from) {
                add(from, at);
            }
        }
    }

    private void splitAtSeparator() {
        int from = 0;
        boolean quoted = false;
        for (int at = 0; at < line.length(); at++) {
            char c = line.charAt(at);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == separator && !quoted) {
                add(from, at);
                from = at + 1;
            }
        }
        add(from, line.length());
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\u00a0';
    }

    private void add(int from, int to) {
        if (count == starts.length) {
            starts = Arrays.copyOf(starts, 2 * count);
            ends = Arrays.copyOf(ends, 2 * count);
        }
        int first = from;
        int last = to;
        while (first < last && isBlank(line.charAt(first))) {
            first++;
        }
        while (last > first && isBlank(line.charAt(last - 1))) {
            last--;
        }
        if (last - first >= 2 && line.charAt(first) == '"' && line.charAt(last - 1) == '"') {
            first++;
            last--;
            while (first < last && isBlank(line.charAt(first))) {
                first++;
            }
            while (last > first && isBlank(line.charAt(last - 1))) {
                last--;
            }
        }
        starts[count] = first;
        ends[count] = last;
        count++;
    }

    int count() {
        return count;
    }

    boolean isEmpty(int field) {
        return starts[field] == ends[field];
    }

    int length(int field) {
        return ends[field] - starts[field];
    }

    /** Returns a field as text, without quotes and blanks around it. */
    String text(int field) {
        return line.substring(starts[field], ends[field]).replace("\"\"", "\"");
    }

    /** Returns whether a field is this text, without making a string of it. */
    boolean is(int field, String text) {
        return ends[field] - starts[field] == text.length()
                && line.regionMatches(true, starts[field], text, 0, text.length());
    }

    /** Returns a field as a number, NaN where it is missing (nothing, NA, NaN), or {@link Numbers#NO_NUMBER}. */
    double number(int field) {
        if (isEmpty(field) || is(field, "NA") || is(field, "NaN")) {
            return Double.NaN;
        }
        if (decimalComma) {
            // a point would then set off thousands
            return text(field).indexOf('.') >= 0 ? Numbers.NO_NUMBER : withDecimalComma(text(field));
        }
        double value = Numbers.parse(line, starts[field], ends[field]);
        boolean maybeComma = value == Numbers.NO_NUMBER && separator != ',';
        return maybeComma ? withDecimalComma(text(field)) : value;
    }

    private static double withDecimalComma(String text) {
        return Numbers.parse(text.replace(',', '.'), 0, text.length());
    }

    /** Returns a field as whole digits, or -1. */
    int digits(int field) {
        return Numbers.digits(line, starts[field], ends[field]);
    }
}
