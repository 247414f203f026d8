package org.thirstline.io.climate;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.CsvTable;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.StandardizedPrecipitation;

/** {@code climate.csv}: a climate summary, one value a line. */
public final class ClimateTable {

    /** File name inside the result folder. */
    public static final String FILE = "climate.csv";

    private static final DateTimeFormatter MONTH_DAY = DateTimeFormatter.ofPattern("MM-dd", Locale.ROOT);
    private static final int DECIMALS = 2;
    private static final int SHARE_DECIMALS = 1;

    private final ClimateSummary summary;
    private final CsvTable table = new CsvTable();

    private ClimateTable(ClimateSummary summary) {
        this.summary = summary;
    }

    /** Returns what the table holds. */
    public static TableInfo info() {
        return new TableInfo(
                FILE,
                "Climate at a glance, one value a line",
                List.of(
                        ColumnInfo.text("what", "What the value is"),
                        ColumnInfo.text(
                                "period",
                                "Month, the growing season, a year, a month of a year, or a share of years in percent"),
                        ColumnInfo.number("value", "", "The value"),
                        ColumnInfo.text(
                                "unit", "Its unit; days of the year count from 1 January, in the south from 1 July"),
                        ColumnInfo.text("date", "Month and day of a day of the year"),
                        ColumnInfo.integer("first_year", "yr", "First year asked for"),
                        ColumnInfo.integer("last_year", "yr", "Last year asked for"),
                        ColumnInfo.integer("years", "yr", "Years that count towards the value"),
                        ColumnInfo.number(
                                "measured_pct", "%", "Share of the days behind a normal on which it was measured")));
    }

    /** Returns the table of a summary. */
    public static CsvTable of(ClimateSummary summary) {
        return new ClimateTable(summary).table();
    }

    private CsvTable table() {
        info().header(table);
        summary.months().forEach(this::normal);
        normal(summary.season());
        frosts("last_spring_frost", summary.lastSpringFrost());
        frosts("first_autumn_frost", summary.firstAutumnFrost());
        mean("frost_free_season", summary.meanFrostFreeDays(), summary.yearsWithBothFrosts());
        mean("growing_season", summary.meanGrowingDays(), summary.years().size());
        for (YearSeason year : summary.years()) {
            String name = Integer.toString(year.year());
            row("last_spring_frost", name, year.lastFrostDay(), "day of year", date(year.lastFrostDay()));
            row("first_autumn_frost", name, year.firstFrostDay(), "day of year", date(year.firstFrostDay()));
            row("frost_free_season", name, year.frostFreeDays(), "days", "");
            row("growing_season", name, year.growingDays(), "days", "");
        }
        summary.indices().forEach(this::index);
        return table;
    }

    private void normal(ClimateNormal normal) {
        for (ClimateVariable variable : ClimateVariable.values()) {
            ClimateNormal.Value value = normal.of(variable);
            line(variable.word(), normal.name(), value.value(), variable.unit(), "");
            period(value.years());
            table.number(value.measuredPct(), SHARE_DECIMALS).endRow();
        }
    }

    private void frosts(String what, List<FrostDate> dates) {
        for (FrostDate frost : dates) {
            line(what, frost.sharePct() + " pct of years", frost.day(), "day of year", date(frost.day()));
            period(summary.years().size());
            table.text("").endRow();
        }
    }

    private void mean(String what, double days, int years) {
        line(what, "mean", days, "days", "");
        period(years);
        table.text("").endRow();
    }

    private void index(StandardizedPrecipitation index) {
        MonthlyRain rain = summary.rain();
        for (int month = 0; month < rain.months(); month++) {
            row(
                    "precipitation_index_" + index.scaleMonths() + "_months",
                    rain.month(month).toString(),
                    index.at(rain.month(month)),
                    "1",
                    "");
        }
    }

    private String date(double day) {
        return Double.isNaN(day) ? "" : MONTH_DAY.format(YearSeason.date(day, summary.southern()));
    }

    private void period(int years) {
        table.whole(summary.firstYear()).whole(summary.lastYear()).whole(years);
    }

    private void row(String what, String period, double value, String unit, String date) {
        line(what, period, value, unit, date);
        table.text("").text("").text("").text("").endRow();
    }

    private void line(String what, String period, double value, String unit, String date) {
        table.text(what).text(period).number(value, DECIMALS).text(unit).text(date);
    }
}
