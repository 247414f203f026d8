package org.thirstline.validation.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Site;

/** Time to read thirty years of GHCN-Daily in fixed width, and to read, check and complete them. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
public class WeatherReadingBenchmark {

    private static final String[] ELEMENTS = {"TMAX", "TMIN", "PRCP", "SNOW", "SNWD", "AWND", "TSUN", "WSF2"};
    private static final Site SITE = new Site("Larkmoor field station (invented)", 44.6, 214.0);

    private Path file = Path.of("");

    /** Writes thirty invented years. */
    @Setup
    public void write() throws IOException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(1991L);
        StringBuilder text = new StringBuilder();
        for (YearMonth month = YearMonth.of(1991, 1); month.getYear() < 2021; month = month.plusMonths(1)) {
            for (int element = 0; element < ELEMENTS.length; element++) {
                text.append(String.format(
                        Locale.ROOT, "USW00099999%d%02d%s", month.getYear(), month.getMonthValue(), ELEMENTS[element]));
                for (int day = 1; day <= 31; day++) {
                    boolean exists = day <= month.lengthOfMonth();
                    text.append(
                            exists ? String.format(Locale.ROOT, "%5d  7", value(element, month, random)) : "-9999   ");
                }
                text.append('\n');
            }
        }
        file = Files.writeString(Files.createTempFile("thirty-years", ".dly"), text);
    }

    private static int value(int element, YearMonth month, RandomGenerator random) {
        int warm = (int) (250.0 * Math.sin(Math.PI * month.getMonthValue() / 13.0)) - 80;
        return switch (element) {
            case 0 -> warm + 60 + random.nextInt(60);
            case 1 -> warm - 60 + random.nextInt(60);
            case 2 -> Math.max(0, random.nextInt(400) - 280);
            default -> random.nextInt(60);
        };
    }

    /** Deletes the file. */
    @TearDown
    public void delete() throws IOException {
        Files.delete(file);
    }

    /** Reads. */
    @Benchmark
    public RawWeather read() {
        return WeatherReaders.read(file, ReadOptions.DEFAULT);
    }

    /** Reads, checks, and fills gaps. */
    @Benchmark
    public WeatherRecord readCheckAndComplete() {
        return WeatherAssembly.assemble(WeatherReaders.read(file, ReadOptions.DEFAULT), SITE, AssemblySettings.DEFAULT);
    }
}
