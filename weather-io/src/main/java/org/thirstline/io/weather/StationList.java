package org.thirstline.io.weather;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Where stations lie, from the lists that providers keep beside the weather: ECA&amp;D stations.txt and sources.txt, DWD station metadata,
 * GHCN-Daily ghcnd-stations.txt.
 */
final class StationList {

    private StationList() {}

    /** Returns whether the first lines of a file are a list of stations. */
    static boolean recognises(List<String> head) {
        return head.stream().anyMatch(StationList::isHeader)
                || head.stream()
                        .filter(line -> !line.isBlank())
                        .findFirst()
                        .map(StationList::ghcn)
                        .isPresent();
    }

    private static boolean isHeader(String line) {
        return isEcadHeader(line) || isDwdHeader(line);
    }

    private static boolean isEcadHeader(String line) {
        String plain = line.replace(" ", "").toUpperCase(Locale.ROOT);
        return plain.startsWith("STAID,") && plain.contains(",LAT,LON,HG");
    }

    private static boolean isDwdHeader(String line) {
        String plain = line.replace(" ", "").toLowerCase(Locale.ROOT);
        return plain.startsWith("stations_id;stationshoehe;geogr.breite");
    }

    /** Returns the places by station. */
    static Map<String, SiteInfo> read(LineReader lines) {
        Map<String, SiteInfo> sites = new HashMap<>();
        String line = lines.nextFilled();
        while (line != null && !isHeader(line)) {
            Map.Entry<String, SiteInfo> entry = ghcn(line);
            if (entry != null) {
                sites.put(entry.getKey(), entry.getValue());
            }
            line = lines.nextFilled();
        }
        if (line != null && isDwdHeader(line)) {
            readDwd(lines, sites);
        } else if (line != null) {
            readEcad(Table.under(line, lines), sites);
        }
        return sites;
    }

    private static void readEcad(Table table, Map<String, SiteInfo> sites) {
        int name = table.find("STANAME", "SOUNAME");
        int height = table.find("HGHT", "HGTH");
        int latitude = table.find("LAT");
        int longitude = table.find("LON");
        while (table.next()) {
            Double elevation = orNull(table.number(height));
            Double north = degrees(table.text(latitude));
            Double east = degrees(table.text(longitude));
            sites.putIfAbsent(table.text(0), new SiteInfo(table.textOrNull(name), north, east, elevation));
        }
    }

    /** One line for each time a station has stood in one place; the last is where it stands. */
    private static void readDwd(LineReader lines, Map<String, SiteInfo> sites) {
        Fields fields = new Fields(';');
        for (String line = lines.nextFilled(); line != null; line = lines.nextFilled()) {
            fields.split(line);
            if (fields.count() >= 7 && fields.digits(0) >= 0) {
                sites.put(
                        Integer.toString(fields.digits(0)),
                        new SiteInfo(
                                fields.text(6),
                                orNull(fields.number(2)),
                                orNull(fields.number(3)),
                                orNull(fields.number(1))));
            }
        }
    }

    /** A line of ghcnd-stations.txt, or null. */
    private static Map.@Nullable Entry<String, SiteInfo> ghcn(String line) {
        if (line.length() < 38 || line.charAt(11) != ' ' || line.charAt(20) != ' ' || line.charAt(30) != ' ') {
            return null;
        }
        String id = line.substring(0, 11);
        Double latitude = number(line.substring(12, 20));
        Double longitude = number(line.substring(21, 30));
        Double elevation = number(line.substring(31, 37));
        if (latitude == null || longitude == null || elevation == null || id.indexOf(' ') >= 0) {
            return null;
        }
        String name = line.substring(Math.min(line.length(), 41), Math.min(line.length(), 71))
                .trim();
        return Map.entry(id, new SiteInfo(name, latitude, longitude, elevation == -999.9 ? null : elevation));
    }

    private static @Nullable Double number(String text) {
        String trimmed = text.trim();
        return orNull(trimmed.isEmpty() ? Double.NaN : Numbers.parse(trimmed, 0, trimmed.length()));
    }

    private static @Nullable Double orNull(double value) {
        return Double.isFinite(value) ? (Double) value : null;
    }

    /** Degrees, minutes and seconds as +046:12:00. */
    private static @Nullable Double degrees(String text) {
        String[] parts = text.replace("+", "").replace("-", "").split(":", -1);
        if (parts.length != 3) {
            return null;
        }
        double value = 0.0;
        for (int i = 2; i >= 0; i--) {
            int part = Numbers.digits(parts[i], 0, parts[i].length());
            if (part < 0) {
                return null;
            }
            value = value / 60.0 + part;
        }
        return text.startsWith("-") ? -value : value;
    }
}
