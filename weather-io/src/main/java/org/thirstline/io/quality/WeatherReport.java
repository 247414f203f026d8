package org.thirstline.io.quality;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.RadiationSkill;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.SourceShare;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherRecord;

/** Gaps, estimated and suspect values by variable and year: the rows of the weather report. */
public final class WeatherReport {

    /** File name inside the result folder. */
    public static final String FILE = "weather-report.csv";

    /** The columns, in order. */
    public static final List<String> COLUMNS =
            List.of("variable", "year", "kind", "count", "first_date", "last_date", "example_value", "action");

    /**
     * Days of one variable and year with the same matter.
     *
     * @param variable column name, or {@code all} for whole days
     * @param year calendar year
     * @param kind what is the matter
     * @param count number of days
     * @param first first day
     * @param last last day
     * @param exampleValue the first value found, empty where there was none
     * @param action what was done
     */
    public record Row(
            String variable,
            int year,
            IssueKind kind,
            int count,
            LocalDate first,
            LocalDate last,
            String exampleValue,
            String action) {

        private Row and(Row other) {
            return new Row(
                    variable,
                    year,
                    kind,
                    count + other.count,
                    first.isBefore(other.first) ? first : other.first,
                    last.isAfter(other.last) ? last : other.last,
                    exampleValue.isEmpty() ? other.exampleValue : exampleValue,
                    action);
        }
    }

    private record Key(int variable, int year, IssueKind kind, String action) implements Comparable<Key> {
        private static final Comparator<Key> ORDER = Comparator.comparingInt(Key::variable)
                .thenComparingInt(Key::year)
                .thenComparing(Key::kind)
                .thenComparing(Key::action);

        @Override
        public int compareTo(Key other) {
            return ORDER.compare(this, other);
        }
    }

    private WeatherReport() {}

    /** Returns what the table holds. */
    public static TableInfo info() {
        return new TableInfo(
                FILE,
                "Gaps, estimated and suspect values by variable and year",
                List.of(
                        ColumnInfo.text("variable", "Column of weather.csv, or all for whole days"),
                        ColumnInfo.integer("year", "yr", "Calendar year"),
                        ColumnInfo.text("kind", "What is the matter"),
                        ColumnInfo.integer("count", "d", "Days"),
                        ColumnInfo.date("first_date", "First of them in that year"),
                        ColumnInfo.date("last_date", "Last of them in that year"),
                        ColumnInfo.text("example_value", "First value found, in the unit of the column"),
                        ColumnInfo.text("action", "Why, and what was done")));
    }

    /** Returns the rows of a record with all years together, by variable and kind; the year is the first. */
    public static List<Row> totals(WeatherRecord record) {
        Map<Key, Row> rows = new LinkedHashMap<>();
        List<String> variables =
                Arrays.stream(RawVariable.values()).map(RawVariable::column).toList();
        for (Row row : rows(record)) {
            rows.merge(new Key(variables.indexOf(row.variable()), 0, row.kind(), row.action()), row, Row::and);
        }
        return List.copyOf(rows.values());
    }

    /** Returns the rows of a record, by variable, year and kind. */
    public static List<Row> rows(WeatherRecord record) {
        Map<Key, Row> rows = new TreeMap<>();
        for (WeatherIssue issue : record.issues()) {
            for (int year = issue.first().getYear(); year <= issue.last().getYear(); year++) {
                Row row = row(issue, year);
                RawVariable variable = issue.variable();
                int order = variable == null ? -1 : variable.ordinal();
                rows.merge(new Key(order, year, issue.kind(), issue.action()), row, Row::and);
            }
        }
        List<Row> all = new ArrayList<>(rows.values());
        record.shares().forEach(share -> all.add(row(share)));
        RadiationSkill skill = record.radiation();
        if (skill != null) {
            all.add(row(skill, record));
        }
        return all;
    }

    private static Row row(SourceShare share) {
        return new Row(
                share.variable().column(),
                share.year(),
                IssueKind.SOURCE,
                share.days(),
                LocalDate.ofEpochDay(share.firstEpochDay()),
                LocalDate.ofEpochDay(share.lastEpochDay()),
                "",
                "from " + share.source());
    }

    /** How good estimates are where measurements exist too; the year is that of the first day. */
    private static Row row(RadiationSkill skill, WeatherRecord record) {
        String action = String.format(
                Locale.ROOT,
                "from the temperature range against measured: coefficient %.4f%s, root mean square error %.2f, bias %.2f"
                        + " MJ/m2",
                skill.coefficient(),
                skill.fitted() ? " fitted" : "",
                skill.rootMeanSquareError(),
                skill.bias());
        LocalDate first = record.series().start();
        return new Row(
                RawVariable.SOLAR.column(),
                first.getYear(),
                IssueKind.ESTIMATED,
                skill.days(),
                first,
                record.series().end(),
                "",
                action);
    }

    private static Row row(WeatherIssue issue, int year) {
        LocalDate yearStart = LocalDate.of(year, 1, 1);
        LocalDate yearEnd = LocalDate.of(year, 12, 31);
        LocalDate first = issue.first().isBefore(yearStart) ? yearStart : issue.first();
        LocalDate last = issue.last().isAfter(yearEnd) ? yearEnd : issue.last();
        int count = (int) (last.toEpochDay() - first.toEpochDay()) + 1;
        return new Row(issue.variableName(), year, issue.kind(), count, first, last, issue.found(), issue.action());
    }

    /**
     * Writes the rows as CSV.
     *
     * @param record whose rows
     * @param out where to
     */
    public static void write(WeatherRecord record, Appendable out) throws IOException {
        out.append(String.join(",", COLUMNS)).append('\n');
        for (Row row : rows(record)) {
            out.append(row.variable()).append(',');
            out.append(Integer.toString(row.year())).append(',');
            out.append(row.kind().text()).append(',');
            out.append(Integer.toString(row.count())).append(',');
            out.append(row.first().toString()).append(',');
            out.append(row.last().toString()).append(',');
            out.append(row.exampleValue()).append(',');
            out.append(quoted(row.action())).append('\n');
        }
    }

    private static String quoted(String text) {
        boolean plain = text.indexOf(',') < 0 && text.indexOf('"') < 0;
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
