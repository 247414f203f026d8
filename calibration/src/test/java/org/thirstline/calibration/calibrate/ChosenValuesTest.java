package org.thirstline.calibration.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thirstline.calibration.calibrate.ChosenValues.Basis;
import org.thirstline.calibration.posterior.LogDensity;
import org.thirstline.calibration.posterior.ParameterSummary;
import org.thirstline.calibration.posterior.PosteriorDraws;
import org.thirstline.calibration.posterior.PosteriorSampler;
import org.thirstline.calibration.posterior.Prior;
import org.thirstline.calibration.posterior.SampledParameter;
import org.thirstline.calibration.posterior.SamplerOptions;
import org.thirstline.calibration.posterior.SamplingListener;
import org.thirstline.calibration.posterior.SamplingProblem;

/** Which values stand for a calibration. */
class ChosenValuesTest {

    private static final double[] LEAST_SQUARES = {9.0, 9.0};

    private static SamplingProblem problem(LogDensity density) {
        Prior wide = Prior.uniform(-10.0, 10.0);
        return new SamplingProblem(
                List.of(new SampledParameter("x", wide), new SampledParameter("y", wide)), density, "test");
    }

    private static PosteriorDraws draws(SamplingProblem problem, int generations) {
        return new PosteriorSampler(problem, SamplerOptions.standard(1))
                .sample(generations, 2, SamplingListener.NONE)
                .draws(0.5);
    }

    private static double normal(double[] p) {
        return -0.5 * ((p[0] - 1.0) * (p[0] - 1.0) + (p[1] + 2.0) * (p[1] + 2.0));
    }

    /** A thin ring: its middle has the medians of both, and no probability. */
    private static double ring(double[] p) {
        double off = (Math.hypot(p[0], p[1]) - 5.0) / 0.3;
        return -0.5 * off * off;
    }

    @Test
    void withoutAPosteriorLeastSquaresStand() {
        ChosenValues chosen = ChosenValues.of(LEAST_SQUARES, Optional.empty(), ChosenValuesTest::normal);
        assertThat(chosen.basis()).isEqualTo(Basis.LEAST_SQUARES);
        assertThat(chosen.point()).isEqualTo(LEAST_SQUARES);
    }

    /** What is made of the draws must lie around the values, whatever either is worth. */
    @Test
    void chainsThatHaveNotSettledStandForThemselvesToo() {
        PosteriorDraws few = draws(problem(ChosenValuesTest::normal), 200);
        assertThat(few.summaries()).noneMatch(ParameterSummary::converged);
        assertThat(ChosenValues.of(LEAST_SQUARES, Optional.of(few), ChosenValuesTest::normal)
                        .basis())
                .isNotEqualTo(Basis.LEAST_SQUARES);
    }

    @Test
    void mediansStandForARoundPosterior() {
        SamplingProblem problem = problem(ChosenValuesTest::normal);
        ChosenValues chosen =
                ChosenValues.of(LEAST_SQUARES, Optional.of(draws(problem, 40_000)), problem::logPosterior);
        assertThat(chosen.basis()).isEqualTo(Basis.MEDIANS);
        // Medians of thousands of independent draws of deviation 1 are off by a few hundredths.
        assertThat(chosen.point()[0]).isCloseTo(1.0, within(0.15));
        assertThat(chosen.point()[1]).isCloseTo(-2.0, within(0.15));
    }

    @Test
    void theMostProbableDrawStandsForABentOne() {
        SamplingProblem problem = problem(ChosenValuesTest::ring);
        ChosenValues chosen =
                ChosenValues.of(LEAST_SQUARES, Optional.of(draws(problem, 100_000)), problem::logPosterior);
        assertThat(chosen.basis()).isEqualTo(Basis.MOST_PROBABLE);
        assertThat(Math.hypot(chosen.point()[0], chosen.point()[1])).isCloseTo(5.0, within(0.1));
    }
}
