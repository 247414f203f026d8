package org.thirstline.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** The weather on one terminal screen. */
final class WeatherSummary {

    private static final int ISSUES_SHOWN = 12;
    private static final int DAYS_OF_A_YEAR = 365;

    private WeatherSummary() {}

    static void print(WeatherRecord record, PrintWriter out) {
        int days = record.series().days();
        out.printf(
                Locale.ROOT,
                "%s, %.4f°, %.0f m: %s, %s to %s, %,d days%s%n",
                record.site().name(),
                record.site().latitudeDeg(),
                record.site().elevationM(),
                record.format().description(),
                record.series().start(),
                record.series().end(),
                days,
                record.invented() ? " (invented weather)" : "");
        out.println();
        out.printf(
                "%-22s %9s %10s %13s %12s %15s%n",
                "", "measured", "estimated", "interpolated", "climatology", "second station");
        for (WeatherVariable variable : WeatherVariable.values()) {
            boolean unknownRain = variable == WeatherVariable.RAIN && !record.rainKnown();
            out.printf("%-22s", variable.column());
            if (unknownRain) {
                out.printf(" none in the file%n");
                continue;
            }
            for (Origin origin : Origin.values()) {
                out.printf(Locale.ROOT, width(origin), record.count(variable, origin));
            }
            out.println();
        }
        printMeans(record, out, days);
        printIssues(record, out);
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

    private static void printMeans(WeatherRecord record, PrintWriter out, int days) {
        DailyDrivers drivers = DailyDrivers.of(record.site(), record.series());
        double rain = 0.0;
        double et0 = 0.0;
        for (int day = 0; day < days; day++) {
            rain += drivers.rain(day);
            et0 += drivers.et0(day);
        }
        boolean whole = days >= DAYS_OF_A_YEAR;
        double years = whole ? days / 365.25 : 1.0;
        String what = whole ? "mean yearly " : "in these days: ";
        out.println();
        if (record.rainKnown()) {
            out.printf(Locale.ROOT, "%srain %.0f mm, ", what, rain / years);
        }
        out.printf(Locale.ROOT, "%sreference evapotranspiration %.0f mm%n", whole ? what : "", et0 / years);
    }

    private static void printIssues(WeatherRecord record, PrintWriter out) {
        if (record.issues().isEmpty()) {
            return;
        }
        out.println();
        out.printf(
                Locale.ROOT,
                "%,d remarks on values and gaps:%n",
                record.issues().size());
        int shown = 0;
        for (WeatherIssue issue : record.issues()) {
            if (shown++ == ISSUES_SHOWN) {
                out.println("  ... all of them are in weather-report.csv");
                return;
            }
            String span = issue.days() == 1 ? issue.first().toString() : issue.first() + " to " + issue.last();
            String found = issue.found().isEmpty() ? "" : " " + issue.found();
            out.printf("  %s %s: %s%s, %s%n", span, issue.variableName(), words(issue), found, issue.action());
        }
    }

    private static String words(WeatherIssue issue) {
        return issue.kind().text();
    }
}
