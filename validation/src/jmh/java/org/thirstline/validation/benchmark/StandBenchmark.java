package org.thirstline.validation.benchmark;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;

/** Time to simulate the thirty years of one zone of the Larkmoor example, weather and drivers at hand. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class StandBenchmark {

    private static final int MAX_FILLED_DAYS = 10;

    private DailyDrivers drivers;
    private FieldConditions field;

    /** Reads the example. */
    @Setup
    public void read() {
        Path beside = Path.of("docs/examples/larkmoor/study.yaml");
        Study study =
                StudyReader.read(Files.exists(beside) ? beside : Path.of("..").resolve(beside));
        drivers = DailyDrivers.of(study.site(), StudyWeather.read(study).series());
        field = study.field(study.zones().get(0));
    }

    /** One run, season totals only. */
    @Benchmark
    public List<SeasonRecord> actualRun() {
        return PairedRuns.simulateActual(drivers, field, MAX_FILLED_DAYS);
    }

    /** All paired runs and the ledger, with daily output. */
    @Benchmark
    public StandResult pairedRuns() {
        return PairedRuns.simulate(drivers, field, MAX_FILLED_DAYS);
    }
}
