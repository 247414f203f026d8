package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * U.S. Climate Reference Network, daily01: 28 columns between blanks without a header, or copies under the column names of the provider;
 * local standard days, no wind, no elevation.
 */
final class UscrnReader implements FormatReader {

    private static final int COLUMNS = 28;
    private static final int HEAD_LINES = 5;
    private static final int STATION = 0;
    private static final int DATE = 1;
    private static final int LONGITUDE = 3;
    private static final int LATITUDE = 4;
    private static final int TMAX = 5;
    private static final int TMIN = 6;
    private static final int RAIN = 9;
    private static final int SOLAR = 10;
    private static final int HUMIDITY_MAX = 15;
    private static final int HUMIDITY_MIN = 16;
    private static final int HUMIDITY_MEAN = 17;

    @Override
    public boolean recognises(List<String> head) {
        Fields fields = new Fields(Fields.BLANKS);
        String first = first(head);
        if (isHeader(first)) {
            return true;
        }
        fields.split(first);
        return fields.count() == COLUMNS
                && fields.digits(STATION) >= 0
                && fields.length(DATE) == 8
                && fields.digits(DATE) >= 0;
    }

    private static String first(List<String> head) {
        return head.stream().filter(line -> !line.isBlank()).findFirst().orElse("");
    }

    /** Copies carry the provider's column names in a line of their own. */
    private static boolean isHeader(String line) {
        String upper = line.toUpperCase(Locale.ROOT);
        return upper.contains("WBANNO") && upper.contains("LST_DATE");
    }

    private static void readUnderHeader(LineReader lines, Stations stations, RawWeatherBuilder out) {
        Table table = Table.under(String.valueOf(lines.nextFilled()), lines);
        TableColumns columns = new TableColumns(table, -9999.0, -99.0)
                .with(RawVariable.TMAX, DailyUnit.SAME, "T_DAILY_MAX")
                .with(RawVariable.TMIN, DailyUnit.SAME, "T_DAILY_MIN")
                .with(RawVariable.RAIN, DailyUnit.SAME, "P_DAILY_CALC")
                .with(RawVariable.SOLAR, DailyUnit.SAME, "SOLARAD_DAILY")
                .with(RawVariable.HUMIDITY_MAX, DailyUnit.SAME, "RH_DAILY_MAX")
                .with(RawVariable.HUMIDITY_MIN, DailyUnit.SAME, "RH_DAILY_MIN")
                .with(RawVariable.HUMIDITY_MEAN, DailyUnit.SAME, "RH_DAILY_AVG");
        int station = table.require("the station", "WBANNO");
        int date = table.require("the date", "LST_DATE");
        int latitude = table.find("LATITUDE");
        int longitude = table.find("LONGITUDE");
        while (table.next()) {
            if (stations.accepts(table.text(station))) {
                String text = table.text(date);
                out.beginDay(text.indexOf('-') > 0 ? Numbers.isoDay(text) : Numbers.compactDate(text));
                columns.setAll(out);
                if (latitude != Table.ABSENT
                        && longitude != Table.ABSENT
                        && out.site().latitudeDeg() == null) {
                    out.setSite(out.site().withPosition(table.needed(latitude), table.needed(longitude)));
                }
            }
        }
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Stations stations = new Stations(options.station());
        if (isHeader(first(lines.head(HEAD_LINES)))) {
            readUnderHeader(lines, stations, out);
        } else {
            readLines(lines, stations, out);
        }
        stations.finish();
        out.setSite(out.site().withName("WBAN " + stations.station()));
    }

    private static void readLines(LineReader lines, Stations stations, RawWeatherBuilder out) {
        Fields fields = new Fields(Fields.BLANKS);
        for (String line = lines.nextFilled(); line != null; line = lines.nextFilled()) {
            fields.split(line);
            if (fields.count() != COLUMNS) {
                throw new InputException(
                        InputError.FIELD_COUNT, fields.count(), COLUMNS, "the line is cut short or not of this format");
            }
            if (stations.accepts(fields.text(STATION))) {
                readDay(fields, out);
            }
        }
    }

    private static void readDay(Fields fields, RawWeatherBuilder out) {
        out.beginDay(Numbers.compactDate(fields.text(DATE)));
        if (out.site().latitudeDeg() == null) {
            out.setSite(out.site()
                    .withPosition(value(fields, LATITUDE, "latitude"), value(fields, LONGITUDE, "longitude")));
        }
        out.set(RawVariable.TMAX, value(fields, TMAX, "maximum temperature"));
        out.set(RawVariable.TMIN, value(fields, TMIN, "minimum temperature"));
        out.set(RawVariable.RAIN, value(fields, RAIN, "precipitation"));
        out.set(RawVariable.SOLAR, value(fields, SOLAR, "solar radiation"));
        out.set(RawVariable.HUMIDITY_MAX, value(fields, HUMIDITY_MAX, "maximum humidity"));
        out.set(RawVariable.HUMIDITY_MIN, value(fields, HUMIDITY_MIN, "minimum humidity"));
        out.set(RawVariable.HUMIDITY_MEAN, value(fields, HUMIDITY_MEAN, "mean humidity"));
    }

    /** Missing is -9999 with any number of decimals. */
    private static double value(Fields fields, int column, String name) {
        double value = fields.number(column);
        if (value == Numbers.NO_NUMBER) {
            throw new InputException(InputError.NOT_A_NUMBER, (column + 1) + " (" + name + ")", fields.text(column));
        }
        return value == -9999.0 ? Double.NaN : value;
    }
}
