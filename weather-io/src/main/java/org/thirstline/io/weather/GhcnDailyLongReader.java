package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** GHCN-Daily with one value a line: station, date, element, value, three flags, time; by year (many stations) or by station. */
final class GhcnDailyLongReader implements FormatReader {

    private static final String FORM = "station,date,element,value,flags as USW00003870,20070101,PRCP,196,,,0,";

    @Override
    public boolean recognises(List<String> head) {
        Fields fields = new Fields(',');
        for (String line : head) {
            fields.split(line);
            if (isHeader(fields)) {
                continue;
            }
            return isRecord(fields, 0) || (head.get(0).startsWith("date,attr,value") && isRecord(fields, -1));
        }
        return false;
    }

    private static boolean isHeader(Fields fields) {
        boolean full = fields.count() >= 7 && fields.is(0, "ID") && fields.is(1, "DATE") && fields.is(2, "ELEMENT");
        return full || (fields.count() >= 6 && fields.is(0, "date") && fields.is(1, "attr") && fields.is(2, "value"));
    }

    /** The station is at the given index; -1 where a copy has dropped that column. */
    private static boolean isRecord(Fields fields, int station) {
        return fields.count() >= station + 7
                && (station < 0 || fields.length(station) == 11)
                && fields.length(station + 1) == 8
                && fields.digits(station + 1) >= 0
                && fields.length(station + 2) == 4
                && fields.number(station + 3) != Numbers.NO_NUMBER;
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Stations stations = new Stations(options.station());
        Fields fields = new Fields(',');
        boolean stationless = false;
        boolean first = true;
        for (String line = lines.nextFilled(); line != null; line = lines.nextFilled()) {
            if (!stationless && !first && stations.skips(line)) {
                continue;
            }
            first = false;
            fields.split(line);
            if (isHeader(fields)) {
                stationless = fields.is(0, "date");
                continue;
            }
            int station = stationless ? -1 : 0;
            if (!isRecord(fields, station)) {
                String start = line.substring(0, Math.min(40, line.length()));
                throw new InputException(InputError.LINE_MALFORMED, start, FORM);
            }
            if (stationless || stations.accepts(fields.text(0))) {
                take(fields, station, out);
            }
        }
        stations.finish();
        out.setStation(stations.station());
        out.setSite(out.site().withName(stations.station()));
    }

    private static void take(Fields fields, int station, RawWeatherBuilder out) {
        double value = fields.number(station + 3);
        if (Double.isNaN(value) || value == GhcnElements.MISSING) {
            return;
        }
        long date = Numbers.compactDate(fields.text(station + 1));
        char quality = GhcnElements.flag(fields.text(station + 5));
        out.markPresent(date);
        String element = fields.text(station + 2).toUpperCase(Locale.ROOT);
        GhcnElements.take(date, element, value, GhcnElements.flag(fields.text(station + 4)), quality, out);
    }
}
