package org.thirstline.calibration.sensitivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.calibration.response.Interval;
import org.thirstline.model.error.InputException;

class SobolAnalysisTest {

    private static final SobolAnalysis.Options OPTIONS = new SobolAnalysis.Options(4096, 300, 1, 2);

    private static List<SobolIndex> indices(OutputModel model, List<SensitivityInput> inputs, long seed) {
        return SobolAnalysis.estimate(
                        model, inputs, new SobolAnalysis.Options(4096, 300, seed, 2), ProgressListener.NONE)
                .get(0);
    }

    /** Within bootstrap error: inside the 95 % interval widened by half, for all indices and seeds together. */
    private static void assertWithinError(double expected, double estimate, Interval interval) {
        double half = 0.5 * (interval.upper() - interval.lower());
        assertThat(estimate).isCloseTo(expected, within(1.5 * half));
    }

    private static void assertIndices(List<SobolIndex> indices, double[][] expected) {
        for (int i = 0; i < indices.size(); i++) {
            SobolIndex index = indices.get(i);
            assertWithinError(expected[0][i], index.first(), index.firstInterval());
            assertWithinError(expected[1][i], index.total(), index.totalInterval());
            assertThat(index.totalInterval().upper() - index.totalInterval().lower())
                    .isLessThan(0.1);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void ishigamiIndicesAreTheAnalyticOnes(long seed) {
        double[][] expected = TestFunctions.ishigamiIndices();

        // As printed in Saltelli and others (2008), Global sensitivity analysis, from memory.
        assertThat(expected[0]).containsExactly(new double[] {0.3139, 0.4424, 0.0}, within(5.0e-5));
        assertIndices(
                indices(x -> new double[] {TestFunctions.ishigami(x)}, TestFunctions.ishigamiInputs(), seed), expected);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void gFunctionIndicesAreTheAnalyticOnes(long seed) {
        assertIndices(
                indices(x -> new double[] {TestFunctions.g(x)}, TestFunctions.inputs(8, 0.0, 1.0), seed),
                TestFunctions.gIndices());
    }

    /** A sum of independent normals shares variance by the squares of their deviations, 9 to 16 here. */
    @Test
    void inputsMayFollowADistribution() {
        Prior narrow = Prior.normal(5.0, 3.0, -25.0, 35.0);
        Prior wide = Prior.normal(0.0, 4.0, -40.0, 40.0);
        List<SensitivityInput> inputs =
                List.of(new SensitivityInput("narrow", narrow::quantile), new SensitivityInput("wide", wide::quantile));

        List<SobolIndex> indices = indices(x -> new double[] {x[0] + x[1]}, inputs, 1);

        assertThat(indices.get(0).first()).isCloseTo(0.36, within(0.005));
        assertThat(indices.get(1).total()).isCloseTo(0.64, within(0.005));
    }

    @Test
    void outputsAreJudgedEachOnItsOwnAndThreadsDoNotMatter() {
        OutputModel model = x -> new double[] {x[0], TestFunctions.ishigami(x), 7.0};
        List<List<SobolIndex>> two =
                SobolAnalysis.estimate(model, TestFunctions.ishigamiInputs(), OPTIONS, ProgressListener.NONE);
        List<List<SobolIndex>> one = SobolAnalysis.estimate(
                model, TestFunctions.ishigamiInputs(), new SobolAnalysis.Options(4096, 300, 1, 1), (done, total) -> {});

        assertThat(one).isEqualTo(two);
        assertThat(two.get(0).get(0).total()).isCloseTo(1.0, within(0.01));
        assertThat(two.get(0).get(1).total()).isZero();
        assertThat(two.get(2).get(0).total()).isNaN();
    }

    @Test
    void everyRunIsReported() {
        List<Integer> seen = new ArrayList<>();
        SobolAnalysis.estimate(
                x -> x, TestFunctions.inputs(3, 0.0, 1.0), new SobolAnalysis.Options(64, 100, 1, 3), (done, total) -> {
                    assertThat(total).isEqualTo(64 * 5);
                    seen.add(done);
                });

        assertThat(seen).isSorted().endsWith(64 * 5);
    }

    @Test
    void anOutputThatIsNoNumberIsRefusedWithThePoint() {
        assertThatThrownBy(() ->
                        indices(x -> new double[] {1.0, Double.POSITIVE_INFINITY}, TestFunctions.ishigamiInputs(), 1))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(CalibrationError.OUTPUT_NOT_FINITE));
    }
}
