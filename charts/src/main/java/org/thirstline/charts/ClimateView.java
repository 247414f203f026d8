package org.thirstline.charts;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import org.thirstline.io.climate.ClimateSummary;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.io.climate.YearSeason;

/**
 * The climate of a place, as charts show it. Immutable and thread-safe.
 *
 * @param place name of the place
 * @param summary its climate
 */
public record ClimateView(String place, ClimateSummary summary) {

    String subtitle(String text) {
        return Subtitles.sentence(place, text);
    }

    /** Returns a date as day and month. */
    String date(double day) {
        LocalDate date = YearSeason.date(day, summary.southern());
        return date.getDayOfMonth() + " " + date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }

    /** Returns the day of a probability, NaN if frost is rarer. */
    static double day(List<FrostDate> dates, int sharePct) {
        return dates.stream()
                .filter(date -> date.sharePct() == sharePct)
                .mapToDouble(FrostDate::day)
                .findFirst()
                .orElse(Double.NaN);
    }

    /** Returns a year as read: 2003, or 2003/04 where it spans the turn of the year. */
    String year(int year) {
        return summary.southern() ? String.format(Locale.ROOT, "%d/%02d", year, (year + 1) % 100) : "" + year;
    }
}
