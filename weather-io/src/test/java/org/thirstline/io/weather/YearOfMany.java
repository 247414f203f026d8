package org.thirstline.io.weather;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;

/** Writes a GHCN-Daily file by year as large as one likes: day after day, in it station after station, as the provider sorts it. */
final class YearOfMany {

    private static final String[] ELEMENTS = {"TMAX", "TMIN", "PRCP", "SNOW", "SNWD", "TOBS"};
    private static final int YEAR = 2012;

    private YearOfMany() {}

    /** Returns the value of an element, station and day in the unit of the file. */
    static int value(int element, int station, int dayOfYear) {
        int warm = 100 + station % 200 - Math.abs(dayOfYear - 200) / 2;
        return switch (element) {
            case 0 -> warm + 60;
            case 1 -> warm - 40;
            case 2 -> (station + dayOfYear) % 4 == 0 ? station % 300 : 0;
            default -> dayOfYear % 7;
        };
    }

    static String station(int number) {
        return String.format("USC%08d", number);
    }

    /** Writes a year and returns its bytes. */
    static long write(Path file, int stations) throws IOException {
        byte[][] ids = new byte[stations][];
        for (int i = 0; i < stations; i++) {
            ids[i] = station(i).getBytes(StandardCharsets.US_ASCII);
        }
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            LocalDate date = LocalDate.of(YEAR, 1, 1);
            for (; date.getYear() == YEAR; date = date.plusDays(1)) {
                for (int element = 0; element < ELEMENTS.length; element++) {
                    String middle = "," + date.format(DateTimeFormatter.BASIC_ISO_DATE) + "," + ELEMENTS[element] + ",";
                    byte[] text = middle.getBytes(StandardCharsets.US_ASCII);
                    for (int i = 0; i < stations; i++) {
                        out.write(ids[i]);
                        out.write(text);
                        String rest = value(element, i, date.getDayOfYear()) + ",,,7,0700\n";
                        out.write(rest.getBytes(StandardCharsets.US_ASCII));
                    }
                }
            }
        }
        return Files.size(file);
    }
}
