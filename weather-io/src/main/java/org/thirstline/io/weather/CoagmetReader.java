package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** CoAgMET daily extracts: metric, humidity as a fraction, radiation as a mean over 24 h, wind as the run of a day at 2 m. */
final class CoagmetReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 2.0;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(CoagmetReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = ',' + line.replace(" ", "").replace("\"", "").toLowerCase(Locale.ROOT) + ',';
        return plain.contains(",date,")
                && plain.contains(",tmax,")
                && plain.contains(",tmin,")
                && (plain.contains(",windrun,") || (plain.contains(",rhmax,") && plain.contains(",solar,")));
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        if (header == null || !isHeader(header)) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.COAGMET.description(), "no line name,date,tavg,...");
        }
        Table table = Table.under(header, lines);
        int station = table.find("name", "station");
        int date = table.require("the date", "date");
        TableColumns columns = columns(table);
        out.setWindHeightM(WIND_HEIGHT_M);
        Stations stations = new Stations(options.station());
        while (table.next()) {
            if (station == Table.ABSENT || stations.accepts(table.text(station))) {
                out.beginDay(Numbers.isoDay(table.text(date)));
                columns.setAll(out);
            }
        }
        if (station != Table.ABSENT) {
            stations.finish();
            out.setStation(stations.station());
            out.setSite(out.site().withName("CoAgMET station " + stations.station()));
        }
    }

    private static TableColumns columns(Table table) {
        return new TableColumns(table, -999.0)
                .with(RawVariable.TMIN, DailyUnit.SAME, "tmin")
                .with(RawVariable.TMAX, DailyUnit.SAME, "tmax")
                .with(RawVariable.TMEAN, DailyUnit.SAME, "tavg")
                .with(RawVariable.RAIN, DailyUnit.SAME, "pp", "precip", "rain")
                .with(RawVariable.SOLAR, DailyUnit.WATT_PER_M2, "solar")
                .with(RawVariable.WIND, DailyUnit.KM_PER_DAY, "windrun")
                .with(RawVariable.HUMIDITY_MAX, DailyUnit.FRACTION, "rhmax")
                .with(RawVariable.HUMIDITY_MIN, DailyUnit.FRACTION, "rhmin");
    }
}
