package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** GeoSphere Austria daily climate extracts, with the variable names of before and after 2024. */
final class GeosphereReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 10.0;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(GeosphereReader::isHeader);
    }

    private static boolean isHeader(String line) {
        Fields fields = new Fields(Fields.separatorOf(line));
        fields.split(line.toLowerCase(Locale.ROOT));
        boolean framed = false;
        boolean known = false;
        for (int i = 0; i < fields.count(); i++) {
            framed |= fields.is(i, "time") && i < 2 && fields.count() > 2;
            known |= fields.is(i, "strahl")
                    || fields.is(i, "tmax")
                    || fields.is(i, "tlmax")
                    || fields.is(i, "cglo_j")
                    || fields.is(i, "rf_mittel");
        }
        return framed && known && (fields.is(0, "station") || fields.is(1, "station"));
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        if (header == null || !isHeader(header)) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.GEOSPHERE.description(), "no line station,time,...");
        }
        Table table = Table.under(header, lines);
        int station = table.require("the station", "station");
        int time = table.require("the date", "time");
        TableColumns columns = columns(table);
        if (columns.has(RawVariable.WIND)) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(RawVariable.WIND, "measured at 10 m; the file does not state the height");
        }
        int rain = table.find("rr", "nied");
        Stations stations = new Stations(options.station());
        while (table.next()) {
            if (stations.accepts(table.text(station))) {
                out.beginDay(Numbers.isoDay(table.text(time)));
                columns.setAll(out);
                // -1 is a day without rain, 0 one with a trace
                double fallen = table.number(rain);
                out.set(RawVariable.RAIN, fallen == -1.0 ? 0.0 : fallen);
            }
        }
        stations.finish();
        out.setStation(stations.station());
        out.setSite(out.site().withName("GeoSphere station " + stations.station()));
    }

    private static TableColumns columns(Table table) {
        return new TableColumns(table)
                .with(RawVariable.TMIN, DailyUnit.SAME, "tlmin", "tmin")
                .with(RawVariable.TMAX, DailyUnit.SAME, "tlmax", "tmax")
                .with(RawVariable.TMEAN, DailyUnit.SAME, "tl_mittel", "t")
                .with(RawVariable.SOLAR, DailyUnit.JOULE_PER_CM2, "cglo_j", "strahl")
                .with(RawVariable.SUNSHINE, DailyUnit.SAME, "so_h", "sonne")
                .with(RawVariable.WIND, DailyUnit.SAME, "vv_mittel", "vv")
                .with(RawVariable.HUMIDITY_MEAN, DailyUnit.SAME, "rf_mittel", "rel");
    }
}
