package org.thirstline.io.weather;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/**
 * ECA&amp;D series of one element and station, blended or not; the files of a station are joined afterwards. What the source marks as
 * suspect is kept and reported, what it marks as missing is missing.
 */
final class EcadReader implements FormatReader {

    private static final double MISSING = -9999.0;
    private static final double VALID = 0.0;
    private static final double SUSPECT = 1.0;
    private static final double WIND_HEIGHT_M = 10.0;
    private static final Pattern STATION = Pattern.compile("station (.*?) *\\(STAID: *([0-9]+)\\)");

    private record Element(String code, RawVariable variable, DailyUnit unit) {}

    private static final List<Element> ELEMENTS = List.of(
            new Element("TX", RawVariable.TMAX, DailyUnit.TENTH),
            new Element("TN", RawVariable.TMIN, DailyUnit.TENTH),
            new Element("TG", RawVariable.TMEAN, DailyUnit.TENTH),
            new Element("RR", RawVariable.RAIN, DailyUnit.TENTH),
            new Element("QQ", RawVariable.SOLAR, DailyUnit.WATT_PER_M2),
            new Element("SS", RawVariable.SUNSHINE, DailyUnit.TENTH),
            new Element("HU", RawVariable.HUMIDITY_MEAN, DailyUnit.SAME),
            new Element("FG", RawVariable.WIND, DailyUnit.TENTH));

    @Override
    public boolean recognises(List<String> head) {
        return head.stream().anyMatch(EcadReader::isHeader);
    }

    private static boolean isHeader(String line) {
        String plain = line.replace(" ", "").toUpperCase(Locale.ROOT);
        String rest = plain.startsWith("STAID,") ? plain.substring(6) : plain;
        return rest.matches("SOUID,DATE,[A-Z0-9]{2,4},Q_[A-Z0-9]{2,4}");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String line = lines.next();
        StringBuilder preface = new StringBuilder();
        while (line != null && !isHeader(line)) {
            preface.append(line).append(' ');
            line = lines.next();
        }
        if (line == null) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH, WeatherFormat.ECAD.description(), "no line SOUID,DATE,...");
        }
        station(preface, options, out);
        Table table = Table.under(line, lines);
        readTable(table, element(table), out);
    }

    private static void station(CharSequence preface, ReadOptions options, RawWeatherBuilder out) {
        Matcher matcher = STATION.matcher(preface);
        if (!matcher.find()) {
            return;
        }
        Stations stations = new Stations(options.station());
        String found = matcher.group(2);
        stations.accepts(found);
        stations.finish();
        out.setStation(found);
        out.setSite(out.site().withName(matcher.group(1)));
    }

    private static Element element(Table table) {
        for (Element element : ELEMENTS) {
            if (table.find(element.code()) != Table.ABSENT) {
                return element;
            }
        }
        throw new InputException(
                InputError.FORMAT_MISMATCH,
                "ECA&D",
                "no element that is used; used are "
                        + String.join(", ", ELEMENTS.stream().map(Element::code).toList()));
    }

    private static void readTable(Table table, Element element, RawWeatherBuilder out) {
        int date = table.require("the date", "DATE");
        int value = table.find(element.code());
        int quality = table.require("the quality", "Q_" + element.code());
        if (element.variable() == RawVariable.WIND) {
            out.setWindHeightM(WIND_HEIGHT_M);
            out.assume(RawVariable.WIND, "measured at 10 m; the file does not state the height");
        }
        while (table.next()) {
            long day = Numbers.compactDate(table.text(date));
            out.beginDay(day);
            double found = table.number(value);
            double mark = table.number(quality);
            if (found != MISSING && (mark == VALID || mark == SUSPECT)) {
                double ours = element.unit().convert(found);
                out.set(element.variable(), ours);
                if (mark == SUSPECT) {
                    String text = Double.toString(Math.rint(ours * 1.0e4) / 1.0e4);
                    out.addIssue(
                            day, element.variable(), IssueKind.SUSPECT, text, "marked as suspect by the source; kept");
                }
            }
        }
    }
}
