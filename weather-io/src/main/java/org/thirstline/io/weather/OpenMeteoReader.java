package org.thirstline.io.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * Open-Meteo daily: the place, a blank line, then one or more tables with units in their headers. Only the daily table is read. The
 * daily maximum of the wind is no mean and is not used.
 */
final class OpenMeteoReader implements FormatReader {

    private static final int SECONDS_PER_DAY = 86_400;
    private static final double LATEST_SECOND = 1.0e11;
    static final double WIND_HEIGHT_M = 10.0;

    /** A variable and the columns that give it, the better one first. */
    record Wanted(RawVariable variable, List<String> names) {}

    static final List<Wanted> WANTED = List.of(
            new Wanted(RawVariable.TMIN, List.of("temperature_2m_min")),
            new Wanted(RawVariable.TMAX, List.of("temperature_2m_max")),
            new Wanted(RawVariable.TMEAN, List.of("temperature_2m_mean")),
            new Wanted(RawVariable.RAIN, List.of("precipitation_sum")),
            new Wanted(RawVariable.SOLAR, List.of("shortwave_radiation_sum")),
            new Wanted(RawVariable.SUNSHINE, List.of("sunshine_duration")),
            new Wanted(RawVariable.WIND, List.of("wind_speed_10m_mean", "windspeed_10m_mean")),
            new Wanted(RawVariable.DEW_POINT, List.of("dew_point_2m_mean", "dewpoint_2m_mean")),
            new Wanted(RawVariable.HUMIDITY_MEAN, List.of("relative_humidity_2m_mean")),
            new Wanted(RawVariable.HUMIDITY_MIN, List.of("relative_humidity_2m_min")),
            new Wanted(RawVariable.HUMIDITY_MAX, List.of("relative_humidity_2m_max")));

    private static final Map<String, DailyUnit> UNITS = Map.ofEntries(
            Map.entry("°c", DailyUnit.SAME),
            Map.entry("°f", DailyUnit.FAHRENHEIT),
            Map.entry("mm", DailyUnit.SAME),
            Map.entry("inch", DailyUnit.INCH),
            Map.entry("m/s", DailyUnit.SAME),
            Map.entry("km/h", DailyUnit.KM_PER_HOUR),
            Map.entry("mp/h", DailyUnit.MILE_PER_HOUR),
            Map.entry("mph", DailyUnit.MILE_PER_HOUR),
            Map.entry("kn", DailyUnit.KNOT),
            Map.entry("mj/m²", DailyUnit.SAME),
            Map.entry("s", DailyUnit.SECONDS),
            Map.entry("%", DailyUnit.SAME));

    private record Column(RawVariable variable, int index, DailyUnit unit) {}

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(OpenMeteoReader::isPlaceHeader)
                || head.stream().anyMatch(OpenMeteoReader::isDaily);
    }

    private static boolean isPlaceHeader(String line) {
        return line.startsWith("latitude,longitude,elevation,utc_offset_seconds");
    }

    private static boolean isDaily(String line) {
        return line.startsWith("time,") && line.contains("temperature_2m_max");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String line = lines.nextFilled();
        long offsetSeconds = 0;
        while (line != null && !isDaily(line)) {
            if (isPlaceHeader(line)) {
                offsetSeconds = readPlace(Table.under(line, lines), out);
            }
            line = lines.nextFilled();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH,
                    WeatherFormat.OPEN_METEO.description(),
                    "no table with temperature_2m_max; daily values are needed, not hourly ones");
        }
        readDaily(Table.under(line, lines), offsetSeconds, out);
    }

    /** Returns the offset of local time from UTC [s]. */
    private static long readPlace(Table table, RawWeatherBuilder out) {
        if (!table.nextInBlock()) {
            return 0;
        }
        out.setSite(new SiteInfo(
                null,
                table.needed(table.find("latitude")),
                table.needed(table.find("longitude")),
                table.needed(table.find("elevation"))));
        long offsetSeconds = table.whole(table.find("utc_offset_seconds"));
        if (table.nextInBlock()) {
            throw new InputException(InputError.STATION_NEEDED, "several places; download one place a file");
        }
        return offsetSeconds;
    }

    private static void readDaily(Table table, long offsetSeconds, RawWeatherBuilder out) {
        table.require(RawVariable.TMIN.words(), nameOf(table, "temperature_2m_min"));
        List<Column> columns = columns(table, out);
        int time = table.require("the date", "time");
        out.setWindHeightM(WIND_HEIGHT_M);
        while (table.nextInBlock()) {
            out.beginDay(date(table.text(time), offsetSeconds));
            for (Column column : columns) {
                out.set(column.variable(), column.unit().convert(table.number(column.index())));
            }
        }
    }

    /** Returns the full name, unit included, of the column that starts with a word; the word itself if there is none. */
    private static String nameOf(Table table, String word) {
        int index = table.findWord(word);
        return index == Table.ABSENT ? word : table.names().get(index);
    }

    private static List<Column> columns(Table table, RawWeatherBuilder out) {
        List<Column> columns = new ArrayList<>();
        for (Wanted wanted : WANTED) {
            int index = wanted.names().stream()
                    .mapToInt(table::findWord)
                    .filter(i -> i != Table.ABSENT)
                    .findFirst()
                    .orElse(Table.ABSENT);
            if (index != Table.ABSENT) {
                String name = table.names().get(index);
                columns.add(new Column(wanted.variable(), index, unit(name, wanted.variable())));
                out.note(wanted.variable(), "column " + name);
            }
        }
        return columns;
    }

    static DailyUnit unit(String name, RawVariable variable) {
        int open = name.indexOf('(');
        int close = name.indexOf(')', open + 1);
        String text =
                open < 0 || close < 0 ? "" : name.substring(open + 1, close).toLowerCase(Locale.ROOT);
        DailyUnit unit = UNITS.get(text);
        if (unit == null) {
            throw new InputException(
                    InputError.UNIT_NOT_UNDERSTOOD,
                    name,
                    variable.words(),
                    "°C, °F, mm, inch, m/s, km/h, mp/h, kn, MJ/m², s, % in parentheses",
                    variable.column());
        }
        return unit;
    }

    /** ISO date, with or without a time of day; or seconds since 1970 of about midnight local time. */
    static long date(String text, long offsetSeconds) {
        if (text.indexOf('-') > 0) {
            return Numbers.isoDate(text.length() > 10 && text.charAt(10) == 'T' ? text.substring(0, 10) : text);
        }
        double seconds = Numbers.parse(text, 0, text.length());
        if (seconds == Numbers.NO_NUMBER || Math.abs(seconds) > LATEST_SECOND) {
            throw new InputException(InputError.BAD_DATE, text, "year-month-day, e.g. 2012-07-31");
        }
        long day = Math.floorDiv((long) seconds + offsetSeconds + SECONDS_PER_DAY / 4, SECONDS_PER_DAY);
        LocalDate date = LocalDate.ofEpochDay(day);
        return Numbers.date(text, date.getYear(), date.getMonthValue(), date.getDayOfMonth());
    }
}
