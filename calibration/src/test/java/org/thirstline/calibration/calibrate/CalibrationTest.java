package org.thirstline.calibration.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.calibrate.CalibrationSettings.Unclear;
import org.thirstline.calibration.calibrate.PosteriorCalibration.Sampled;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.posterior.PosteriorSampler;
import org.thirstline.calibration.posterior.SamplerOptions;
import org.thirstline.calibration.posterior.SamplerState;
import org.thirstline.calibration.posterior.SamplingListener;
import org.thirstline.calibration.problem.CalibrationProblem;
import org.thirstline.calibration.problem.InventedSites;
import org.thirstline.calibration.problem.PlotData;
import org.thirstline.calibration.problem.ProblemSetup;
import org.thirstline.calibration.problem.StudySource;
import org.thirstline.model.error.InputException;

/** Calibrations to yields that the engine itself made, so that the truth is known. */
class CalibrationTest {

    private static final int YEARS = 8;

    private static final String TWO = """
            calibration:
              parameters: [{name: radiation_use_efficiency_g_mj}, {name: soil_available_water_factor}]
              errors: [{variable: yield, cv: estimated}]
            """;

    /** Thickness of stem for its height: nothing that yields depend on but through evaporation. */
    private static final String UNRESPONSIVE = """
            calibration:
              parameters: [{name: radiation_use_efficiency_g_mj}, {name: bale_density_kg_m3}]
            """;

    @TempDir
    private Path folder;

    private CalibrationProblem problem(String calibration) throws IOException {
        StudySource site = InventedSites.site(folder, "here", YEARS, 5, calibration, InventedSites.yields(YEARS));
        return ProblemSetup.of(PlotData.of(List.of(site))).problem();
    }

    private static CalibrationSettings settings(int starts, int threads, Unclear unclear, int draws) {
        return new CalibrationSettings(starts, 1, threads, false, unclear, draws, true);
    }

    private static CalibrationFit fit(CalibrationProblem problem, CalibrationSettings settings) {
        return new LeastSquaresCalibration(settings, text -> {}).fit(problem, true);
    }

    @Test
    void exactYieldsGiveBackTheTruth() throws IOException {
        double[] truth = {2.7, 0.8};
        CalibrationProblem problem = InventedSites.measuredAt(problem(TWO), truth, 0.0, 1);
        CalibrationFit fit = fit(problem.withValues(jittered(problem)), settings(4, 2, Unclear.KEEP, 0));
        assertThat(fit.point()[0]).isCloseTo(2.7, within(0.01));
        assertThat(fit.point()[1]).isCloseTo(0.8, within(0.02));
    }

    /** A thousandth of scatter, since a fit without any has no error to scale by. */
    private static double[] jittered(CalibrationProblem problem) {
        double[] values = new double[problem.observations().size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = problem.observations().get(i).value() * (1.0 + 0.001 * (i % 2 == 0 ? 1.0 : -1.0));
        }
        return values;
    }

    @Test
    void theIntervalsHoldTheTruthAndTheErrorIsFound() throws IOException {
        double[] truth = {2.8, 1.2};
        CalibrationProblem problem = InventedSites.measuredAt(problem(TWO), truth, 0.1, 7);
        CalibrationFit fit = fit(problem, settings(6, 2, Unclear.REFUSE, 0));
        for (int i = 0; i < truth.length; i++) {
            // Four standard errors: a seed in sixteen thousand would fail by chance.
            assertThat(Math.abs(fit.point()[i] - truth[i])).isLessThan(4.0 * fit.standardError(i));
            assertThat(fit.profiles().get(i).lower()).isLessThan(fit.point()[i]);
        }
        assertThat(fit.problem().errors().get(0).size()).isBetween(0.06, 0.14);
        // What is left over has the size of the error, by its definition.
        assertThat(fit.result().residualDeviation()).isCloseTo(1.0, within(0.01));
        assertThat(fit.searchesAgreeing()).isGreaterThan(1);
    }

    @Test
    void threadsChangeNothing() throws IOException {
        CalibrationProblem problem = InventedSites.measuredAt(problem(TWO), new double[] {2.8, 1.2}, 0.1, 7);
        CalibrationFit one = fit(problem, settings(4, 1, Unclear.KEEP, 0));
        CalibrationFit two = fit(problem, settings(4, 2, Unclear.KEEP, 0));
        assertThat(two.point()).isEqualTo(one.point());
        assertThat(two.profiles()).isEqualTo(one.profiles());
        List<HeldOut> skillOfOne = new HeldOutCalibration(one, 1).all();
        List<HeldOut> skillOfTwo = new HeldOutCalibration(two, 2).all();
        for (int i = 0; i < skillOfOne.size(); i++) {
            assertThat(skillOfTwo.get(i).predictions())
                    .isEqualTo(skillOfOne.get(i).predictions());
        }
    }

    @Test
    void whatTheDataCannotTellIsRefusedOrFixed() throws IOException {
        CalibrationProblem problem = problem(UNRESPONSIVE);
        InputException refused =
                catchThrowableOfType(InputException.class, () -> fit(problem, settings(2, 2, Unclear.REFUSE, 0)));
        assertThat(refused.code()).isEqualTo(CalibrationError.NOT_TOLD);
        assertThat(refused).hasMessageContaining("Fix bale_density_kg_m3");
        CalibrationFit fixed = fit(problem, settings(2, 2, Unclear.FIX, 0));
        assertThat(fixed.fixed()).hasSize(1);
        assertThat(fixed.problem().parameters()).hasSize(1);
        CalibrationFit usual =
                new LeastSquaresCalibration(settings(2, 2, Unclear.REFUSE, 0), text -> {}).fit(problem, false);
        assertThat(usual.point()).isEqualTo(fixed.point());
    }

    @Test
    void theGlobalSearchFindsTheSameFit() throws IOException {
        CalibrationProblem problem = InventedSites.measuredAt(problem(TWO), new double[] {2.8, 1.2}, 0.1, 7);
        double searched = fit(problem, settings(4, 2, Unclear.KEEP, 0)).result().residualSumOfSquares();
        CalibrationSettings global = new CalibrationSettings(1, 1, 2, true, Unclear.KEEP, 0, false);
        CalibrationFit fit = fit(problem, global);
        assertThat(fit.problem().errors().get(0).size()).isBetween(0.06, 0.14);
        assertThat(fit.result().residualSumOfSquares()).isCloseTo(searched, within(0.002 * searched));
    }

    @Test
    void heldOutSkillIsOnValuesThatWereNotSeen() throws IOException {
        CalibrationProblem problem = InventedSites.measuredAt(problem(TWO), new double[] {2.8, 1.2}, 0.1, 7);
        CalibrationFit fit = fit(problem, settings(2, 2, Unclear.KEEP, 0));
        List<HeldOut> skill = new HeldOutCalibration(fit, 2).all();
        assertThat(skill).extracting(HeldOut::what).containsExactly(HeldOut.Group.PLOT, HeldOut.Group.YEAR);
        for (HeldOut heldOut : skill) {
            assertThat(heldOut.predictions()).hasSize(4 * (YEARS - 2));
            // The engine made these yields, so that it must do better than what knows no weather.
            assertThat(heldOut.model().gainOver(heldOut.mean())).isPositive();
            assertThat(heldOut.coverage().asStated()).isTrue();
        }
    }

    /** A checkpoint in memory that keeps the state of one moment. */
    private static final class Kept implements Checkpoint {

        private Optional<SamplerState> state = Optional.empty();

        @Override
        public Optional<SamplerState> saved() {
            return state;
        }

        @Override
        public void save(SamplerState saved) {
            state = Optional.of(SamplerState.decode(saved.encode()));
        }
    }

    @Test
    void theSamplingIsTheSameByThreadsAndAfterAnInterruption() throws IOException {
        CalibrationProblem problem = InventedSites.measuredAt(problem(TWO), new double[] {2.8, 1.2}, 0.1, 7);
        Sampled one = sample(problem, 1, Checkpoint.NONE);
        Sampled two = sample(problem, 2, Checkpoint.NONE);
        assertThat(two.draws().thinned(32)).isDeepEqualTo(one.draws().thinned(32));
        Kept kept = new Kept();
        PosteriorSampler sampler = new PosteriorSampler(problem.sampling(), SamplerOptions.standard(1));
        kept.save(sampler.sample(30, 2, SamplingListener.NONE));
        Sampled resumed = sample(problem, 2, kept);
        assertThat(resumed.draws().thinned(32)).isDeepEqualTo(one.draws().thinned(32));
        assertThat(resumed.evaluations()).isEqualTo(one.evaluations());
        assertThat(one.draws().size()).isEqualTo(32);
        assertThat(Arrays.stream(one.draws().pooled(0)).allMatch(value -> value > 1.0))
                .isTrue();
    }

    private static Sampled sample(CalibrationProblem problem, int threads, Checkpoint checkpoint) {
        return PosteriorCalibration.sample(
                problem, settings(1, threads, Unclear.KEEP, 32), checkpoint, (done, total, state) -> false);
    }
}
