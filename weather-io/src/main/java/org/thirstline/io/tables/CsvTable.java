package org.thirstline.io.tables;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A table as bytes: RFC 4180, UTF-8, one line feed a row, decimal point, a fixed number of decimals in each column. A value that does not
 * exist is an empty field. Confined to one writing.
 */
public final class CsvTable {

    private static final int FIRST_SIZE = 1 << 16;
    private static final int MAX_DECIMALS = 9;
    private static final int LONGEST_NUMBER = 40;
    private static final long[] POWERS = powers(MAX_DECIMALS);

    /** All powers of ten of a long number. */
    private static final long[] SCALES = powers(18);

    /** Below this, a scaled value is a whole number that a double holds exactly. */
    private static final double EXACT = 9e15;

    private byte[] bytes = new byte[FIRST_SIZE];
    private int size;
    private boolean rowStarted;

    private static long[] powers(int highest) {
        long[] powers = new long[highest + 1];
        powers[0] = 1;
        for (int i = 1; i < powers.length; i++) {
            powers[i] = 10 * powers[i - 1];
        }
        return powers;
    }

    /** Appends a text, in quotes where it needs them; null is an empty field. */
    public CsvTable text(@Nullable String text) {
        startField();
        if (text == null || text.isEmpty()) {
            return this;
        }
        boolean quoted =
                text.indexOf(',') >= 0 || text.indexOf('"') >= 0 || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0;
        byte[] encoded = (quoted ? '"' + text.replace("\"", "\"\"") + '"' : text).getBytes(StandardCharsets.UTF_8);
        reserve(encoded.length);
        System.arraycopy(encoded, 0, bytes, size, encoded.length);
        size += encoded.length;
        return this;
    }

    /** Appends a whole number. */
    public CsvTable whole(long value) {
        startField();
        digits(value, 0);
        return this;
    }

    /** Appends a date; null is an empty field. */
    public CsvTable date(@Nullable LocalDate date) {
        if (date == null) {
            return empty();
        }
        if (date.getYear() < 0 || date.getYear() > 9999) {
            return text(date.toString());
        }
        startField();
        reserve(LONGEST_NUMBER);
        twoDigits(date.getYear() / 100);
        twoDigits(date.getYear() % 100);
        bytes[size++] = '-';
        twoDigits(date.getMonthValue());
        bytes[size++] = '-';
        twoDigits(date.getDayOfMonth());
        return this;
    }

    /**
     * Appends a number with a fixed number of decimals, halves away from zero; NaN is an empty field and there is no minus zero.
     *
     * @param decimals 0 to 9
     * @throws IllegalArgumentException if the value is infinite
     */
    public CsvTable number(double value, int decimals) {
        startField();
        if (Double.isNaN(value)) {
            return this;
        }
        if (Double.isInfinite(value)) {
            throw new IllegalArgumentException("an infinite value cannot be written");
        }
        double scaled = Math.abs(value) * POWERS[decimals] + 0.5;
        if (scaled < EXACT) {
            long rounded = (long) scaled;
            digits(value < 0 ? -rounded : rounded, decimals);
        } else {
            ascii(new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString());
        }
        return this;
    }

    /** Appends an empty field. */
    public CsvTable empty() {
        startField();
        return this;
    }

    /** Ends the row. */
    public CsvTable endRow() {
        reserve(1);
        bytes[size++] = '\n';
        rowStarted = false;
        return this;
    }

    /** Returns a copy of the table as it is. */
    public byte[] toBytes() {
        return Arrays.copyOf(bytes, size);
    }

    /** Writes the table to a new or emptied file. */
    public void writeTo(Path file) throws IOException {
        try (OutputStream stream = Files.newOutputStream(file)) {
            stream.write(bytes, 0, size);
        }
    }

    /** Writes the rows there are and forgets them; the table goes on after them. */
    void moveTo(OutputStream out) throws IOException {
        out.write(bytes, 0, size);
        size = 0;
    }

    private void startField() {
        if (rowStarted) {
            reserve(1);
            bytes[size++] = ',';
        }
        rowStarted = true;
    }

    private void digits(long value, int decimals) {
        reserve(LONGEST_NUMBER);
        long left = Math.abs(value);
        if (value < 0) {
            bytes[size++] = '-';
        }
        int length = Math.max(decimals + 1, digitCount(left)) + (decimals > 0 ? 1 : 0);
        int at = size + length - 1;
        int place = 0;
        for (; left > Integer.MAX_VALUE; place++) {
            at = digit(at, place, decimals, (int) (left % 10));
            left /= 10;
        }
        // most numbers are short, and short divisions are quick
        for (int few = (int) left; at >= size; place++) {
            at = digit(at, place, decimals, few % 10);
            few /= 10;
        }
        size += length;
    }

    /** Writes a digit and, in front of the first whole one, the point; returns where the next one goes. */
    private int digit(int at, int place, int decimals, int digit) {
        int here = at;
        if (decimals > 0 && place == decimals) {
            bytes[here--] = '.';
        }
        bytes[here] = (byte) ('0' + digit);
        return here - 1;
    }

    private static int digitCount(long value) {
        int count = 1;
        while (count < SCALES.length && value >= SCALES[count]) {
            count++;
        }
        return count;
    }

    private void twoDigits(int value) {
        bytes[size++] = (byte) ('0' + value / 10);
        bytes[size++] = (byte) ('0' + value % 10);
    }

    private void ascii(String text) {
        byte[] encoded = text.getBytes(StandardCharsets.US_ASCII);
        reserve(encoded.length);
        System.arraycopy(encoded, 0, bytes, size, encoded.length);
        size += encoded.length;
    }

    private void reserve(int more) {
        if (size + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, size + more));
        }
    }
}
