package org.thirstline.io.weather;

import java.util.List;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** U.S. Climate Reference Network, daily01: no header, 28 columns between blanks, local standard days, no wind, no elevation. */
final class UscrnReader implements FormatReader {

    private static final int COLUMNS = 28;
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
        String first = head.stream().filter(line -> !line.isBlank()).findFirst().orElse("");
        fields.split(first);
        return fields.count() == COLUMNS
                && fields.digits(STATION) >= 0
                && fields.length(DATE) == 8
                && fields.digits(DATE) >= 0;
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Stations stations = new Stations(options.station());
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
        stations.finish();
        out.setSite(out.site().withName("WBAN " + stations.station()));
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
