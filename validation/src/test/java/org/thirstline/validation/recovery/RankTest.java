package org.thirstline.validation.recovery;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.validation.recovery.SyntheticTrial.Beliefs;

/**
 * Ranks of true parameters of the engine among posterior draws are uniform (Talts and others 2018), and are not when the analysis is wrong
 * about the errors. The short form has two parameters, one site and two years; the long one four parameters, two sites and three years:
 * {@code mvn -Plong-tests test -pl validation -am -Dtest=RankTest -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class RankTest {

    /** A right sampler is rejected once in a thousand seeds. */
    private static final double REJECTED = 0.001;

    private static final RankStudy SHORT = new RankStudy(120, 15);
    private static final int SHORT_REPLICATES = 32;
    private static final int SHORT_BINS = 4;

    private static final RankStudy LONG = new RankStudy(480, 31);
    private static final int LONG_REPLICATES = 200;
    private static final int LONG_BINS = 8;

    @TempDir
    private Path folder;

    private CalibrationProblem problem(int sites, int years) throws IOException {
        return SyntheticTrial.problem(folder, sites, years, Beliefs.HANDBOOK, "10 %");
    }

    private CalibrationProblem lightAndWater() throws IOException {
        CalibrationProblem problem = problem(1, 2);
        return problem.withParameters(
                List.of(problem.parameters().get(0), problem.parameters().get(3)));
    }

    @Test
    void ranksOfTwoParametersAreUniform() throws IOException {
        int[][] ranks = SHORT.ranks(lightAndWater(), 1.0, SHORT_REPLICATES);

        assertThat(SHORT.probabilities(ranks, SHORT_BINS)).allMatch(probability -> probability > REJECTED);
    }

    /** Half of the replicates are enough for that; it is one parameter at least that tells, as in the long form. */
    @Test
    void errorsTakenForAFifthOfTheirSizeAreFoundOut() throws IOException {
        int[][] ranks = SHORT.ranks(lightAndWater(), 0.2, SHORT_REPLICATES / 2);

        assertThat(Collections.min(SHORT.probabilities(ranks, SHORT_BINS))).isLessThan(REJECTED);
    }

    @Test
    @Tag("long")
    void ranksOfFourParametersAreUniform() throws IOException {
        List<Double> probabilities = LONG.probabilities(LONG.ranks(problem(2, 3), 1.0, LONG_REPLICATES), LONG_BINS);

        System.out.println("Uniform ranks, probabilities by parameter: " + probabilities);
        assertThat(probabilities).allMatch(probability -> probability > REJECTED);
    }

    @Test
    @Tag("long")
    void errorsTakenForHalfTheirSizeAreFoundOut() throws IOException {
        List<Double> probabilities = LONG.probabilities(LONG.ranks(problem(2, 3), 0.5, LONG_REPLICATES / 2), LONG_BINS);

        System.out.println("Errors taken for half, probabilities by parameter: " + probabilities);
        assertThat(Collections.min(probabilities)).isLessThan(REJECTED);
    }
}
