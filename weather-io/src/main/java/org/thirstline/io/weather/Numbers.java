package org.thirstline.io.weather;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** Numbers and dates out of a stretch of text, without cutting it out first. */
final class Numbers {

    /** What {@link #parse} returns for text that is no number; a missing value is something else. */
    static final double NO_NUMBER = Double.NEGATIVE_INFINITY;

    private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";
    private static final int MONTH_LETTERS = 3;
    private static final int FIRST_YEAR = 1700;
    private static final int LAST_YEAR = 2300;

    /** Powers of ten that a double holds exactly. */
    private static final double[] POWERS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
    };

    private Numbers() {}

    /**
     * Returns a decimal number, correctly rounded, or {@link #NO_NUMBER}.
     *
     * @param text holds the number between the two indices, without blanks around it
     */
    static double parse(CharSequence text, int from, int to) {
        int at = from;
        boolean negative = at < to && text.charAt(at) == '-';
        at += negative || (at < to && text.charAt(at) == '+') ? 1 : 0;
        long digits = 0;
        int count = 0;
        int decimals = -1;
        for (; at < to; at++) {
            char c = text.charAt(at);
            if (c >= '0' && c <= '9' && count < 15) {
                digits = 10 * digits + (c - '0');
                count++;
                decimals += decimals >= 0 ? 1 : 0;
            } else if (c == '.' && decimals < 0) {
                decimals = 0;
            } else {
                return parseSlowly(text.subSequence(from, to).toString());
            }
        }
        if (count == 0) {
            return NO_NUMBER;
        }
        // Both are exact, so the quotient is the double nearest to the decimal number.
        double value = digits / POWERS[Math.max(0, decimals)];
        return negative ? -value : value;
    }

    private static double parseSlowly(String text) {
        for (int i = 0; i < text.length(); i++) {
            if ("0123456789+-.eE".indexOf(text.charAt(i)) < 0) {
                return NO_NUMBER;
            }
        }
        try {
            double value = Double.parseDouble(text);
            return Double.isFinite(value) ? value : NO_NUMBER;
        } catch (NumberFormatException e) {
            return NO_NUMBER;
        }
    }

    /** Returns the whole number that digits between two indices make, or -1 if there is anything but digits. */
    static int digits(CharSequence text, int from, int to) {
        if (to > text.length() || from >= to || to - from > 9) {
            return -1;
        }
        int value = 0;
        for (int i = from; i < to; i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9') {
                return -1;
            }
            value = 10 * value + (c - '0');
        }
        return value;
    }

    /** Returns the day since 1970 of a date as 2001-12-31. */
    static long isoDate(String text) {
        boolean form = text.length() == 10 && text.charAt(4) == '-' && text.charAt(7) == '-';
        if (!form) {
            throw new InputException(InputError.BAD_DATE, text, "year-month-day, e.g. 2012-07-31");
        }
        return date(text, digits(text, 0, 4), digits(text, 5, 7), digits(text, 8, 10));
    }

    /** Returns the day since 1970 of a date as 20011231. */
    static long compactDate(String text) {
        if (text.length() != 8) {
            throw new InputException(InputError.BAD_DATE, text, "year, month and day in eight digits, e.g. 20120731");
        }
        return date(text, digits(text, 0, 4), digits(text, 4, 6), digits(text, 6, 8));
    }

    /** Returns the day since 1970 of a date as 2001-12-31, with or without a time of day behind it. */
    static long isoDay(String text) {
        boolean timed = text.length() > 10 && (text.charAt(10) == 'T' || text.charAt(10) == ' ');
        return isoDate(timed ? text.substring(0, 10) : text);
    }

    /** Returns the day since 1970 of a date as 31-dec-2001, English months, with or without a time of day behind it. */
    static long monthNameDate(String text) {
        String[] parts = text.split(" ", 2)[0].split("-", -1);
        int month = parts.length == 3 ? MONTHS.indexOf(parts[1].toLowerCase(Locale.ROOT)) / MONTH_LETTERS : -1;
        boolean form = parts.length == 3 && parts[1].length() == MONTH_LETTERS && parts[2].length() == 4;
        if (!form || !MONTHS.startsWith(parts[1].toLowerCase(Locale.ROOT), month * MONTH_LETTERS)) {
            throw new InputException(InputError.BAD_DATE, text, "day-month-year, e.g. 31-jul-2012");
        }
        return date(text, whole(parts[2]), month + 1, whole(parts[0]));
    }

    /** Returns the day since 1970 of a date as 31.12.2001, with or without a time of day behind it. */
    static long dottedDate(String text) {
        String[] parts = text.split(" ", 2)[0].split("\\.", -1);
        if (parts.length != 3 || parts[2].length() != 4) {
            throw new InputException(InputError.BAD_DATE, text, "day.month.year, e.g. 31.07.2012");
        }
        return date(text, whole(parts[2]), whole(parts[1]), whole(parts[0]));
    }

    /** Returns the day since 1970 of a date as 12/31/2001. */
    static long monthFirstDate(String text) {
        String[] parts = text.split("/", -1);
        if (parts.length != 3 || parts[2].length() != 4) {
            throw new InputException(InputError.BAD_DATE, text, "month/day/year, e.g. 07/31/2012");
        }
        return date(text, whole(parts[2]), whole(parts[0]), whole(parts[1]));
    }

    private static int whole(String text) {
        return digits(text, 0, text.length());
    }

    /** Returns the number behind a word, or null if either is not there. */
    static @Nullable Double after(String line, String word) {
        int at = line.indexOf(word);
        if (at < 0) {
            return null;
        }
        String rest = line.substring(at + word.length()).trim();
        int end = 0;
        while (end < rest.length() && rest.charAt(end) != ' ' && rest.charAt(end) != ',') {
            end++;
        }
        double value = parse(rest, 0, end);
        return value == NO_NUMBER ? null : (Double) value;
    }

    /**
     * Returns the day since 1970.
     *
     * @param found the text the numbers came from, for the message
     */
    static long date(String found, int year, int month, int day) {
        try {
            if (year >= FIRST_YEAR && year <= LAST_YEAR) {
                return LocalDate.of(year, month, day).toEpochDay();
            }
        } catch (DateTimeException e) {
            // said below
        }
        throw new InputException(
                InputError.BAD_DATE, found, "a day that exists, in the years " + FIRST_YEAR + " to " + LAST_YEAR);
    }

    /** Returns the day since 1970 of a day of the year, 1 on 1 January. */
    static long dayOfYear(String found, int year, int dayOfYear) {
        boolean known = year >= FIRST_YEAR && year <= LAST_YEAR && dayOfYear >= 1;
        if (!known || dayOfYear > Year.of(year).length()) {
            throw new InputException(InputError.BAD_DATE, found, "a year and a day of that year, 1 to 365 or 366");
        }
        return LocalDate.of(year, 1, 1).toEpochDay() + dayOfYear - 1;
    }
}
