package org.thirstline.io.weather;

import java.time.YearMonth;
import java.util.List;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** GHCN-Daily, fixed width: a line is a month of one element. Lines may be trimmed at their end. */
final class GhcnDailyReader implements FormatReader {

    private static final int ID_END = 11;
    private static final int YEAR_END = 15;
    private static final int MONTH_END = 17;
    private static final int ELEMENT_END = 21;
    private static final int DAY_WIDTH = 8;
    private static final int VALUE_WIDTH = 5;
    private static final String FORM = "an 11-character station, year, month, element and 31 values";

    @Override
    public boolean recognises(List<String> head) {
        return !head.isEmpty() && isRecord(head.get(0));
    }

    private static boolean isRecord(String line) {
        boolean framed = line.length() >= ELEMENT_END + VALUE_WIDTH
                && line.substring(0, ID_END).chars().allMatch(c -> Character.isLetterOrDigit(c) || c == '-' || c == '_')
                && Numbers.digits(line, ID_END, YEAR_END) >= 0
                && Numbers.digits(line, YEAR_END, MONTH_END) >= 0;
        return framed && line.substring(MONTH_END, ELEMENT_END).chars().allMatch(Character::isLetterOrDigit);
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        Stations stations = new Stations(options.station());
        for (String line = lines.nextFilled(); line != null; line = lines.nextFilled()) {
            if (!isRecord(line)) {
                throw new InputException(
                        InputError.LINE_MALFORMED, line.substring(0, Math.min(30, line.length())), FORM);
            }
            if (stations.accepts(line.substring(0, ID_END))) {
                readMonth(line, out);
            }
        }
        stations.finish();
        out.setStation(stations.station());
        out.setSite(out.site().withName(stations.station()));
    }

    private static void readMonth(String line, RawWeatherBuilder out) {
        int year = Numbers.digits(line, ID_END, YEAR_END);
        int month = Numbers.digits(line, YEAR_END, MONTH_END);
        long firstDay = Numbers.date(line.substring(ID_END, MONTH_END), year, month, 1);
        int daysInMonth = YearMonth.of(year, month).lengthOfMonth();
        String element = line.substring(MONTH_END, ELEMENT_END);
        for (int day = 0; day < 31; day++) {
            int from = ELEMENT_END + day * DAY_WIDTH;
            if (from >= line.length()) {
                break;
            }
            double value = value(line, from, element);
            if (Double.isNaN(value)) {
                continue;
            }
            if (day >= daysInMonth) {
                throw new InputException(
                        InputError.BAD_DATE, year + "-" + month + "-" + (day + 1), "a day that the month has");
            }
            take(line, from, firstDay + day, element, value, out);
        }
    }

    private static void take(
            String line, int from, long epochDay, String element, double value, RawWeatherBuilder out) {
        char quality = charAt(line, from + VALUE_WIDTH + 1);
        out.markPresent(epochDay);
        GhcnElements.take(epochDay, element, value, charAt(line, from + VALUE_WIDTH), quality, out);
    }

    private static double value(String line, int from, String element) {
        int to = Math.min(line.length(), from + VALUE_WIDTH);
        int at = from;
        while (at < to && line.charAt(at) == ' ') {
            at++;
        }
        if (at == to) {
            return Double.NaN;
        }
        double value = Numbers.parse(line, at, to);
        if (value == Numbers.NO_NUMBER || value != Math.rint(value)) {
            throw new InputException(InputError.NOT_A_NUMBER, element, line.substring(from, to));
        }
        return value == GhcnElements.MISSING ? Double.NaN : value;
    }

    private static char charAt(String line, int at) {
        return at < line.length() ? line.charAt(at) : ' ';
    }
}
