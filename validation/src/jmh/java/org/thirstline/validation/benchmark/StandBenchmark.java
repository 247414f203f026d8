package org.thirstline.validation.benchmark;

import java.time.LocalDate;
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
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.engine.SeasonRun;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;

/** Time to simulate the thirty years of one zone of the Larkmoor example, weather and drivers at hand. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class StandBenchmark {

    /** A dry year, and the months after it until its harvest. */
    private static final LocalDate YEAR_START = LocalDate.of(2012, 1, 1);

    private static final LocalDate YEAR_HARVESTED = LocalDate.of(2013, 4, 10);

    private final Larkmoor larkmoor = new Larkmoor();
    private SeasonRuns runs;
    private SeasonRun thirtyYears;
    private SeasonRun oneYear;

    /** Prepares the runs. */
    @Setup
    public void prepare() {
        runs = new SeasonRuns(larkmoor.drivers, larkmoor.loam, Larkmoor.MAX_FILLED_DAYS);
        thirtyYears = runs.prepare(larkmoor.loam);
        DailyDrivers year =
                DailyDrivers.of(larkmoor.study.site(), larkmoor.weather.series().between(YEAR_START, YEAR_HARVESTED));
        oneYear = new SeasonRuns(year, larkmoor.loam, Larkmoor.MAX_FILLED_DAYS).prepare(larkmoor.loam);
    }

    /** One site-season: one year from January to its harvest, season totals only, into a result that is reused. */
    @Benchmark
    public double oneSeason() {
        oneYear.run();
        return oneYear.value(YEAR_START.getYear(), SeasonVariable.HARVESTED);
    }

    /** Thirty years of one zone, season totals only, into a result that is reused. */
    @Benchmark
    public double thirtyYears() {
        thirtyYears.run();
        return thirtyYears.value(YEAR_START.getYear(), SeasonVariable.HARVESTED);
    }

    /** The same without preparation, into records of its own. */
    @Benchmark
    public List<SeasonRecord> actualRun() {
        return PairedRuns.simulateActual(larkmoor.drivers, larkmoor.loam, Larkmoor.MAX_FILLED_DAYS);
    }

    /** A cell of a sweep with its drought penalty: two runs over weather at hand. */
    @Benchmark
    public List<SeasonRecord> penalty() {
        return runs.simulateWithPotential(larkmoor.loam);
    }

    /** All paired runs and the ledger, with daily output. */
    @Benchmark
    public StandResult pairedRuns() {
        return PairedRuns.simulate(larkmoor.drivers, larkmoor.loam, Larkmoor.MAX_FILLED_DAYS);
    }
}
