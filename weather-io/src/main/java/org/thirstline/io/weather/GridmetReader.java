package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * gridMET at a point, exported as CSV. Its own units are K and W/m²; many exports have turned them into °C and MJ/m². The unit is taken
 * from the header where it stands there, else told by the size of the values, and said. Wind is at 10 m.
 */
final class GridmetReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 10.0;

    /** No place has a mean maximum of 150 °C, nor of 150 K. */
    private static final double KELVIN_FROM = 150.0;

    /** No place has a mean of 40 MJ m⁻² d⁻¹; as W/m² only a polar winter has less. */
    private static final double WATT_FROM = 40.0;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(GridmetReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String lower = line.toLowerCase(Locale.ROOT);
        return !lower.startsWith("#")
                && lower.contains("tmmn")
                && lower.contains("tmmx")
                && Fields.separatorOf(line) != Fields.BLANKS;
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        while (header != null && !isHeader(header)) {
            header = lines.nextFilled();
        }
        if (header == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.GRIDMET.description(), "no columns tmmn and tmmx");
        }
        Table table = Table.under(header, lines);
        TableColumns columns = columns(table);
        out.setWindHeightM(WIND_HEIGHT_M);
        int date = table.find("timestamp", "date", "yyyy-mm-dd", "time", "day");
        int compact = date == Table.ABSENT ? table.require("the date", "id") : Table.ABSENT;
        while (table.next()) {
            long day = compact == Table.ABSENT
                    ? Numbers.isoDay(table.text(date))
                    : Numbers.compactDate(table.text(compact));
            out.beginDay(day);
            columns.setAll(out);
            locate(table, out);
        }
        convert(table, out);
    }

    private static TableColumns columns(Table table) {
        return new TableColumns(table, -9999.0, 32767.0)
                .with(RawVariable.TMIN, DailyUnit.SAME, "tmmn")
                .with(RawVariable.TMAX, DailyUnit.SAME, "tmmx")
                .with(RawVariable.RAIN, DailyUnit.SAME, "pr")
                .with(RawVariable.SOLAR, DailyUnit.SAME, "srad")
                .with(RawVariable.WIND, DailyUnit.SAME, "vs")
                .with(RawVariable.SPECIFIC_HUMIDITY, DailyUnit.SAME, "sph")
                .with(RawVariable.HUMIDITY_MAX, DailyUnit.SAME, "rmax")
                .with(RawVariable.HUMIDITY_MIN, DailyUnit.SAME, "rmin");
    }

    private static void locate(Table table, RawWeatherBuilder out) {
        int latitude = table.find("latitude", "lat");
        int longitude = table.find("longitude", "lon");
        if (latitude != Table.ABSENT && out.site().latitudeDeg() == null) {
            Double east = longitude == Table.ABSENT ? null : (Double) table.needed(longitude);
            out.setSite(out.site().withPosition(table.needed(latitude), east));
        }
    }

    private static void convert(Table table, RawWeatherBuilder out) {
        String stated = unitOf(table, "tmmx");
        boolean kelvin = stated == null ? out.mean(RawVariable.TMAX) > KELVIN_FROM : stated.startsWith("k");
        if (kelvin) {
            out.convert(RawVariable.TMIN, DailyUnit.KELVIN);
            out.convert(RawVariable.TMAX, DailyUnit.KELVIN);
        }
        say(RawVariable.TMIN, stated, kelvin ? "K" : "°C", out);
        say(RawVariable.TMAX, stated, kelvin ? "K" : "°C", out);
        String statedSolar = unitOf(table, "srad");
        boolean watt = statedSolar == null ? out.mean(RawVariable.SOLAR) > WATT_FROM : statedSolar.startsWith("w");
        if (watt) {
            out.convert(RawVariable.SOLAR, DailyUnit.WATT_PER_M2);
        }
        say(RawVariable.SOLAR, statedSolar, watt ? "W/m²" : "MJ/m²", out);
    }

    private static void say(RawVariable variable, @Nullable String stated, String unit, RawWeatherBuilder out) {
        if (stated == null && out.has(variable)) {
            out.assume(variable, "the file does not state the unit; the size of the values shows it to be " + unit);
        }
    }

    /** The unit in parentheses behind a name, in lower case; null if there is none. */
    private static @Nullable String unitOf(Table table, String word) {
        int at = table.findWord(word);
        String name = at == Table.ABSENT ? "" : table.names().get(at);
        int open = name.indexOf('(');
        return open < 0 ? null : name.substring(open + 1).trim();
    }
}
