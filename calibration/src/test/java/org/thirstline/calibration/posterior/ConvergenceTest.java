package org.thirstline.calibration.posterior;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.model.error.InputException;

/** Diagnostics against the R package of the paper's authors; source and version stand in the data file. */
class ConvergenceTest {

    /** Both sides sum in double precision, one of them through a Fourier transform. */
    private static final Percentage ROUNDING = Percentage.withPercentage(1.0e-7);

    private static List<String> lines(String file) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                ConvergenceTest.class.getResourceAsStream("/convergence/" + file), StandardCharsets.UTF_8))) {
            return reader.lines().filter(line -> !line.startsWith("#")).skip(1).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double[][] chains(String name) {
        return lines("draws.csv").stream()
                .map(line -> line.split(","))
                .filter(cells -> cells[0].equals(name))
                .map(cells -> Arrays.stream(cells)
                        .skip(2)
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    static Stream<String> expected() {
        return lines("expected.csv").stream();
    }

    @ParameterizedTest
    @MethodSource("expected")
    void agreesWithTheReferenceImplementation(String row) {
        String[] cells = row.split(",");
        double[][] chains = chains(cells[0]);
        double[] actual = {
            Convergence.rHat(chains),
            Convergence.rankRHat(chains),
            Convergence.foldedRHat(chains),
            Convergence.plainRHat(chains),
            Convergence.bulkEffectiveDraws(chains),
            Convergence.tailEffectiveDraws(chains),
            Convergence.meanEffectiveDraws(chains),
            Convergence.quantileEffectiveDraws(chains, 0.05),
            Convergence.quantileEffectiveDraws(chains, 0.95),
        };

        for (int i = 0; i < actual.length; i++) {
            assertThat(actual[i]).as("column " + (i + 1)).isCloseTo(Double.parseDouble(cells[i + 1]), ROUNDING);
        }
    }

    @ParameterizedTest
    @MethodSource("expected")
    void errorOfTheMeanAgreesWithTheReferenceImplementation(String row) {
        String[] cells = row.split(",");
        double[][] chains = chains(cells[0]);
        double[] pooled = Arrays.stream(chains).flatMapToDouble(Arrays::stream).toArray();

        assertThat(ParameterSummary.of("any", chains, pooled).meanError())
                .isCloseTo(Double.parseDouble(cells[10]), ROUNDING);
    }

    /** Rank normalisation makes the diagnostics blind to a monotone change of scale, up to the folding about the median. */
    @Test
    void monotoneTransformationsLeaveBulkDiagnosticsAlone() {
        double[][] chains = chains("sticky");
        double[][] curved = Arrays.stream(chains)
                .map(chain -> Arrays.stream(chain).map(Math::exp).toArray())
                .toArray(double[][]::new);

        assertThat(Convergence.rankRHat(curved)).isCloseTo(Convergence.rankRHat(chains), within(1.0e-12));
        assertThat(Convergence.bulkEffectiveDraws(curved))
                .isCloseTo(Convergence.bulkEffectiveDraws(chains), within(1.0e-9));
    }

    @Test
    void drawsThatNeverMoveHaveNoDiagnostics() {
        double[][] still = new double[4][20];

        assertThat(Convergence.rHat(still)).isNaN();
        assertThat(Convergence.bulkEffectiveDraws(still)).isNaN();
        assertThat(ParameterSummary.of("still", still, new double[80]).converged())
                .isFalse();
    }

    @Test
    void aFewDrawsOrUnequalChainsAreRefused() {
        assertThatThrownBy(() -> Convergence.rHat(new double[4][7]))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(CalibrationError.TOO_FEW_DRAWS));
        assertThatThrownBy(() -> Convergence.rankRHat(new double[][] {new double[10], new double[12]}))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(CalibrationError.LENGTHS_DIFFER));
    }
}
