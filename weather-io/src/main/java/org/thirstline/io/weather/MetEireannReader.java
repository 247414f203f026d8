package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * Met Éireann daily data of synoptic, automatic, climate and rain stations. Their columns differ in number and order, and several share
 * the name {@code ind}; columns are found by name. Indicators are not used.
 */
final class MetEireannReader implements FormatReader {

    private static final double WIND_HEIGHT_M = 10.0;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(MetEireannReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = line.replace(" ", "").replace("\"", "").toLowerCase(Locale.ROOT);
        return plain.startsWith("date,ind,") && (plain.contains("rain") || plain.contains("maxtp"));
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String line = lines.next();
        while (line != null && !isHeader(line)) {
            place(line, out);
            line = lines.next();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.MET_EIREANN.description(), "no line date,ind,...");
        }
        Table table = Table.under(line, lines);
        TableColumns columns = columns(table);
        if (columns.has(RawVariable.WIND)) {
            out.setWindHeightM(WIND_HEIGHT_M);
        }
        while (table.next()) {
            out.beginDay(Numbers.monthNameDate(table.text(0)));
            columns.setAll(out);
        }
    }

    private static TableColumns columns(Table table) {
        return new TableColumns(table)
                .with(RawVariable.TMIN, DailyUnit.SAME, "mintp")
                .with(RawVariable.TMAX, DailyUnit.SAME, "maxtp")
                .with(RawVariable.RAIN, DailyUnit.SAME, "rain")
                .with(RawVariable.SOLAR, DailyUnit.JOULE_PER_CM2, "g_rad", "glorad")
                .with(RawVariable.SUNSHINE, DailyUnit.SAME, "sun")
                .with(RawVariable.WIND, DailyUnit.KNOT, "wdsp");
    }

    private static void place(String line, RawWeatherBuilder out) {
        String lower = line.toLowerCase(Locale.ROOT);
        SiteInfo site = out.site();
        if (lower.startsWith("station name:")) {
            out.setSite(site.withName(line.substring(line.indexOf(':') + 1).trim()));
        } else if (lower.startsWith("station height:")) {
            out.setSite(site.withElevation(Numbers.after(lower, "height:")));
        } else if (lower.startsWith("latitude:")) {
            out.setSite(site.withPosition(Numbers.after(lower, "latitude:"), Numbers.after(lower, "longitude:")));
        }
    }
}
