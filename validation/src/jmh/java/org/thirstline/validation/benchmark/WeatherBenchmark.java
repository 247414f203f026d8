package org.thirstline.validation.benchmark;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;

/** Time to read thirty years of daily weather from a plain table. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class WeatherBenchmark {

    private final Larkmoor larkmoor = new Larkmoor();
    private final Path file = larkmoor.study.weather().files().get(0);

    /** The file alone. */
    @Benchmark
    public RawWeather reading() {
        return WeatherReaders.read(file, ReadOptions.DEFAULT);
    }

    /** Read, checked and completed, as a study does. */
    @Benchmark
    public WeatherRecord readingAndChecks() {
        return StudyWeather.read(larkmoor.study);
    }
}
