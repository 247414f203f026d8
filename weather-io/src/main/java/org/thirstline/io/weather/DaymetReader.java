package org.thirstline.io.weather;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;
import org.thirstline.model.solar.SolarGeometry;

/**
 * Daymet single pixel. Its year has 365 days: in leap years 31 December is absent. Solar radiation is a mean over the daylight period.
 */
final class DaymetReader implements FormatReader {

    private static final double SECONDS_PER_HOUR = 3600.0;
    private static final double JOULES_PER_MEGAJOULE = 1.0e6;

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(DaymetReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = line.replace("\"", "").replace(" ", "");
        return plain.startsWith("year,yday,");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String line = lines.next();
        while (line != null && !isHeader(line)) {
            headerLine(line, out);
            line = lines.next();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.DAYMET.description(), "no line year,yday,...");
        }
        readTable(Table.under(line, lines), out);
    }

    private static void headerLine(String line, RawWeatherBuilder out) {
        Double latitude = after(line, "Latitude:");
        if (latitude != null) {
            out.setSite(out.site().withPosition(latitude, after(line, "Longitude:")));
        }
        Double elevation = after(line, "Elevation:");
        if (elevation != null) {
            out.setSite(out.site().withElevation(elevation));
        }
    }

    private static @Nullable Double after(String line, String word) {
        int at = line.indexOf(word);
        if (at < 0) {
            return null;
        }
        String rest = line.substring(at + word.length()).trim();
        int end = rest.indexOf(' ');
        double value = Numbers.parse(rest, 0, end < 0 ? rest.length() : end);
        return value == Numbers.NO_NUMBER ? null : (Double) value;
    }

    private static void readTable(Table table, RawWeatherBuilder out) {
        int year = table.findWord("year");
        int yday = table.findWord("yday");
        int tmin = requireWord(table, RawVariable.TMIN, "tmin");
        int tmax = requireWord(table, RawVariable.TMAX, "tmax");
        int rain = table.findWord("prcp");
        int solar = table.findWord("srad");
        int dayLength = table.findWord("dayl");
        int vapourPressure = table.findWord("vp");
        while (table.next()) {
            locate(table, out);
            String found = table.text(year) + " " + table.text(yday);
            int dayOfYear = table.whole(yday);
            out.beginDay(Numbers.dayOfYear(found, table.whole(year), dayOfYear));
            out.set(RawVariable.TMIN, value(table, tmin));
            out.set(RawVariable.TMAX, value(table, tmax));
            out.set(RawVariable.RAIN, value(table, rain));
            out.set(RawVariable.VAPOUR_PRESSURE, DailyUnit.PASCAL.convert(value(table, vapourPressure)));
            double daylightS = daylightSeconds(value(table, dayLength), dayOfYear, out);
            out.set(RawVariable.SOLAR, value(table, solar) * daylightS / JOULES_PER_MEGAJOULE);
        }
        if (solar != Table.ABSENT) {
            out.note(RawVariable.SOLAR, "mean over daylight times day length");
        }
    }

    private static int requireWord(Table table, RawVariable variable, String word) {
        int at = table.findWord(word);
        return at == Table.ABSENT ? table.require(variable.words(), word) : at;
    }

    private static double value(Table table, int column) {
        double value = table.number(column);
        return value == -9999.0 ? Double.NaN : value;
    }

    /** A download of some variables only may lack the day length; then it follows from the latitude. */
    private static double daylightSeconds(double given, int dayOfYear, RawWeatherBuilder out) {
        Double latitude = out.site().latitudeDeg();
        if (!Double.isNaN(given) || latitude == null) {
            return given;
        }
        return SolarGeometry.dayLengthHours(Math.toRadians(latitude), dayOfYear) * SECONDS_PER_HOUR;
    }

    private static void locate(Table table, RawWeatherBuilder out) {
        int latitude = table.find("latitude");
        if (latitude != Table.ABSENT && out.site().latitudeDeg() == null) {
            out.setSite(
                    out.site().withPosition(table.needed(latitude), table.needed(table.find("longitude", "latitude"))));
        }
    }
}
