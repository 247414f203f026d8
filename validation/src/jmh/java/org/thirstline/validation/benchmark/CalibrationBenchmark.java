package org.thirstline.validation.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.thirstline.calibration.fit.FitOptions;
import org.thirstline.calibration.fit.FitParameter;
import org.thirstline.calibration.fit.FitResult;
import org.thirstline.calibration.fit.LeastSquaresFit;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Thirty years of one zone under many values of the crop's parameters: what calibration and uncertainty do all day. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class CalibrationBenchmark {

    private static final int SETS = 32;

    private final Larkmoor larkmoor = new Larkmoor();
    private final List<FieldConditions> ensemble = new ArrayList<>();
    private SeasonRuns runs;
    private double[] observed;

    /** Varies two parameters; the yields to be met are those of the crop as it is. */
    @Setup
    public void prepare() {
        runs = new SeasonRuns(larkmoor.drivers, larkmoor.loam, Larkmoor.MAX_FILLED_DAYS);
        observed = yields(larkmoor.loam);
        for (int i = 0; i < SETS; i++) {
            double share = 0.9 + 0.2 * i / (SETS - 1.0);
            ensemble.add(field(share, 2.0 - share));
        }
    }

    private FieldConditions field(double efficiencyShare, double extinctionShare) {
        FieldConditions usual = larkmoor.loam;
        CropParameters crop = usual.crop();
        CropParameters varied = crop.with(
                        CropParameter.RADIATION_USE_EFFICIENCY,
                        efficiencyShare * crop.get(CropParameter.RADIATION_USE_EFFICIENCY))
                .with(
                        CropParameter.EXTINCTION_COEFFICIENT,
                        extinctionShare * crop.get(CropParameter.EXTINCTION_COEFFICIENT));
        return usual.withCrop(varied);
    }

    private double[] yields(FieldConditions field) {
        return runs.simulate(field).stream()
                .filter(SeasonRecord::isComplete)
                .mapToDouble(season -> season.value(SeasonVariable.HARVESTED))
                .toArray();
    }

    /** One member of an ensemble over parameters. */
    @Benchmark
    @OperationsPerInvocation(SETS)
    public double ensembleMember() {
        double sum = 0.0;
        for (FieldConditions field : ensemble) {
            sum += yields(field)[0];
        }
        return sum;
    }

    /** A whole least-squares fit of two parameters to 29 yields. */
    @Benchmark
    public FitResult leastSquaresFit() {
        return LeastSquaresFit.fit(
                this::residuals,
                List.of(
                        FitParameter.between("radiation-use efficiency", 0.95, 0.8, 1.2),
                        FitParameter.between("extinction coefficient", 1.05, 0.8, 1.2)),
                FitOptions.smooth());
    }

    private double[] residuals(double[] shares) {
        double[] residuals = yields(field(shares[0], shares[1]));
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] -= observed[i];
        }
        return residuals;
    }
}
