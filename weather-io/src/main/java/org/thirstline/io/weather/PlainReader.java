package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.io.error.NearestName;
import org.thirstline.model.error.InputException;

/** Our own table: one line a day, quantity and unit in the column name, comment lines in front. */
final class PlainReader implements FormatReader {

    private static final String DATE = "date";
    private static final String FLAGS = "flags";

    /** What our own output carries beside its inputs; derived anew, never read. */
    private static final Set<String> DERIVED = Set.of("day_length_h", "extraterrestrial_mj_m2", "et0_mm", FLAGS, DATE);

    private static final String DATE_FORM = "year-month-day, e.g. 2012-07-31";

    @Override
    public boolean recognises(List<String> head) {
        String header = head.stream()
                .filter(line -> !line.isBlank() && !line.startsWith("#"))
                .findFirst()
                .orElse("");
        Fields fields = new Fields(Fields.separatorOf(header));
        fields.split(header);
        for (int i = 0; i < fields.count(); i++) {
            if (fields.is(i, DATE)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Table table = Table.under(header(lines, out), lines);
        int date = table.require("the date", DATE);
        int flags = table.find(FLAGS);
        List<Integer> indices = new ArrayList<>();
        List<PlainColumn> columns = new ArrayList<>();
        columns(table, indices, columns, out);
        while (table.next()) {
            out.beginDay(date(table.text(date)));
            for (int i = 0; i < columns.size(); i++) {
                PlainColumn column = columns.get(i);
                out.set(column.variable(), column.unit().convert(table.number(indices.get(i))));
            }
            String flag = table.textOrNull(flags);
            if (flag != null) {
                Flags.read(flag, out);
            }
        }
    }

    private static long date(String text) {
        if (text.isEmpty()) {
            throw new InputException(InputError.BAD_DATE, text, DATE_FORM);
        }
        return Numbers.isoDate(text);
    }

    private static String header(LineReader lines, RawWeatherBuilder out) {
        String line = lines.nextFilled();
        while (line != null && line.startsWith("#")) {
            comment(line.substring(1).trim(), out);
            line = lines.nextFilled();
        }
        if (line == null) {
            throw new InputException(InputError.COLUMN_MISSING, "the date", "none", "; the file has comments only");
        }
        return line;
    }

    private static void comment(String text, RawWeatherBuilder out) {
        int colon = text.indexOf(':');
        if (colon < 0) {
            return;
        }
        String key = text.substring(0, colon).trim();
        String value = text.substring(colon + 1).trim();
        SiteInfo site = out.site();
        switch (key) {
            case "name" -> out.setSite(site.withName(value));
            case "latitude_deg" -> out.setSite(site.withPosition(number(key, value), site.longitudeDeg()));
            case "longitude_deg" -> out.setSite(site.withPosition(site.latitudeDeg(), number(key, value)));
            case "elevation_m" -> out.setSite(site.withElevation(number(key, value)));
            case "invented" -> out.setInvented(yes(value));
            default -> {
                // any other comment is for people
            }
        }
    }

    private static double number(String key, String value) {
        double number = Numbers.parse(value, 0, value.length());
        if (number == Numbers.NO_NUMBER) {
            throw new InputException(InputError.NOT_A_NUMBER, key, value);
        }
        return number;
    }

    private static boolean yes(String value) {
        if (!value.equals("true") && !value.equals("false")) {
            throw new InputException(InputError.LINE_MALFORMED, value, "'invented: true' or 'invented: false'");
        }
        return value.equals("true");
    }

    private static void columns(Table table, List<Integer> indices, List<PlainColumn> columns, RawWeatherBuilder out) {
        Map<RawVariable, String> found = new EnumMap<>(RawVariable.class);
        for (int i = 0; i < table.names().size(); i++) {
            String name = table.names().get(i);
            PlainColumn column = PlainColumn.of(name);
            if (column == null) {
                refuseSlip(name, table.names());
                continue;
            }
            String other = found.put(column.variable(), name);
            if (other != null) {
                throw new InputException(
                        InputError.COLUMN_TWICE, column.variable().words(), other, name);
            }
            if (column.variable() == RawVariable.WIND) {
                out.setWindHeightM(column.heightM());
            }
            out.note(column.variable(), "column " + name);
            indices.add(i);
            columns.add(column);
        }
        requireColumn(RawVariable.TMIN, found, table);
        requireColumn(RawVariable.TMAX, found, table);
    }

    private static void requireColumn(RawVariable variable, Map<RawVariable, String> found, Table table) {
        if (!found.containsKey(variable)) {
            table.require(variable.words(), PlainColumn.names(variable).toArray(String[]::new));
        }
    }

    /** A column that was meant to be ours must not be passed over in silence: its variable would then be estimated. */
    private static void refuseSlip(String name, List<String> all) {
        if (DERIVED.contains(name) || isRemark(name)) {
            return;
        }
        RawVariable quantity = PlainColumn.quantity(name);
        if (quantity != null) {
            List<String> names = PlainColumn.names(quantity);
            String near = NearestName.within(name, names, 3);
            throw new InputException(
                    InputError.UNIT_NOT_UNDERSTOOD,
                    name,
                    quantity.words(),
                    String.join(", ", names),
                    near == null ? quantity.column() : near);
        }
        for (RawVariable variable : RawVariable.values()) {
            List<String> names = PlainColumn.names(variable);
            String near = nearest(name, names);
            if (near != null && !all.contains(near)) {
                throw new InputException(InputError.COLUMN_UNKNOWN, name, near, String.join(", ", names));
            }
        }
    }

    private static @Nullable String nearest(String name, List<String> names) {
        return name.length() < 5 ? null : NearestName.within(name, names, 2);
    }

    private static boolean isRemark(String name) {
        return name.endsWith("_flag")
                || name.endsWith("_quality")
                || name.endsWith("_source")
                || name.contains("direction")
                || name.contains("gust");
    }
}
