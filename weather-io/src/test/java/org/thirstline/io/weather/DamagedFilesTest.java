package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.Site;

/** Law: whatever happens to a file, it is read, or refused as input; it never brings the program down. */
class DamagedFilesTest {

    private static final int DAMAGES = 400;
    private static final Site SITE = new Site("somewhere", 45.0, 100.0);
    private static final byte[] ODD = "\n\r\0\"',;-.#9eEN \u00ff".getBytes(StandardCharsets.ISO_8859_1);

    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource
    void damagedFilesAreReadOrRefused(WeatherFormat format) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20_120_731L + format.ordinal());
        byte[] whole = WeatherSamples.all().get(format).getBytes(StandardCharsets.UTF_8);
        int refused = 0;
        for (int i = 0; i < DAMAGES; i++) {
            byte[] damaged = damage(whole, random);
            boolean forced = i % 2 == 0;
            refused +=
                    isRefused(damaged, forced ? ReadOptions.DEFAULT.withFormat(format) : ReadOptions.DEFAULT) ? 1 : 0;
        }
        assertThat(refused).as("files refused").isBetween(DAMAGES / 20, DAMAGES - 1);
    }

    private boolean isRefused(byte[] damaged, ReadOptions options) {
        boolean[] refused = {false};
        assertThatCode(() -> {
                    try {
                        RawWeather raw = read(damaged, options, refused);
                        WeatherAssembly.assemble(raw, SITE, AssemblySettings.DEFAULT.withRainRequired(false));
                    } catch (InputException e) {
                        assertThat(e.getMessage()).isNotBlank();
                    }
                })
                .as(() -> new String(damaged, StandardCharsets.ISO_8859_1))
                .doesNotThrowAnyException();
        return refused[0];
    }

    private RawWeather read(byte[] damaged, ReadOptions options, boolean[] refused) {
        try {
            return WeatherReaders.read(WeatherSamples.file(folder, damaged), options);
        } catch (InputException e) {
            refused[0] = true;
            throw e;
        }
    }

    private static byte[] damage(byte[] whole, RandomGenerator random) {
        byte[] bytes = whole.clone();
        int wounds = 1 + random.nextInt(3);
        for (int i = 0; i < wounds && bytes.length > 2; i++) {
            int at = random.nextInt(bytes.length);
            bytes = switch (random.nextInt(5)) {
                case 0 -> Arrays.copyOf(bytes, at);
                case 1 -> without(bytes, at, Math.min(bytes.length, at + 1 + random.nextInt(30)));
                case 2 -> replaced(bytes, at, ODD[random.nextInt(ODD.length)]);
                case 3 -> replaced(bytes, at, (byte) ('0' + random.nextInt(10)));
                default -> withPartTwice(bytes, at, Math.min(bytes.length, at + 1 + random.nextInt(200)));
            };
        }
        return bytes;
    }

    private static byte[] without(byte[] bytes, int from, int to) {
        byte[] result = Arrays.copyOf(bytes, bytes.length - (to - from));
        System.arraycopy(bytes, to, result, from, bytes.length - to);
        return result;
    }

    private static byte[] replaced(byte[] bytes, int at, byte value) {
        byte[] result = bytes.clone();
        result[at] = value;
        return result;
    }

    private static byte[] withPartTwice(byte[] bytes, int from, int to) {
        byte[] result = Arrays.copyOf(bytes, bytes.length + to - from);
        System.arraycopy(bytes, from, result, to, bytes.length - from);
        return result;
    }
}
