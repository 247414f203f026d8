package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * AgriMet daily values of the US Bureau of Reclamation: °F, langleys, miles an hour, inches, and words where a value is missing. The
 * date is in one column or in three; columns may carry the station in front of the code. Wind is taken as measured at 2 m.
 */
final class AgrimetReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 2.0;
    private static final double MISSING = 998877.0;
    private static final List<String> CODES = List.of("MN", "MX", "MM", "SR", "YM", "UA", "PP", "TA");

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(AgrimetReader::isHeader);
    }

    private static boolean isHeader(String line) {
        Fields fields = new Fields(',');
        fields.split(line);
        boolean dated = fields.count() > 2
                && (fields.is(0, "DATE") || (fields.is(0, "YEAR") && fields.is(1, "MONTH") && fields.is(2, "DAY")));
        int known = 0;
        for (int i = 1; dated && i < fields.count(); i++) {
            known += CODES.contains(code(fields.text(i))) ? 1 : 0;
        }
        return known >= 2;
    }

    /** The code without the station, e.g. MX of {@code FALN MX}. */
    private static String code(String name) {
        return name.substring(name.lastIndexOf(' ') + 1).toUpperCase(Locale.ROOT);
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String line = lines.nextFilled();
        while (line != null && !isHeader(line)) {
            line = lines.nextFilled();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.AGRIMET.description(), "no line with the codes MN, MX");
        }
        station(line, options, out);
        Table table = Table.under(withCodesOnly(line), lines).missing(List.of("NO RECORD", "MISSING", "N/A", "-"));
        TableColumns columns = columns(table);
        if (columns.has(RawVariable.WIND)) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(RawVariable.WIND, "measured at 2 m, the network's standard; the file does not state the height");
        }
        while (table.nextUnless("END DATA")) {
            out.beginDay(date(table));
            columns.setAll(out);
        }
    }

    private static void station(String header, ReadOptions options, RawWeatherBuilder out) {
        Stations stations = new Stations(options.station());
        for (String name : header.split(",", -1)) {
            String trimmed = name.trim();
            if (trimmed.indexOf(' ') > 0 && CODES.contains(code(trimmed))) {
                stations.accepts(trimmed.substring(0, trimmed.indexOf(' ')));
            }
        }
        String station = stations.station();
        if (station != null) {
            stations.finish();
            out.setStation(station);
            out.setSite(out.site().withName("AgriMet station " + station));
        }
    }

    private static String withCodesOnly(String header) {
        StringBuilder names = new StringBuilder();
        for (String name : header.split(",", -1)) {
            names.append(names.isEmpty() ? "" : ",").append(code(name.trim()));
        }
        return names.toString();
    }

    private static long date(Table table) {
        int single = table.find("DATE");
        if (single != Table.ABSENT) {
            return Numbers.monthFirstDate(table.text(single));
        }
        String found = table.text(0) + "-" + table.text(1) + "-" + table.text(2);
        return Numbers.date(found, table.whole(0), table.whole(1), table.whole(2));
    }

    private static TableColumns columns(Table table) {
        return new TableColumns(table, MISSING)
                .with(RawVariable.TMIN, DailyUnit.FAHRENHEIT, "MN")
                .with(RawVariable.TMAX, DailyUnit.FAHRENHEIT, "MX")
                .with(RawVariable.TMEAN, DailyUnit.FAHRENHEIT, "MM")
                .with(RawVariable.RAIN, DailyUnit.INCH, "PP")
                .with(RawVariable.SOLAR, DailyUnit.CALORIE_PER_CM2, "SR")
                .with(RawVariable.WIND, DailyUnit.MILE_PER_HOUR, "UA")
                .with(RawVariable.DEW_POINT, DailyUnit.FAHRENHEIT, "YM")
                .with(RawVariable.HUMIDITY_MEAN, DailyUnit.SAME, "TA");
    }
}
