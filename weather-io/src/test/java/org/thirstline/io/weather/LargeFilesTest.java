package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.error.InputError;

/**
 * Files of gigabytes in a heap of 512 MB, which the profile {@code long-tests} sets. Prints time and the most memory held. {@link
 * HugeFilesTest} has the same in small.
 */
@Tag("long")
class LargeFilesTest {

    private static final double NANOS = 1e-9;
    private static final int MEGABYTE = 1 << 20;

    /** The reading may hold its own buffers and one station; a heap of 512 MB would allow sixteen times as much. */
    private static final int MOST_HELD_MB = 32;

    @TempDir
    Path folder;

    @Test
    void oneStationOfAGigabyteOfAYear() throws IOException {
        Path file = folder.resolve("2012.csv");
        long bytes = YearOfMany.write(file, 12_500);
        assertThat(bytes).isGreaterThan(1_000_000_000L);
        long before = held();
        long start = System.nanoTime();
        RawWeather raw = WeatherReaders.read(file, ReadOptions.DEFAULT.withStation(YearOfMany.station(11_111)));
        double seconds = (System.nanoTime() - start) * NANOS;
        long after = held();
        System.out.printf(
                Locale.ROOT,
                "LARGE | one station of a by-year file of %d MB | %.1f s | %.0f MB/s | heap limit %d MB | held before %d MB, after %d"
                        + " MB%n",
                bytes / MEGABYTE,
                seconds,
                bytes / seconds / MEGABYTE,
                Runtime.getRuntime().maxMemory() / MEGABYTE,
                before,
                after);
        assertThat(raw.days()).isEqualTo(366);
        for (int day = 0; day < 366; day++) {
            assertThat(raw.value(RawVariable.TMAX, day)).isEqualTo(YearOfMany.value(0, 11_111, day + 1) / 10.0);
            assertThat(raw.value(RawVariable.RAIN, day)).isEqualTo(YearOfMany.value(2, 11_111, day + 1) / 10.0);
        }
        assertThat(after - before).isLessThan(MOST_HELD_MB);
    }

    @Test
    void aLineOfTwoGigabytes() throws IOException {
        Path file = folder.resolve("line.csv");
        byte[] ones = new byte[MEGABYTE];
        Arrays.fill(ones, (byte) '1');
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            out.write("date,tmin_c,tmax_c\n2012-07-01,1,2\n2012-07-02,".getBytes(StandardCharsets.UTF_8));
            for (int i = 0; i < 2048; i++) {
                out.write(ones);
            }
        }
        assertThat(Files.size(file)).isGreaterThan(2_147_483_648L);
        long start = System.nanoTime();
        refused(InputError.FILE_NOT_TEXT, () -> WeatherReaders.read(file, ReadOptions.DEFAULT));
        System.out.printf(
                Locale.ROOT, "LARGE | a line of 2 GB | refused after %.2f s%n", (System.nanoTime() - start) * NANOS);
    }

    /** Memory that lives after a collection [MB]. */
    private static long held() {
        System.gc();
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                        .filter(pool -> pool.getType() == MemoryType.HEAP)
                        .map(MemoryPoolMXBean::getUsage)
                        .mapToLong(usage -> usage.getUsed())
                        .sum()
                / MEGABYTE;
    }
}
