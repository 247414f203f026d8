package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * DWD daily products of a station: climate (column names of today and of until 2017), radiation and more precipitation, each with
 * semicolons and -999 for missing. Wind is taken as measured at 10 m, which the file does not state.
 */
final class DwdReader implements FormatReader {

    private static final double MISSING = -999.0;
    private static final double WIND_HEIGHT_M = 10.0;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(DwdReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = line.replace(" ", "").toUpperCase(Locale.ROOT);
        return plain.startsWith("STATIONS_ID;MESS_DATUM;");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        while (header != null && !isHeader(header)) {
            header = lines.nextFilled();
        }
        if (header == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.DWD.description(), "no line STATIONS_ID;MESS_DATUM;...");
        }
        readTable(Table.under(header, lines), options, out);
    }

    private static void readTable(Table table, ReadOptions options, RawWeatherBuilder out) {
        int date = table.require("the date", "MESS_DATUM");
        TableColumns columns = columns(table);
        if (columns.isEmpty()) {
            table.require(RawVariable.TMIN.words(), "TNK");
        }
        if (columns.has(RawVariable.WIND)) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(RawVariable.WIND, "measured at 10 m; the file does not state the height");
        }
        Stations stations = new Stations(withoutZeros(options.station()));
        while (table.next()) {
            if (stations.accepts(String.valueOf(withoutZeros(table.text(0))))) {
                out.beginDay(Numbers.compactDate(table.text(date)));
                columns.setAll(out);
            }
        }
        stations.finish();
        out.setStation(stations.station());
        out.setSite(out.site().withName("DWD station " + stations.station()));
    }

    private static TableColumns columns(Table table) {
        return new TableColumns(table, MISSING)
                .with(RawVariable.TMIN, DailyUnit.SAME, "TNK", "LUFTTEMPERATUR_MINIMUM")
                .with(RawVariable.TMAX, DailyUnit.SAME, "TXK", "LUFTTEMPERATUR_MAXIMUM")
                .with(RawVariable.TMEAN, DailyUnit.SAME, "TMK", "LUFTTEMPERATUR")
                .with(RawVariable.RAIN, DailyUnit.SAME, "RSK", "RS", "NIEDERSCHLAGSHOEHE")
                .with(RawVariable.SUNSHINE, DailyUnit.SAME, "SDK", "SONNENSCHEINDAUER", "SD_STRAHL")
                .with(RawVariable.SOLAR, DailyUnit.JOULE_PER_CM2, "FG_STRAHL")
                .with(RawVariable.WIND, DailyUnit.SAME, "FM", "WINDGESCHWINDIGKEIT")
                .with(RawVariable.VAPOUR_PRESSURE, DailyUnit.HECTOPASCAL, "VPM", "DAMPFDRUCK")
                .with(RawVariable.HUMIDITY_MEAN, DailyUnit.SAME, "UPM", "REL_FEUCHTE");
    }

    /** The files pad station numbers with blanks or with zeros. */
    private static @Nullable String withoutZeros(@Nullable String station) {
        return station == null ? null : station.replaceFirst("^0+(?=.)", "");
    }
}
