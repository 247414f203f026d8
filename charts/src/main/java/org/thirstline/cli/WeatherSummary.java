package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.thirstline.io.quality.WeatherReport;
import org.thirstline.io.quality.WeatherReport.Row;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** The weather on one terminal screen. */
final class WeatherSummary {

    private static final int ROWS_SHOWN = 12;

    /** What the table of origins already says. */
    private static final Set<IssueKind> COUNTED =
            EnumSet.of(IssueKind.ESTIMATED, IssueKind.INTERPOLATED, IssueKind.CLIMATOLOGY, IssueKind.SECOND_STATION);

    private WeatherSummary() {}

    static void print(WeatherRecord record, List<String> climate, PrintWriter out) {
        out.println(WeatherWords.place(record) + (record.invented() ? " (invented weather)" : ""));
        out.println();
        printOrigins(record, out);
        out.println();
        out.println(WeatherWords.water(record));
        climate.forEach(out::println);
        WeatherWords.radiation(record).forEach(out::println);
        out.println();
        out.println(WeatherWords.doubts(record));
        printDoubts(record, out);
    }

    private static void printOrigins(WeatherRecord record, PrintWriter out) {
        out.printf(
                "%-20s %9s %10s %13s %12s %15s%n",
                "days", "measured", "estimated", "interpolated", "climatology", "second station");
        for (WeatherVariable variable : WeatherVariable.values()) {
            out.printf("%-20s", variable.column());
            if (variable == WeatherVariable.RAIN && !record.rainKnown()) {
                out.printf(" none in the file; fine here, but a simulation needs it%n");
                continue;
            }
            for (Origin origin : Origin.values()) {
                out.printf(Locale.ROOT, width(origin), record.count(variable, origin));
            }
            out.println();
        }
    }

    private static String width(Origin origin) {
        return switch (origin) {
            case MEASURED -> " %,9d";
            case ESTIMATED -> " %,10d";
            case INTERPOLATED -> " %,13d";
            case CLIMATOLOGY -> " %,12d";
            case SECOND_STATION -> " %,15d";
        };
    }

    /** Every kind of remark once, the most frequent first. */
    private static void printDoubts(WeatherRecord record, PrintWriter out) {
        List<Row> rows = WeatherReport.totals(record).stream()
                .filter(row -> !COUNTED.contains(row.kind()))
                .sorted(Comparator.comparingInt(Row::count).reversed())
                .toList();
        for (Row row : rows.subList(0, Math.min(ROWS_SHOWN, rows.size()))) {
            String example = row.exampleValue().isEmpty() ? "" : ", e.g. " + row.exampleValue();
            String span = row.first().equals(row.last()) ? row.first().toString() : row.first() + " to " + row.last();
            out.printf(
                    Locale.ROOT,
                    "  %,6d d  %s %s: %s%s (%s)%n",
                    row.count(),
                    row.variable(),
                    row.kind().text(),
                    row.action(),
                    example,
                    span);
        }
        if (rows.size() > ROWS_SHOWN) {
            out.printf("  and %d other kinds of remark, all in weather-report.csv%n", rows.size() - ROWS_SHOWN);
        }
    }
}
