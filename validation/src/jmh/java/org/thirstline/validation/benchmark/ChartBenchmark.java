package org.thirstline.validation.benchmark;

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
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.StudySimulation;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.YieldByYear;
import org.thirstline.charts.YieldByYearChart;
import org.thirstline.charts.output.ChartFormat;
import org.thirstline.charts.output.ChartWriter;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;

/** Time to draw the yields of thirty years at slide size. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class ChartBenchmark {

    private final ChartStyle style =
            new ChartStyle(ChartTheme.LIGHT, ChartSize.SLIDE, UnitSystem.SI, "Thirstline simulation", true);
    private YieldByYear years;

    /** Simulates the example. */
    @Setup
    public void simulate() {
        Larkmoor larkmoor = new Larkmoor();
        StudyOutcome outcome = StudySimulation.run(larkmoor.study, larkmoor.weather, 1);
        ZoneOutcome zone = outcome.zones().get(0);
        years = new YieldByYear(zone.zone().name(), zone.stand().seasons(), outcome.classes());
    }

    /** As SVG. */
    @Benchmark
    public byte[] svg() {
        return ChartWriter.bytes(YieldByYearChart.of(years, style), ChartFormat.SVG);
    }

    /** As PNG. */
    @Benchmark
    public byte[] png() {
        return ChartWriter.bytes(YieldByYearChart.of(years, style), ChartFormat.PNG);
    }
}
