package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.error.InputError;

/** Law: no file, however large, fills the memory or hangs. */
@Timeout(30)
class HugeFilesTest {

    private static final byte[] MEGABYTE = new byte[1 << 20];

    @TempDir
    Path folder;

    private Path endless(String start, char filler, int megabytes) throws IOException {
        Arrays.fill(MEGABYTE, (byte) filler);
        Path file = folder.resolve("huge");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(start.getBytes(StandardCharsets.UTF_8));
            for (int i = 0; i < megabytes; i++) {
                out.write(MEGABYTE);
            }
        }
        return file;
    }

    @Test
    void anEndlessLineIsRefusedEarly() throws IOException {
        Path plain = endless("date,tmin_c,tmax_c\n2012-07-01,", '1', 200);
        refused(InputError.FILE_NOT_TEXT, () -> WeatherReaders.read(plain, ReadOptions.DEFAULT));
        Path first = endless("", 'a', 200);
        refused(InputError.FILE_NOT_TEXT, () -> WeatherReaders.read(first, ReadOptions.DEFAULT));
    }

    @Test
    void anEndlessDocumentIsRefused() throws IOException {
        Path json = endless("{\"daily\": \"", 'a', 100);
        refused(InputError.LINE_MALFORMED, () -> WeatherReaders.read(json, ReadOptions.DEFAULT));
        Path nested = endless("", '[', 1);
        refused(InputError.LINE_MALFORMED, () -> WeatherReaders.read(nested, ReadOptions.DEFAULT));
        Path numbers = endless("{\"daily\": {\"time\": [1", '1', 1);
        refused(InputError.LINE_MALFORMED, () -> WeatherReaders.read(numbers, ReadOptions.DEFAULT));
    }

    @Test
    void oneStationOfAYearOfManyIsPickedOut() throws IOException {
        Path file = folder.resolve("year");
        YearOfMany.write(file, 200);
        RawWeather raw = WeatherReaders.read(file, ReadOptions.DEFAULT.withStation(YearOfMany.station(123)));
        assertThat(raw.days()).isEqualTo(366);
        assertThat(raw.value(RawVariable.TMAX, 182)).isEqualTo(YearOfMany.value(0, 123, 183) / 10.0);
    }
}
