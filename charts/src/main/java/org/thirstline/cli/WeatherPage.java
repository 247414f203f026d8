package org.thirstline.cli;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.thirstline.charts.Numbers;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.report.ReportModel;
import org.thirstline.charts.report.ReportModel.Section;
import org.thirstline.charts.report.ReportTable;
import org.thirstline.charts.report.ReportTable.Column;
import org.thirstline.io.climate.ClimateNormal;
import org.thirstline.io.climate.ClimateVariable;
import org.thirstline.io.quality.WeatherReport;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.WeatherVariable;

/** What the report of a weather record says. Confined to one run. */
final class WeatherPage {

    private static final Set<IssueKind> FILLED =
            EnumSet.of(IssueKind.ESTIMATED, IssueKind.INTERPOLATED, IssueKind.CLIMATOLOGY, IssueKind.SECOND_STATION);

    private final WeatherRecord record;
    private final WeatherClimate climate;
    private final UnitSystem units;

    private WeatherPage(WeatherRecord record, WeatherClimate climate) {
        this.record = record;
        this.climate = climate;
        this.units = climate.slide().units();
    }

    static ReportModel of(WeatherRecord record, WeatherClimate climate) {
        return new WeatherPage(record, climate).model();
    }

    private ReportModel model() {
        return new ReportModel(
                "Weather of " + record.site().name(),
                WeatherWords.place(record) + ".",
                record.invented(),
                findings(),
                List.of(
                        new Section("Where each value comes from", List.of(), List.of(), List.of(origins())),
                        new Section("What was doubted", doubtText(), List.of(), doubtTables()),
                        new Section(
                                "Climate at a glance",
                                List.of(),
                                ChartFiles.pages(climate.recipes(), climate.slide()),
                                List.of(normals()))),
                assumptions(),
                WeatherWords.estimates(record),
                List.of(table("How gaps were filled, and from which source", rows(FILLED, true))),
                List.of(),
                List.of(
                        "Estimated and filled values are no measurements. Before advice or a publication rests on a year, look at what is"
                                + " filled in it, in weather-report.csv.",
                        "Terms of use of the provider of the weather apply to what is derived from it."),
                "Thirstline " + Version.program()
                        + "; run.json beside this file lists every input with its checksum and every option");
    }

    private List<String> findings() {
        List<String> findings = new ArrayList<>();
        String water = WeatherWords.water(record);
        findings.add(Character.toUpperCase(water.charAt(0)) + water.substring(1) + ".");
        findings.add(WeatherWords.doubts(record));
        findings.addAll(climate.findings());
        findings.addAll(WeatherWords.radiation(record));
        return findings;
    }

    private ReportTable origins() {
        List<Column> columns = new ArrayList<>(List.of(Column.text("variable"), Column.text("in the files")));
        for (Origin origin : Origin.values()) {
            columns.add(Column.number(origin.name().toLowerCase(Locale.ROOT).replace('_', ' '), "days"));
        }
        List<List<String>> rows = new ArrayList<>();
        for (WeatherVariable variable : WeatherVariable.values()) {
            boolean none = variable == WeatherVariable.RAIN && !record.rainKnown();
            List<String> row = new ArrayList<>();
            row.add(variable.meaning());
            row.add(none ? "none" : record.notes().getOrDefault(RawVariable.of(variable), "-"));
            for (Origin origin : Origin.values()) {
                row.add(none ? "-" : String.format(Locale.ROOT, "%,d", record.count(variable, origin)));
            }
            rows.add(row);
        }
        return new ReportTable("Days by variable", columns, rows);
    }

    private List<String> doubtText() {
        return List.of(
                WeatherWords.doubts(record)
                        + " Limits and their sources are in the documentation of weather formats; years are in weather-report.csv.");
    }

    private List<ReportTable> doubtTables() {
        List<List<String>> rows = rows(FILLED, false);
        return rows.isEmpty() ? List.of() : List.of(table("All years together", rows));
    }

    private List<List<String>> rows(Set<IssueKind> kinds, boolean inside) {
        return WeatherReport.totals(record).stream()
                .filter(row -> row.kind() != IssueKind.ASSUMED)
                .filter(row -> (kinds.contains(row.kind()) || row.kind() == IssueKind.SOURCE) == inside)
                .map(row -> List.of(
                        row.variable(),
                        row.kind().text(),
                        String.format(Locale.ROOT, "%,d", row.count()),
                        row.first().toString(),
                        row.last().toString(),
                        row.exampleValue(),
                        row.action()))
                .toList();
    }

    private static ReportTable table(String caption, List<List<String>> rows) {
        List<Column> columns = List.of(
                Column.text("variable"),
                Column.text("what"),
                Column.number("days", ""),
                Column.text("first"),
                Column.text("last"),
                Column.text("example"),
                Column.text("why, and what was done"));
        return new ReportTable(caption, columns, rows);
    }

    private ReportTable normals() {
        List<Column> columns = new ArrayList<>(List.of(Column.text("month")));
        columns.add(Column.number("minimum", units.temperatureUnit()));
        columns.add(Column.number("maximum", units.temperatureUnit()));
        columns.add(Column.number("rain", units.waterUnit()));
        columns.add(Column.number("ET0", units.waterUnit()));
        columns.add(Column.number("radiation", "MJ/m2 a day"));
        columns.add(Column.number("years", ""));
        columns.add(Column.number("years of rain", ""));
        columns.add(Column.number("rain measured", "%"));
        List<ClimateNormal> normals = new ArrayList<>(climate.summary().months());
        normals.add(climate.summary().season());
        String season = climate.summary().southern() ? "October to March" : "April to September";
        List<List<String>> rows = normals.stream()
                .map(normal -> row(normal, normal.name().equals("season") ? season : month(normal)))
                .toList();
        return new ReportTable(
                "Normals of " + climate.summary().firstYear() + " to "
                        + climate.summary().lastYear(),
                columns,
                rows);
    }

    private static String month(ClimateNormal normal) {
        return Month.of(Integer.parseInt(normal.name())).getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private List<String> row(ClimateNormal normal, String name) {
        double rain = normal.value(ClimateVariable.RAIN);
        double et0 = normal.value(ClimateVariable.ET0);
        return Arrays.asList(
                name,
                number(units.temperature(normal.value(ClimateVariable.TMIN)), 1),
                number(units.temperature(normal.value(ClimateVariable.TMAX)), 1),
                number(units.water(rain), units == UnitSystem.SI ? 0 : 1),
                number(units.water(et0), units == UnitSystem.SI ? 0 : 1),
                number(normal.value(ClimateVariable.SOLAR), 1),
                Integer.toString(normal.years(ClimateVariable.ET0)),
                Integer.toString(normal.years(ClimateVariable.RAIN)),
                number(normal.of(ClimateVariable.RAIN).measuredPct(), 1));
    }

    private static String number(double value, int decimals) {
        return Numbers.fixed(value, decimals);
    }

    private List<String> assumptions() {
        List<String> assumptions = new ArrayList<>();
        assumptions.add("Days are taken as the provider defines them; nothing is moved to another day.");
        assumptions.add(
                "A month counts towards a normal if the record holds all of it and at most five of its days were filled;"
                        + " rain of a month towards the precipitation index likewise.");
        assumptions.add("Frost is a minimum temperature below 0 °C.");
        record.issues().stream()
                .filter(issue -> issue.kind() == IssueKind.ASSUMED)
                .map(issue -> issue.variableName() + ": " + issue.action() + ".")
                .distinct()
                .forEach(assumptions::add);
        return assumptions;
    }
}
