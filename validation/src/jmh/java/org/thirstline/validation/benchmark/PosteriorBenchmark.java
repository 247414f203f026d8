package org.thirstline.validation.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.validation.recovery.SyntheticTrial;
import org.thirstline.validation.recovery.SyntheticTrial.Beliefs;

/** One posterior evaluation of four parameters on six sites, each with a stand of its own. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class PosteriorBenchmark {

    private static final double WIDEST = 0.2;
    private static final int POINTS = 32;

    /** Measured years of each site: ten are sixty plot-years. */
    @Param("10")
    public int years;

    private CalibrationProblem problem;
    private int turn;

    /** Writes and reads the trial. */
    @Setup
    public void prepare() throws IOException {
        problem = SyntheticTrial.problem(
                Files.createTempDirectory("thirstline-benchmark"), SyntheticTrial.SITES, years, Beliefs.NONE, "10 %");
    }

    /** Another point every time. */
    @Benchmark
    public double evaluation() {
        double[] point = problem.start();
        point[0] += WIDEST * (turn % POINTS) / POINTS;
        turn++;
        return problem.logLikelihood(point);
    }
}
