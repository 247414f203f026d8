package org.thirstline.io.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thirstline.io.error.InputError;
import org.thirstline.model.error.InputException;

/** GHCN-Daily as a table: one line a day, each element followed by its attributes in one quoted field. */
final class GhcnDailyAccessReader implements FormatReader {

    private static final String ATTRIBUTES = "_attributes";

    private record Element(String name, int value, int attributes) {}

    @Override
    public boolean recognises(List<String> head) {
        String header = head.isEmpty() ? "" : head.get(0).toUpperCase(Locale.ROOT);
        return header.replace("\"", "").startsWith("STATION,")
                && header.contains("DATE")
                && header.contains("_ATTRIBUTES");
    }

    @Override
    public void read(LineReader lines, ReadOptions options, RawWeatherBuilder out) {
        String header = lines.nextFilled();
        Table table = Table.under(header == null ? "" : header, lines);
        int station = table.require("the station", "station");
        int date = table.require("the date", "date");
        List<Element> elements = elements(table);
        Stations stations = new Stations(options.station());
        boolean placed = false;
        while (table.next()) {
            if (!stations.accepts(table.text(station))) {
                continue;
            }
            if (!placed) {
                out.setSite(site(table));
                placed = true;
            }
            long day = Numbers.isoDate(table.text(date));
            out.beginDay(day);
            for (Element element : elements) {
                take(table, element, day, out);
            }
        }
        stations.finish();
    }

    private static List<Element> elements(Table table) {
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < table.names().size(); i++) {
            String name = table.names().get(i);
            int attributes = table.find(name + ATTRIBUTES);
            if (attributes != Table.ABSENT) {
                elements.add(new Element(name.toUpperCase(Locale.ROOT), i, attributes));
            }
        }
        if (elements.isEmpty()) {
            throw new InputException(
                    InputError.UNIT_NOT_STATED,
                    "its values (tables without attribute columns come in metric and in US units)",
                    "rename the columns to date, tmin_c or tmin_f, tmax_c or tmax_f, rain_mm or rain_in");
        }
        if (elements.stream().noneMatch(element -> GhcnElements.isUsed(element.name()))) {
            throw new InputException(
                    InputError.FORMAT_MISMATCH,
                    WeatherFormat.GHCN_DAILY_ACCESS.description(),
                    "no element that is used, as TMAX or PRCP, among "
                            + String.join(
                                    ", ", elements.stream().map(Element::name).toList())
                            + "; a summary of the day (GSOD) needs a table of your own with its columns MAX, MIN, PRCP");
        }
        return elements;
    }

    private static SiteInfo site(Table table) {
        double latitude = table.number(table.find("latitude"));
        double longitude = table.number(table.find("longitude"));
        double elevation = table.number(table.find("elevation"));
        String name = table.textOrNull(table.find("name", "station"));
        boolean known = !Double.isNaN(elevation) && elevation > -999.0;
        return new SiteInfo(
                name,
                Double.isNaN(latitude) ? null : (Double) latitude,
                Double.isNaN(longitude) ? null : (Double) longitude,
                known ? (Double) elevation : null);
    }

    private static void take(Table table, Element element, long day, RawWeatherBuilder out) {
        if (!GhcnElements.isUsed(element.name()) && !GhcnElements.isSumOfDays(element.name())) {
            return;
        }
        double value = table.number(element.value());
        if (Double.isNaN(value) || value == GhcnElements.MISSING) {
            return;
        }
        // measurement, quality and source flag, with commas between
        String attributes = table.text(element.attributes());
        int comma = attributes.indexOf(',');
        int second = attributes.indexOf(',', comma + 1);
        String measurement = comma < 0 ? attributes : attributes.substring(0, comma);
        String quality = comma < 0 ? "" : attributes.substring(comma + 1, second < 0 ? attributes.length() : second);
        GhcnElements.take(day, element.name(), value, GhcnElements.flag(measurement), GhcnElements.flag(quality), out);
    }
}
