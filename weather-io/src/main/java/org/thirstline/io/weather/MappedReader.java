package org.thirstline.io.weather;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.io.error.NearestName;
import org.thirstline.model.error.InputException;

/** A table of the user's own, read as the study says. Lines in front of the header are passed over. Confined to one read. */
final class MappedReader implements FormatReader {

    private static final int LONGEST_PREFACE = 1000;

    private record Column(RawVariable variable, int index, DailyUnit unit) {}

    private final TableMapping mapping;
    private final double[] missingNumbers;
    private final @Nullable DateTimeFormatter dateForm;

    MappedReader(TableMapping mapping) {
        this.mapping = mapping;
        this.missingNumbers = mapping.missing().stream()
                .mapToDouble(text -> Numbers.parse(text, 0, text.length()))
                .filter(value -> value != Numbers.NO_NUMBER)
                .toArray();
        MappedColumn date = mapping.find(MappedColumn.DATE);
        this.dateForm = date == null || date.pattern() == null ? null : form(date.pattern());
    }

    /** Strict, so that 31 February is an error; a pattern's year of the era becomes the plain year. */
    private static DateTimeFormatter form(String pattern) {
        try {
            return new DateTimeFormatterBuilder()
                    .parseCaseInsensitive()
                    .appendPattern(pattern.replace('y', 'u'))
                    .toFormatter(Locale.ENGLISH)
                    .withResolverStyle(ResolverStyle.STRICT);
        } catch (IllegalArgumentException e) {
            throw new InputException(
                    InputError.LINE_MALFORMED, pattern, "a date pattern of y, M, d and H, m, s, e.g. dd.MM.yyyy");
        }
    }

    @Override
    public boolean recognises(List<String> head) {
        return true;
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Table table = mapping.isHeaderless() ? withoutHeader(lines) : underHeader(lines);
        List<Column> columns = columns(table, out);
        MappedColumn station = mapping.find(MappedColumn.STATION);
        Stations stations = new Stations(options.station());
        while (table.next()) {
            if (station == null || stations.accepts(table.text(index(table, station)))) {
                readDay(table, columns, out);
            }
        }
        if (station != null) {
            stations.finish();
            out.setStation(stations.station());
            out.setSite(out.site().withName(stations.station()));
        }
    }

    private void readDay(Table table, List<Column> columns, RawWeatherBuilder out) {
        out.beginDay(date(table));
        for (Column column : columns) {
            double value = table.number(column.index());
            out.set(
                    column.variable(),
                    isMissing(value) ? Double.NaN : column.unit().convert(value));
        }
    }

    private Table withoutHeader(LineReader lines) {
        List<String> names = new ArrayList<>();
        int most = mapping.columns().stream()
                .mapToInt(column -> Integer.parseInt(column.name()))
                .max()
                .orElse(0);
        for (int i = 1; i <= most; i++) {
            names.add(Integer.toString(i));
        }
        String first = lines.head(1).stream().findFirst().orElse("");
        Character stated = mapping.separator();
        char separator = stated == null ? Fields.separatorOf(first) : stated;
        return Table.headerless(names, lines, new Fields(separator, mapping.decimalComma()))
                .missing(mapping.missing());
    }

    private Table underHeader(LineReader lines) {
        List<String> best = List.of();
        int bestFound = -1;
        for (int i = 0; i < LONGEST_PREFACE; i++) {
            String line = lines.next();
            if (line == null) {
                break;
            }
            Character stated = mapping.separator();
            char separator = stated == null ? Fields.separatorOf(line) : stated;
            Table table = Table.under(line, lines, new Fields(separator, mapping.decimalComma()));
            int found = (int) mapping.columns().stream()
                    .filter(column -> table.names().contains(column.lowerName()))
                    .count();
            if (found == mapping.columns().size()) {
                return table.missing(mapping.missing());
            }
            if (found > bestFound) {
                bestFound = found;
                best = table.names();
            }
        }
        throw noHeader(best);
    }

    private InputException noHeader(List<String> names) {
        MappedColumn lacking = mapping.columns().stream()
                .filter(column -> !names.contains(column.lowerName()))
                .findFirst()
                .orElseThrow();
        String near = NearestName.within(lacking.lowerName(), names, 2);
        String hint = near == null
                ? ". Expected: " + lacking.name()
                : ". Is '" + near + "' meant to be " + lacking.name() + "?";
        return new InputException(InputError.COLUMN_MISSING, lacking.gives(), String.join(", ", names), hint);
    }

    private List<Column> columns(Table table, RawWeatherBuilder out) {
        List<Column> columns = new ArrayList<>();
        for (MappedColumn column : mapping.columns()) {
            RawVariable variable = column.variable();
            if (variable != null) {
                columns.add(new Column(variable, index(table, column), column.dailyUnit()));
                out.note(variable, "column " + column.name() + " in " + column.unit());
                Double heightM = column.heightM();
                if (variable == RawVariable.WIND && heightM != null) {
                    out.setWindHeightM(heightM);
                }
            }
        }
        return columns;
    }

    private static int index(Table table, MappedColumn column) {
        return table.require(column.gives(), column.lowerName());
    }

    private boolean isMissing(double value) {
        for (double missing : missingNumbers) {
            if (value == missing) {
                return true;
            }
        }
        return false;
    }

    private long date(Table table) {
        MappedColumn date = mapping.find(MappedColumn.DATE);
        if (date != null) {
            String text = table.text(index(table, date));
            return dateForm == null ? Numbers.isoDay(text) : parsed(text, dateForm, date.pattern());
        }
        int year = part(table, MappedColumn.YEAR);
        if (mapping.find(MappedColumn.DAY_OF_YEAR) != null) {
            int dayOfYear = part(table, MappedColumn.DAY_OF_YEAR);
            return Numbers.dayOfYear(year + " " + dayOfYear, year, dayOfYear);
        }
        int month = part(table, MappedColumn.MONTH);
        int day = part(table, MappedColumn.DAY);
        return Numbers.date(year + "-" + month + "-" + day, year, month, day);
    }

    private static long parsed(String text, DateTimeFormatter form, @Nullable String pattern) {
        try {
            LocalDate date = LocalDate.from(form.parse(text));
            return Numbers.date(text, date.getYear(), date.getMonthValue(), date.getDayOfMonth());
        } catch (DateTimeException e) {
            throw new InputException(InputError.BAD_DATE, text, "a day that exists, as " + pattern);
        }
    }

    private int part(Table table, String what) {
        MappedColumn column = mapping.find(what);
        if (column == null) {
            throw new IllegalStateException(what);
        }
        return table.whole(index(table, column));
    }
}
