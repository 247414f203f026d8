package org.thirstline.io.climate;

import java.io.IOException;
import java.time.YearMonth;
import java.util.List;
import java.util.Locale;
import org.thirstline.io.climate.ClimateSummary.ClimateNormal;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.model.climate.MonthlyRain;

/** Writes a climate summary as CSV: one value a line. */
public final class ClimateTable {

    /** The columns, in order. */
    public static final List<String> COLUMNS = List.of("what", "period", "value", "unit", "years");

    private ClimateTable() {}

    /**
     * Writes a summary.
     *
     * @param summary what to write
     * @param out where to
     */
    public static void write(ClimateSummary summary, Appendable out) throws IOException {
        out.append(String.join(",", COLUMNS)).append('\n');
        for (ClimateNormal month : summary.months()) {
            write(month, out);
        }
        write(summary.season(), out);
        for (FrostDate date : summary.lastSpringFrost()) {
            line("last_spring_frost", date.sharePct() + " pct", date.dayOfYear(), "day", summary.frostYears(), out);
        }
        for (FrostDate date : summary.firstAutumnFrost()) {
            line("first_autumn_frost", date.sharePct() + " pct", date.dayOfYear(), "day", summary.frostYears(), out);
        }
        line("growing_season", "mean", summary.growingSeasonDays(), "days", summary.frostYears(), out);
        MonthlyRain rain = summary.rain();
        for (int i = 0; i < rain.months(); i++) {
            YearMonth month = rain.month(i);
            line(
                    "precipitation_index_3_months",
                    month.toString(),
                    summary.precipitationIndex().at(month),
                    "-",
                    0,
                    out);
        }
    }

    private static void write(ClimateNormal normal, Appendable out) throws IOException {
        line("tmin", normal.name(), normal.tminC(), "degC", normal.years(), out);
        line("tmax", normal.name(), normal.tmaxC(), "degC", normal.years(), out);
        line("rain", normal.name(), normal.rainMm(), "mm", normal.years(), out);
        line("solar", normal.name(), normal.solarMjM2(), "MJ/m2/d", normal.years(), out);
        line("et0", normal.name(), normal.et0Mm(), "mm", normal.years(), out);
        line("measured_rain", normal.name(), normal.measuredRainPct(), "pct", normal.years(), out);
    }

    private static void line(String what, String period, double value, String unit, int years, Appendable out)
            throws IOException {
        String shown = Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.2f", value);
        out.append(what)
                .append(',')
                .append(period)
                .append(',')
                .append(shown)
                .append(',')
                .append(unit);
        out.append(',').append(years == 0 ? "" : Integer.toString(years)).append('\n');
    }
}
