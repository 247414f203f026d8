package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** MeteoSwiss daily values of a station: the climate network's semicolon file and the open data of today. */
final class MeteoSwissReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 10.0;
    private static final String NOTHING = "-";

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(MeteoSwissReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = line.replace(" ", "").replace("\"", "").toLowerCase(Locale.ROOT);
        return plain.startsWith("station/location;date;") || plain.startsWith("station_abbr;reference_timestamp;");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        while (header != null && !isHeader(header)) {
            header = lines.nextFilled();
        }
        if (header == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH,
                    WeatherFormat.METEOSWISS.description(),
                    "no line station/location;date;...");
        }
        Table table = Table.under(header, lines).missing(List.of(NOTHING));
        TableColumns columns = columns(table);
        if (columns.has(RawVariable.WIND)) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(RawVariable.WIND, "measured at 10 m; the file does not state the height");
        }
        Stations stations = new Stations(options.station());
        while (table.next()) {
            if (stations.accepts(table.text(0))) {
                String date = table.text(1);
                out.beginDay(date.indexOf('.') > 0 ? Numbers.dottedDate(date) : Numbers.compactDate(date));
                columns.setAll(out);
            }
        }
        stations.finish();
        out.setStation(stations.station());
        out.setSite(out.site().withName("MeteoSwiss station " + stations.station()));
    }

    /** The sum of rain from 6 to 6 UTC stands before that from midnight to midnight: it is the older series. */
    private static TableColumns columns(Table table) {
        return new TableColumns(table)
                .with(RawVariable.TMIN, DailyUnit.SAME, "tre200dn")
                .with(RawVariable.TMAX, DailyUnit.SAME, "tre200dx")
                .with(RawVariable.TMEAN, DailyUnit.SAME, "tre200d0")
                .with(RawVariable.RAIN, DailyUnit.SAME, "rre150d0", "rka150d0")
                .with(RawVariable.SOLAR, DailyUnit.WATT_PER_M2, "gre000d0")
                .with(RawVariable.SUNSHINE, DailyUnit.MINUTES, "sre000d0")
                .with(RawVariable.WIND, DailyUnit.SAME, "fkl010d0")
                .with(RawVariable.VAPOUR_PRESSURE, DailyUnit.HECTOPASCAL, "pva200d0")
                .with(RawVariable.HUMIDITY_MEAN, DailyUnit.SAME, "ure200d0");
    }
}
