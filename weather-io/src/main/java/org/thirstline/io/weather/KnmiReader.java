package org.thirstline.io.weather;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** KNMI daily values: a legend, a header that starts with STN, values in tenths, -1 for a trace of rain or sunshine. */
final class KnmiReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 10.0;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(KnmiReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = withoutHash(line).replace(" ", "");
        return plain.startsWith("STN,YYYYMMDD");
    }

    private static String withoutHash(String line) {
        return line.startsWith("#") ? line.substring(1).trim() : line.trim();
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Map<String, SiteInfo> sites = new HashMap<>();
        boolean listing = false;
        String line = lines.next();
        while (line != null && !isHeader(line)) {
            String plain = withoutHash(line);
            if (listing) {
                readSite(plain, sites);
            }
            listing |= plain.startsWith("STN") && plain.contains("LAT");
            line = lines.next();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.KNMI.description(), "no line STN,YYYYMMDD,...");
        }
        String station = readTable(Table.under(withoutHash(line), lines), options, out);
        out.setSite(sites.getOrDefault(station, SiteInfo.UNKNOWN.withName("KNMI station " + station)));
    }

    /** A line of the station list: number, longitude, latitude, altitude, name. */
    private static void readSite(String line, Map<String, SiteInfo> sites) {
        Fields fields = new Fields(Fields.BLANKS);
        fields.split(line.replace(":", " "));
        if (fields.count() < 5 || fields.digits(0) < 0) {
            return;
        }
        double longitude = fields.number(1);
        double latitude = fields.number(2);
        double altitude = fields.number(3);
        if (Double.isFinite(longitude) && Double.isFinite(latitude) && Double.isFinite(altitude)) {
            StringBuilder name = new StringBuilder(fields.text(4));
            for (int i = 5; i < fields.count(); i++) {
                name.append(' ').append(fields.text(i));
            }
            sites.put(fields.text(0), new SiteInfo(name.toString(), latitude, longitude, altitude));
        }
    }

    private static @Nullable String readTable(Table table, ReadOptions options, RawWeatherBuilder out) {
        int date = table.require("the date", "YYYYMMDD");
        int tmin = table.require(RawVariable.TMIN.words(), "TN");
        int tmax = table.require(RawVariable.TMAX.words(), "TX");
        int tmean = table.find("TG");
        int wind = table.find("FG");
        int sunshine = table.find("SQ");
        int solar = table.find("Q");
        int rain = table.find("RH");
        int[] humidity = {table.find("UN"), table.find("UX"), table.find("UG")};
        Stations stations = new Stations(options.station());
        out.setWindHeightM(WIND_HEIGHT_M);
        while (table.next()) {
            if (!stations.accepts(table.text(0))) {
                continue;
            }
            out.beginDay(Numbers.compactDate(table.text(date)));
            out.set(RawVariable.TMIN, tenths(table, tmin));
            out.set(RawVariable.TMAX, tenths(table, tmax));
            out.set(RawVariable.TMEAN, tenths(table, tmean));
            out.set(RawVariable.WIND, tenths(table, wind));
            out.set(RawVariable.SUNSHINE, tenthsOrTrace(table, sunshine));
            out.set(RawVariable.RAIN, tenthsOrTrace(table, rain));
            out.set(RawVariable.SOLAR, DailyUnit.JOULE_PER_CM2.convert(table.number(solar)));
            out.set(RawVariable.HUMIDITY_MIN, table.number(humidity[0]));
            out.set(RawVariable.HUMIDITY_MAX, table.number(humidity[1]));
            out.set(RawVariable.HUMIDITY_MEAN, table.number(humidity[2]));
        }
        stations.finish();
        return stations.station();
    }

    private static double tenths(Table table, int column) {
        return DailyUnit.TENTH.convert(table.number(column));
    }

    /** -1 stands for less than half a tenth. */
    private static double tenthsOrTrace(Table table, int column) {
        double value = table.number(column);
        return value == -1.0 ? 0.0 : DailyUnit.TENTH.convert(value);
    }
}
