package org.thirstline.io.text;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thirstline.model.error.InputException;

/** Gives scalars their meaning. Refusals carry no place; the caller knows it. */
public final class Scalars {

    private static final Pattern YEAR_SPAN = Pattern.compile("([0-9]{4})(?:\\s*(?:-|to)\\s*([0-9]{4}))?");

    private Scalars() {}

    static Node.Scalar scalar(Node node) {
        if (node instanceof Node.Scalar scalar && scalar.scalarKind() != Node.ScalarKind.NOTHING) {
            return scalar;
        }
        throw new InputException(InputFileError.WRONG_KIND, node.kind(), "one value");
    }

    /** Returns a text that is not blank. */
    public static String text(Node.Scalar node) {
        if (node.text().isBlank()) {
            throw new InputException(InputFileError.WRONG_KIND, "empty text", "a text");
        }
        return node.text().strip();
    }

    static String choice(Node.Scalar node, ValueKind.Choice choice) {
        String found = text(node);
        return choice.words().stream()
                .filter(found::equalsIgnoreCase)
                .findFirst()
                .orElseThrow(() -> new InputException(
                        InputFileError.NOT_ALLOWED,
                        found,
                        String.join(", ", choice.words()),
                        Nearest.hint(found, choice.words())));
    }

    static boolean flag(Node.Scalar node) {
        if (node.scalarKind() != Node.ScalarKind.FLAG) {
            throw new InputException(InputFileError.WRONG_KIND, node.kind(), "true or false");
        }
        return Boolean.parseBoolean(node.text());
    }

    static double number(Node.Scalar node, double lowest, double highest, String unit) {
        Double number = Quantities.number(node.text().strip());
        if (number == null) {
            String expected = unit.isEmpty() ? "a number" : "a bare number; the key names the unit, " + unit;
            throw new InputException(InputFileError.WRONG_KIND, node.kind(), expected);
        }
        return inRange(node, number, lowest, highest, unit);
    }

    /** Returns a number of any size. */
    public static double anyNumber(Node.Scalar node) {
        return number(node, -Double.MAX_VALUE, Double.MAX_VALUE, "");
    }

    static double bare(Node.Scalar node, ValueKind.Measure measure) {
        return number(
                node, measure.lowest(), measure.highest(), measure.dimension().unit());
    }

    static double measure(String key, Node.Scalar node, ValueKind.Measure measure) {
        double value = Quantities.read(key, node.text(), measure.dimension());
        return inRange(
                node,
                value,
                measure.lowest(),
                measure.highest(),
                measure.dimension().unit());
    }

    private static double inRange(Node.Scalar node, double value, double lowest, double highest, String unit) {
        if (!(value >= lowest && value <= highest)) {
            throw new InputException(
                    InputFileError.OUT_OF_RANGE,
                    node.text(),
                    plain(lowest),
                    plain(highest),
                    unit.isEmpty() ? "" : unit);
        }
        return value;
    }

    private static String plain(double limit) {
        return limit == Math.rint(limit) && Math.abs(limit) < 1e9
                ? Long.toString((long) limit)
                : Double.toString(limit);
    }

    /** Returns two lengths [m] written as {@code 75 cm x 70 cm}. */
    public static double[] spacing(Node.Scalar node) {
        String[] parts = node.text().strip().split("\\s*[x×X]\\s*", -1);
        if (parts.length != 2) {
            throw new InputException(
                    InputFileError.WRONG_KIND, node.kind(), "row and in-row distance, as in '75 cm x 70 cm'");
        }
        ValueKind.Measure length = new ValueKind.Measure(Dimension.LENGTH, 0.001, 10);
        double[] metres = new double[2];
        for (int i = 0; i < 2; i++) {
            if (Quantities.number(parts[i]) != null) {
                throw new InputException(
                        InputFileError.MISSING_UNIT, node.text(), "spacing: 75 cm x 70 cm", "spacing: 30 in x 28 in");
            }
            metres[i] = measure("spacing", new Node.Scalar(node.line(), parts[i], node.scalarKind()), length);
        }
        return metres;
    }

    /** Returns an ISO date. */
    public static LocalDate date(Node.Scalar node) {
        try {
            return LocalDate.parse(node.text().strip());
        } catch (DateTimeException bad) {
            throw new InputException(
                    InputFileError.BAD_DATE, node.text(), "a date as year-month-day, for example 2009-04-20");
        }
    }

    /** Returns a day of any year, {@code 03-01}. */
    public static MonthDay dayOfYear(Node.Scalar node) {
        return monthDay(node.text(), node.text(), "a day of the year as month-day, for example 03-01");
    }

    /** Returns two days of any year, {@code 02-01 to 04-15}. */
    public static MonthDay[] dayWindow(Node.Scalar node) {
        String expected = "two days of the year as month-day, for example 02-01 to 04-15";
        String[] parts = node.text().strip().split("\\s+to\\s+", -1);
        if (parts.length != 2) {
            throw new InputException(InputFileError.BAD_DATE, node.text(), expected);
        }
        return new MonthDay[] {monthDay(parts[0], node.text(), expected), monthDay(parts[1], node.text(), expected)};
    }

    private static MonthDay monthDay(String text, String found, String expected) {
        try {
            return MonthDay.parse("--" + text.strip());
        } catch (DateTimeException bad) {
            throw new InputException(InputFileError.BAD_DATE, found, expected);
        }
    }

    /** Returns a span of years, {@code 1991-2020}, or one year. */
    public static YearSpan years(Node.Scalar node) {
        Matcher matcher = YEAR_SPAN.matcher(node.text().strip());
        if (matcher.matches()) {
            int first = Integer.parseInt(matcher.group(1));
            int last = matcher.group(2) == null ? first : Integer.parseInt(matcher.group(2));
            if (first <= last) {
                return new YearSpan(first, last);
            }
        }
        throw new InputException(
                InputFileError.BAD_DATE, node.text(), "first and last year, for example 1991-2020, or one year");
    }

    /** Returns one year. */
    public static int year(Node.Scalar node) {
        if (!node.text().strip().matches("[0-9]{4}")) {
            throw new InputException(InputFileError.BAD_DATE, node.text(), "a year, for example 2012");
        }
        return Integer.parseInt(node.text().strip());
    }
}
