package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * GHCN-Daily as a table of elements without attributes, as NCEI's orders and many copies have it: metric or US units, which the file does
 * not say. They are stated, or told by temperatures that cannot be °C.
 */
final class GhcnDailyWideReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 10.0;

    /** No day has 60 °C; a year without a day above 60 °F (15.6 °C) is polar. */
    private static final double FAHRENHEIT_ABOVE = 60.0;

    private static final int NEARLY_A_YEAR = 300;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream()
                .filter(line -> !line.isBlank())
                .findFirst()
                .filter(GhcnDailyWideReader::isHeader)
                .isPresent();
    }

    private static boolean isHeader(String line) {
        String plain = ',' + line.replace(" ", "").replace("\"", "").toUpperCase(Locale.ROOT) + ',';
        boolean dated = plain.contains(",DATE,")
                || (plain.contains(",YEAR,") && plain.contains(",MONTH,") && plain.contains(",DAY,"));
        boolean temperatures = plain.contains(",TMAX,") && plain.contains(",TMIN,") && plain.contains(",PRCP,");
        return dated && (plain.startsWith(",STATION,") || temperatures) && !plain.contains("_ATTRIBUTES");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        Table table = Table.under(header == null ? "" : header, lines);
        TableColumns columns = new TableColumns(table, 9999.0, -9999.0)
                .with(RawVariable.TMIN, DailyUnit.SAME, "TMIN")
                .with(RawVariable.TMAX, DailyUnit.SAME, "TMAX")
                .with(RawVariable.RAIN, DailyUnit.SAME, "PRCP")
                .with(RawVariable.WIND, DailyUnit.SAME, "AWND");
        if (columns.isEmpty()) {
            table.require(RawVariable.TMAX.words(), "TMAX");
        }
        int station = table.find("STATION");
        Stations stations = new Stations(options.station());
        while (table.next()) {
            if (station == Table.ABSENT || stations.accepts(table.text(station))) {
                out.beginAnyDay(date(table));
                columns.setAll(out);
                locate(table, out);
            }
        }
        if (station != Table.ABSENT) {
            stations.finish();
            out.setStation(stations.station());
        }
        convert(options.units(), out);
    }

    private static long date(Table table) {
        int date = table.find("DATE");
        if (date != Table.ABSENT) {
            String text = table.text(date);
            return text.indexOf('/') > 0 ? Numbers.monthFirstDate(text) : Numbers.isoDay(text);
        }
        int year = table.require("the date", "YEAR");
        int month = table.require("the month", "MONTH");
        int day = table.require("the day", "DAY");
        String found = table.text(year) + "-" + table.text(month) + "-" + table.text(day);
        return Numbers.date(found, table.whole(year), table.whole(month), table.whole(day));
    }

    private static void locate(Table table, RawWeatherBuilder out) {
        if (out.site() != SiteInfo.UNKNOWN) {
            return;
        }
        String name = table.textOrNull(table.find("NAME"));
        out.setSite(new SiteInfo(
                name == null ? table.textOrNull(table.find("STATION")) : name,
                orNull(table.number(table.find("LATITUDE"))),
                orNull(table.number(table.find("LONGITUDE"))),
                orNull(table.number(table.find("ELEVATION")))));
    }

    private static @Nullable Double orNull(double value) {
        return Double.isNaN(value) ? null : (Double) value;
    }

    private static void convert(@Nullable UnitSystem stated, RawWeatherBuilder out) {
        UnitSystem units = stated == null ? told(out) : stated;
        if (units == UnitSystem.US) {
            out.convert(RawVariable.TMIN, DailyUnit.FAHRENHEIT);
            out.convert(RawVariable.TMAX, DailyUnit.FAHRENHEIT);
            out.convert(RawVariable.RAIN, DailyUnit.INCH);
            out.convert(RawVariable.WIND, DailyUnit.MILE_PER_HOUR);
        }
        if (out.has(RawVariable.WIND)) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(RawVariable.WIND, "measured at 10 m; the source does not state the height");
        }
    }

    private static UnitSystem told(RawWeatherBuilder out) {
        String text = "the file does not state its units; the size of the temperatures shows them to be ";
        if (out.most(RawVariable.TMAX) > FAHRENHEIT_ABOVE) {
            out.assume(RawVariable.TMIN, text + "°F");
            out.assume(RawVariable.TMAX, text + "°F");
            out.assume(RawVariable.RAIN, text + "US units, so rain is in inches");
            return UnitSystem.US;
        }
        if (out.count(RawVariable.TMAX) >= NEARLY_A_YEAR) {
            out.assume(RawVariable.TMIN, text + "°C");
            out.assume(RawVariable.TMAX, text + "°C");
            out.assume(RawVariable.RAIN, text + "metric, so rain is in mm");
            return UnitSystem.METRIC;
        }
        throw new InputException(
                InputError.UNIT_NOT_STATED,
                "its values (tables without attribute columns come in metric and in US units)",
                "say which, metric or us, or download the table with attributes");
    }
}
