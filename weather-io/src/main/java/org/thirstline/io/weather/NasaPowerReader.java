package org.thirstline.io.weather;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * NASA POWER daily point, with or without the block in front. The unit of solar radiation depends on the user community that the
 * download was made for; it stands in that block.
 */
final class NasaPowerReader implements FormatReader {

    private static final String SOLAR = "ALLSKY_SFC_SW_DWN";

    /** No place on Earth gets more in a day than 49 MJ m⁻², which are 13.6 kWh m⁻². */
    private static final double MOST_KILOWATT_HOURS = 13.6;

    private static final double MOST_MEGAJOULES = 49.0;

    /** A record of this many days has a day above 13.6 MJ m⁻², wherever it is. */
    private static final int NEARLY_A_YEAR = 300;

    @Override
    public boolean recognises(List<String> head) {
        for (String line : head) {
            if (line.startsWith("-BEGIN HEADER-") || line.startsWith("NASA/POWER") || isHeader(line)) {
                return true;
            }
            if (!line.isBlank()) {
                return false;
            }
        }
        return false;
    }

    private static boolean isHeader(String line) {
        Fields fields = new Fields(Fields.separatorOf(line));
        fields.split(line);
        int year = fields.count() > 0 && fields.is(0, "LAT") ? 2 : 0;
        return fields.count() > year + 2
                && fields.is(year, "YEAR")
                && (fields.is(year + 1, "DOY") || fields.is(year + 1, "MO") || fields.is(year + 1, "MM"))
                && !fields.is(year + 1, "yday");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Map<String, String> units = new LinkedHashMap<>();
        String line = lines.nextFilled();
        while (line != null && !isHeader(line)) {
            headerLine(line, units, out);
            line = lines.nextFilled();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.NASA_POWER.description(), "no line YEAR,DOY,...");
        }
        readTable(Table.under(line, lines), units.get(SOLAR), out);
    }

    private static void headerLine(String line, Map<String, String> units, RawWeatherBuilder out) {
        String lower = line.toLowerCase(Locale.ROOT);
        if (lower.startsWith("location:")) {
            out.setSite(out.site().withPosition(after(lower, "latitude"), after(lower, "longitude")));
        } else if (lower.startsWith("elevation")) {
            out.setSite(out.site().withElevation(after(lower, "=")));
        } else if (line.indexOf('(') >= 0) {
            int blank = line.indexOf(' ');
            int open = line.lastIndexOf('(');
            if (blank > 0 && line.indexOf(')', open) > open) {
                units.put(line.substring(0, blank), line.substring(open + 1, line.indexOf(')', open)));
            }
        }
    }

    private static @Nullable Double after(String line, String word) {
        int at = line.indexOf(word);
        if (at < 0) {
            return null;
        }
        String[] tokens = line.substring(at + word.length()).trim().split(" +", 2);
        double value = Numbers.parse(tokens[0], 0, tokens[0].length());
        return value == Numbers.NO_NUMBER ? null : (Double) value;
    }

    private static void readTable(Table table, @Nullable String solarUnit, RawWeatherBuilder out) {
        Columns columns = new Columns(table);
        if (columns.wind != Table.ABSENT) {
            out.setWindHeightM(columns.windHeightM);
        }
        Map<Long, Double> solar = new LinkedHashMap<>();
        double mostSolar = 0.0;
        while (table.next()) {
            if (solar.isEmpty()
                    && columns.latitude != Table.ABSENT
                    && out.site().latitudeDeg() == null) {
                out.setSite(out.site().withPosition(table.number(columns.latitude), table.number(table.find("LON"))));
            }
            long day = columns.date();
            out.beginDay(day);
            columns.setAll(out);
            double found = columns.value(columns.solar);
            if (!Double.isNaN(found)) {
                solar.put(day, found);
            }
            mostSolar = Math.max(mostSolar, Math.max(orZero(found), orZero(columns.value(columns.top))));
        }
        if (!solar.isEmpty()) {
            DailyUnit unit = solarUnit != null ? unit(solarUnit) : guess(mostSolar, solar.size(), out);
            solar.forEach((day, value) -> out.setOnce(day, RawVariable.SOLAR, unit.convert(value)));
        }
    }

    private static double orZero(double value) {
        return Double.isNaN(value) ? 0.0 : value;
    }

    static DailyUnit unit(String text) {
        String lower = text.toLowerCase(Locale.ROOT).replace(" ", "");
        if (lower.startsWith("mj")) {
            return DailyUnit.SAME;
        }
        if (lower.startsWith("kw")) {
            return DailyUnit.KILOWATT_HOUR_PER_M2;
        }
        if (lower.startsWith("w/m")) {
            return DailyUnit.WATT_PER_M2;
        }
        throw new InputException(
                InputError.UNIT_NOT_UNDERSTOOD,
                SOLAR + " (" + text + ")",
                RawVariable.SOLAR.words(),
                "MJ/m^2/day, kW-hr/m^2/day, W/m^2",
                "MJ/m^2/day");
    }

    /** Without a stated unit only the size of the values set so far can tell it. */
    static DailyUnit guess(RawWeatherBuilder out) {
        return guess(out.most(RawVariable.SOLAR), (int) out.count(RawVariable.SOLAR), out);
    }

    /** Without the block in front only the size of the values can tell the unit. */
    private static DailyUnit guess(double mostSolar, int days, RawWeatherBuilder out) {
        String text = "the file does not state the unit; the size of the values shows it to be ";
        if (mostSolar > MOST_MEGAJOULES) {
            out.assume(RawVariable.SOLAR, text + "W/m^2");
            return DailyUnit.WATT_PER_M2;
        }
        if (mostSolar > MOST_KILOWATT_HOURS) {
            out.assume(RawVariable.SOLAR, text + "MJ/m^2/day");
            return DailyUnit.SAME;
        }
        if (days >= NEARLY_A_YEAR) {
            out.assume(RawVariable.SOLAR, text + "kW-hr/m^2/day");
            return DailyUnit.KILOWATT_HOUR_PER_M2;
        }
        throw new InputException(InputError.UNIT_NOT_STATED, SOLAR, "download the file with the header block in front");
    }

    /** Where the variables stand, and the conversion of those whose unit is fixed. */
    private static final class Columns {
        private final Table table;
        private final int year;
        private final int dayOfYear;
        private final int month;
        private final int day;
        private final int latitude;
        private final int solar;
        private final int top;
        private final int wind;
        private final double windHeightM;
        private final int rain;

        Columns(Table table) {
            this.table = table;
            year = table.require("the year", "YEAR");
            dayOfYear = table.find("DOY");
            month = table.find("MO", "MM");
            day = table.find("DY", "DD");
            if (dayOfYear == Table.ABSENT && (month == Table.ABSENT || day == Table.ABSENT)) {
                table.require("the day of the year", "DOY");
            }
            table.require(RawVariable.TMIN.words(), "T2M_MIN");
            table.require(RawVariable.TMAX.words(), "T2M_MAX");
            latitude = table.find("LAT");
            solar = table.find(SOLAR);
            top = table.find("TOA_SW_DWN", "ALLSKY_TOA_SW_DWN");
            wind = table.find("WS2M", "WS10M");
            windHeightM = table.find("WS2M") == Table.ABSENT ? 10.0 : 2.0;
            rain = table.find("PRECTOTCORR", "PRECTOT");
        }

        long date() {
            if (dayOfYear != Table.ABSENT) {
                String found = table.text(year) + " " + table.text(dayOfYear);
                return Numbers.dayOfYear(found, table.whole(year), table.whole(dayOfYear));
            }
            String found = table.text(year) + " " + table.text(month) + " " + table.text(day);
            return Numbers.date(found, table.whole(year), table.whole(month), table.whole(day));
        }

        /** -999 today, -99 in downloads of before 2019; temperatures and all else are never that low. */
        double value(int column) {
            double value = table.number(column);
            return value == -999.0 || value == -99.0 ? Double.NaN : value;
        }

        void setAll(RawWeatherBuilder out) {
            out.set(RawVariable.TMIN, value(table.find("T2M_MIN")));
            out.set(RawVariable.TMAX, value(table.find("T2M_MAX")));
            out.set(RawVariable.TMEAN, value(table.find("T2M")));
            out.set(RawVariable.DEW_POINT, value(table.find("T2MDEW")));
            out.set(RawVariable.HUMIDITY_MEAN, value(table.find("RH2M")));
            out.set(RawVariable.RAIN, value(rain));
            out.set(RawVariable.WIND, value(wind));
        }
    }
}
