package org.thirstline.io.weather;

import java.io.IOException;
import java.util.List;
import org.thirstline.io.tables.ColumnInfo;
import org.thirstline.io.tables.TableInfo;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Writes the clean daily table. Decimals are fixed, and a record holds its values with just these decimals, so that what was written can
 * be read again and gives the same bytes. CSV after RFC 4180 with one departure: lines end in a line feed alone.
 */
public final class WeatherTable {

    /** File name inside the result folder. */
    public static final String FILE = "weather.csv";

    /** The columns, in order. The first seven are inputs, the rest is derived from them and the place. */
    public static final List<String> COLUMNS = List.of(
            "date",
            "tmin_c",
            "tmax_c",
            "rain_mm",
            "solar_mj_m2",
            "wind_2m_m_s",
            "vapour_pressure_kpa",
            "day_length_h",
            "extraterrestrial_mj_m2",
            "et0_mm",
            "flags");

    private static final int DERIVED_DECIMALS = 3;

    private static final double[] SCALES = {1.0, 10.0, 100.0, 1000.0, 10_000.0};

    private WeatherTable() {}

    /** Returns what the table holds. */
    public static TableInfo info() {
        return new TableInfo(
                FILE,
                "Daily weather without gaps",
                List.of(
                        ColumnInfo.date("date", "Day, as the provider of the weather defines it"),
                        ColumnInfo.number("tmin_c", "degC", "Minimum air temperature"),
                        ColumnInfo.number("tmax_c", "degC", "Maximum air temperature"),
                        ColumnInfo.number("rain_mm", "mm", "Rain and melted snow"),
                        ColumnInfo.number("solar_mj_m2", "MJ/m2", "Global radiation of the day"),
                        ColumnInfo.number("wind_2m_m_s", "m/s", "Mean wind speed at 2 m"),
                        ColumnInfo.number("vapour_pressure_kpa", "kPa", "Mean actual vapour pressure"),
                        ColumnInfo.number("day_length_h", "h", "Sunrise to sunset (FAO-56 eq. 34)"),
                        ColumnInfo.number(
                                "extraterrestrial_mj_m2", "MJ/m2", "Extraterrestrial radiation (FAO-56 eq. 21)"),
                        ColumnInfo.number("et0_mm", "mm", "Reference evapotranspiration (FAO-56 eq. 6)"),
                        ColumnInfo.text("flags", "Values that were not measured, and how they came about")));
    }

    /** Returns the decimals of a variable in the table: finer than any instrument reads. */
    public static int decimals(WeatherVariable variable) {
        return switch (variable) {
            case TMIN, TMAX, RAIN -> 2;
            case SOLAR, WIND -> 3;
            case VAPOUR_PRESSURE -> 4;
        };
    }

    /** Returns a value with the decimals of the table; NaN stays. */
    public static double round(WeatherVariable variable, double value) {
        double scale = SCALES[decimals(variable)];
        // adding zero turns a negative zero into zero
        return Math.rint(value * scale) / scale + 0.0;
    }

    /**
     * Writes a record.
     *
     * @param record what to write
     * @param out where to
     */
    public static void write(WeatherRecord record, Appendable out) throws IOException {
        DailyDrivers drivers = DailyDrivers.of(record.site(), record.series());
        out.append(String.join(",", COLUMNS)).append('\n');
        StringBuilder line = new StringBuilder(120);
        for (int day = 0; day < record.series().days(); day++) {
            line.setLength(0);
            appendDay(line, record, drivers, day);
            out.append(line);
        }
    }

    private static void appendDay(StringBuilder line, WeatherRecord record, DailyDrivers drivers, int day) {
        WeatherSeries series = record.series();
        line.append(series.date(day));
        for (WeatherVariable variable : WeatherVariable.values()) {
            line.append(',');
            if (variable != WeatherVariable.RAIN || record.rainKnown()) {
                append(line, series.value(variable, day), decimals(variable));
            }
        }
        append(line.append(','), drivers.dayLength(day), DERIVED_DECIMALS);
        append(line.append(','), drivers.extraterrestrial(day), DERIVED_DECIMALS);
        append(line.append(','), drivers.et0(day), DERIVED_DECIMALS);
        line.append(',').append(Flags.of(series, day, record.rainKnown())).append('\n');
    }

    /** Appends a number with fixed decimals and a point, never as -0. */
    static void append(StringBuilder line, double value, int decimals) {
        long scale = (long) SCALES[decimals];
        long scaled = Math.round(Math.abs(value) * scale);
        if (value < 0.0 && scaled != 0) {
            line.append('-');
        }
        line.append(scaled / scale);
        if (decimals > 0) {
            line.append('.');
            long fraction = scaled % scale;
            for (long place = scale / 10; place > 0; place /= 10) {
                line.append((char) ('0' + fraction / place % 10));
            }
        }
    }
}
