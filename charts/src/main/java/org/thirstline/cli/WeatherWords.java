package org.thirstline.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.RadiationSkill;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** What is to be said about a weather record, in sentences. */
final class WeatherWords {

    private static final int DAYS_OF_A_YEAR = 365;
    private static final double MEAN_YEAR_DAYS = 365.25;

    private WeatherWords() {}

    /** Returns what was filled, one sentence for each variable and way. */
    static List<String> estimates(WeatherRecord record) {
        List<String> estimates = new ArrayList<>();
        int days = record.series().days();
        for (WeatherVariable variable : WeatherVariable.values()) {
            for (Origin origin : Origin.values()) {
                int count = record.count(variable, origin);
                if (origin != Origin.MEASURED && count > 0) {
                    estimates.add(String.format(
                            Locale.ROOT, "%s: %s on %,d of %,d days.", variable.meaning(), words(origin), count, days));
                }
            }
        }
        if (estimates.isEmpty()) {
            estimates.add("Nothing: every daily value is measured.");
        }
        return estimates;
    }

    private static String words(Origin origin) {
        return switch (origin) {
            case MEASURED -> "measured";
            case ESTIMATED -> "estimated as FAO-56 sets out";
            case INTERPOLATED -> "interpolated across a short gap";
            case CLIMATOLOGY -> "filled with what is usual at that time of year";
            case SECOND_STATION -> "filled from a second station, bias taken out";
        };
    }

    /** Returns place, format and period in one line. */
    static String place(WeatherRecord record) {
        return String.format(
                Locale.ROOT,
                "%s, %.4f°, %.0f m: %s, %s to %s, %,d days",
                record.site().name(),
                record.site().latitudeDeg(),
                record.site().elevationM(),
                record.format().description(),
                record.series().start(),
                record.series().end(),
                record.series().days());
    }

    /** Returns how much rain falls and how much the air demands. */
    static String water(WeatherRecord record) {
        int days = record.series().days();
        DailyDrivers drivers = DailyDrivers.of(record.site(), record.series());
        double rain = 0.0;
        double et0 = 0.0;
        for (int day = 0; day < days; day++) {
            rain += drivers.rain(day);
            et0 += drivers.et0(day);
        }
        boolean whole = days >= DAYS_OF_A_YEAR;
        double years = whole ? days / MEAN_YEAR_DAYS : 1.0;
        String rainText = record.rainKnown()
                ? String.format(Locale.ROOT, "rain %.0f mm, ", rain / years)
                : "no rain in the file, ";
        return (whole ? "mean year: " : "these days: ")
                + rainText
                + String.format(Locale.ROOT, "reference evapotranspiration %.0f mm", et0 / years);
    }

    /** Returns how many values were doubted or could not be. */
    static String doubts(WeatherRecord record) {
        int suspect = days(record, issue -> issue.kind() == IssueKind.SUSPECT && !isRemark(issue));
        int impossible = days(
                record, issue -> issue.kind() == IssueKind.IMPOSSIBLE || issue.kind() == IssueKind.FAILED_AT_SOURCE);
        long remarks = record.issues().stream().filter(WeatherWords::isRemark).count();
        String first = impossible == 0
                ? "No value is impossible"
                : values(impossible) + " impossible or failed the provider's checks, and taken as missing";
        String second = "; " + (suspect == 0 ? "none is" : values(suspect)) + " hard to believe.";
        String third = remarks == 0 ? "" : " Look at what is said of whole months, years or columns.";
        return first + second + third;
    }

    /** Doubts about months, years or a column as a whole, which say nothing about a single value. */
    private static boolean isRemark(WeatherIssue issue) {
        return issue.kind() == IssueKind.SUSPECT && issue.action().endsWith("look at the source");
    }

    private static String values(int count) {
        return count == 1 ? "1 daily value is" : String.format(Locale.ROOT, "%,d daily values are", count);
    }

    private static int days(WeatherRecord record, Predicate<WeatherIssue> which) {
        return record.issues().stream()
                .filter(which)
                .mapToInt(WeatherIssue::days)
                .sum();
    }

    /** Returns how good radiation from the temperature range is, or nothing where that is not known or not needed. */
    static List<String> radiation(WeatherRecord record) {
        RadiationSkill skill = record.radiation();
        if (skill == null || record.count(WeatherVariable.SOLAR, Origin.ESTIMATED) == 0) {
            return List.of();
        }
        return List.of(String.format(
                Locale.ROOT,
                "Radiation from the temperature range, coefficient %.4f%s: on %,d days with measurements its error is %.1f MJ/m2 a day"
                        + " (root mean square), its bias %+.1f.",
                skill.coefficient(),
                skill.fitted() ? " fitted to them" : "",
                skill.days(),
                skill.rootMeanSquareError(),
                skill.bias()));
    }
}
