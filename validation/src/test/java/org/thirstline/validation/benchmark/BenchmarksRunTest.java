package org.thirstline.validation.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collection;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.BenchmarkList;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Every benchmark still runs. Once, in this process, cold: nothing is said about its speed. */
class BenchmarksRunTest {

    @Test
    void everyBenchmarkRuns() throws RunnerException {
        Options once = new OptionsBuilder()
                .include("org\\.thirstline\\.validation\\.benchmark\\..*")
                .mode(Mode.SingleShotTime)
                .forks(0)
                .warmupIterations(0)
                .measurementIterations(1)
                .timeout(TimeValue.minutes(2))
                .timeUnit(TimeUnit.MILLISECONDS)
                .shouldFailOnError(true)
                .verbosity(VerboseMode.SILENT)
                .build();

        Collection<RunResult> results = new Runner(once).run();

        List<String> ran = results.stream()
                .map(result -> result.getParams().getBenchmark().replaceFirst(".*\\.(\\w+\\.\\w+)$", "$1"))
                .toList();
        assertThat(ran)
                .contains(
                        "StandBenchmark.oneSeason",
                        "StandBenchmark.thirtyYears",
                        "StandBenchmark.pairedRuns",
                        "CalibrationBenchmark.ensembleMember",
                        "CalibrationBenchmark.leastSquaresFit",
                        "WeatherBenchmark.reading",
                        "DriversBenchmark.referenceEvapotranspiration",
                        "ChartBenchmark.png")
                .hasSize(BenchmarkList.defaultList().getAll(null, List.of()).size());
    }
}
