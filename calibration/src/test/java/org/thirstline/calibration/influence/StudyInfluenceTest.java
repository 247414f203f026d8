package org.thirstline.calibration.influence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.sensitivity.ElementaryEffect;
import org.thirstline.calibration.sensitivity.ProgressListener;
import org.thirstline.calibration.sensitivity.SobolAnalysis;
import org.thirstline.calibration.sensitivity.SobolIndex;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.soil.SoilProfile;

class StudyInfluenceTest {

    private static final String RUE = "radiation_use_efficiency_g_mj";
    private static final double ROUNDING = 1e-9;

    @TempDir
    private Path folder;

    private static InfluenceOptions options(int threads) {
        return new InfluenceOptions(4, 32, 5, 200, 20.0, 0.0, 7L, threads);
    }

    private static StudyInfluence run(StudyOutcome outcome, InfluenceOptions options) {
        return StudyInfluence.of(outcome, outcome.study().zones(), options, ProgressListener.NONE);
    }

    private static OutputInfluence output(StudyInfluence answer, InfluenceOutput output) {
        return answer.zones().get(0).outputs().stream()
                .filter(of -> of.output() == output)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theAnswerDoesNotDependOnThreads() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(folder, 6);
        StudyInfluence one = run(outcome, options(1));

        assertThat(run(outcome, options(3)).zones().toString())
                .isEqualTo(one.zones().toString());
        assertThat(run(outcome, new InfluenceOptions(4, 32, 5, 200, 20.0, 0.0, 8L, 1))
                        .zones()
                        .toString())
                .isNotEqualTo(one.zones().toString());
    }

    @Test
    void effectsGoTheWayTheyMust() throws IOException {
        StudyInfluence answer = run(InfluenceStudy.of(folder, 8), options(2));

        ElementaryEffect light =
                output(answer, InfluenceOutput.MEAN_HARVEST).effect(RUE).orElseThrow();
        assertThat(light.mean()).isPositive().isCloseTo(light.meanAbsolute(), within(ROUNDING));
        ElementaryEffect water = output(answer, InfluenceOutput.DROUGHT_PENALTY)
                .effect(VariedInput.SOIL_WATER)
                .orElseThrow();
        assertThat(water.mean()).isNegative();
        ElementaryEffect decline = output(answer, InfluenceOutput.MEAN_HARVEST)
                .effect("decline_per_year")
                .orElseThrow();
        assertThat(decline.mean()).isNegative();
        assertThat(answer.zones().get(0).sampled()).contains(RUE).hasSizeLessThanOrEqualTo(5);
        assertThat(output(answer, InfluenceOutput.MEAN_HARVEST)
                        .deciding()
                        .get(0)
                        .name())
                .isEqualTo(RUE);
        for (OutputInfluence of : answer.zones().get(0).outputs()) {
            assertThat(of.range().lower()).isLessThanOrEqualTo(of.range().upper());
            assertThat(of.effects()).allMatch(effect -> Double.isFinite(effect.deviation()));
        }
    }

    @Test
    void aSingleParameterMakesTheWholeSpread() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(folder, 5);
        ComparedSeasons compared = ComparedSeasons.of(outcome, outcome.zones().get(0));
        List<VariedInput> only = VariedInputs.of(outcome.study().crop(), options(1)).inputs().stream()
                .filter(input -> input.key().equals(RUE))
                .toList();
        StandModel model = new StandModel(outcome, outcome.zones().get(0), compared, only);

        List<List<SobolIndex>> indices = SobolAnalysis.estimate(
                model,
                List.of(only.get(0).sampled()),
                new SobolAnalysis.Options(64, 100, 1L, 1),
                ProgressListener.NONE);
        // Alone it answers for all; Jansen's estimate on 64 points of a Sobol' sequence.
        assertThat(indices.get(0).get(0).total()).isCloseTo(1.0, within(0.1));
    }

    @Test
    void standardOutputsAreThoseOfTheStudy() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(folder, 8);
        StudyInfluence answer = run(outcome, options(2));
        List<SeasonRecord> grown = outcome.zones().get(0).stand().completeSeasons().stream()
                .filter(season -> season.standAge() >= 3)
                .toList();

        assertThat(answer.zones().get(0).years()).isEqualTo(grown.size()).isEqualTo(6);
        assertThat(output(answer, InfluenceOutput.MEAN_HARVEST).standard())
                .isCloseTo(mean(grown, SeasonVariable.HARVESTED), within(ROUNDING));
        assertThat(output(answer, InfluenceOutput.DROUGHT_PENALTY).standard())
                .isCloseTo(mean(grown, SeasonVariable.DROUGHT_PENALTY), within(ROUNDING));
        assertThat(output(answer, InfluenceOutput.HARVEST_MOISTURE).standard())
                .isCloseTo(mean(grown, SeasonVariable.HARVEST_MOISTURE), within(ROUNDING));
    }

    private static double mean(List<SeasonRecord> seasons, SeasonVariable variable) {
        return seasons.stream()
                .mapToDouble(season -> season.value(variable))
                .average()
                .orElseThrow();
    }

    @Test
    void noCornerOfTheRangesGivesAnythingButNumbers() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(folder, 5);
        ZoneOutcome zone = outcome.zones().get(0);
        List<VariedInput> inputs = VariedInputs.of(
                        outcome.study().crop(), new InfluenceOptions(4, 16, 8, 100, 80.0, 60.0, 1L, 1))
                .inputs();
        StandModel model = new StandModel(outcome, zone, ComparedSeasons.of(outcome, zone), inputs);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(9L);
        for (int trial = 0; trial < 200; trial++) {
            double[] point = inputs.stream()
                    .mapToDouble(input -> random.nextBoolean() ? input.low() : input.high())
                    .toArray();
            assertThat(Arrays.stream(model.outputs(point))).allMatch(Double::isFinite);
        }
    }

    @Test
    void aDeadStandHarvestsNothing() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(
                folder, 5, "rhizome_lt50_c: {value: -6.5, low: -6.5, high: 0}", "rhizome_kill_width_c: 0.05");
        ZoneOutcome zone = outcome.zones().get(0);
        List<VariedInput> inputs =
                VariedInputs.of(outcome.study().crop(), options(1)).inputs();
        StandModel model = new StandModel(outcome, zone, ComparedSeasons.of(outcome, zone), inputs);
        double[] point = inputs.stream()
                .mapToDouble(input -> input.key().startsWith("rhizome_lt50") ? input.high() : input.standard())
                .toArray();

        double[] outputs = model.outputs(point);
        assertThat(Arrays.stream(outputs)).allMatch(Double::isFinite);
        assertThat(model.deaths()).isEqualTo(1);
        // Of the plants next to none are left in the years before the last one dies.
        assertThat(outputs[0]).isLessThan(0.01 * model.standard()[0]);
    }

    @Test
    void moreAvailableWaterLeavesTheDrainingPoresAsTheyAre() throws IOException {
        SoilProfile soil = InfluenceStudy.of(folder, 4).study().zones().get(0).soil();
        for (double factor : new double[] {0.2, 0.8, 1.0, 1.2, 1.8}) {
            SoilProfile scaled = soil.withAvailableWaterTimes(factor);
            assertThat(scaled.availableWaterMm()).isCloseTo(factor * soil.availableWaterMm(), within(ROUNDING));
            for (int i = 0; i < soil.layers().size(); i++) {
                assertThat(scaled.layers().get(i).saturation()
                                - scaled.layers().get(i).fieldCapacity())
                        .isCloseTo(
                                soil.layers().get(i).saturation()
                                        - soil.layers().get(i).fieldCapacity(),
                                within(ROUNDING));
            }
        }
    }

    @Test
    void aYoungStandIsAskedAboutItsYoungYears() throws IOException {
        StudyInfluence answer = run(InfluenceStudy.of(folder, 2), options(1));

        assertThat(answer.zones().get(0).fullGrown()).isFalse();
        assertThat(answer.zones().get(0).outputs())
                .extracting(OutputInfluence::output)
                .contains(InfluenceOutput.MEAN_HARVEST)
                .doesNotContain(InfluenceOutput.FIRST_HARVESTS);
    }

    @Test
    void noYearToCompareIsRefused() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(folder, 3);
        ZoneOutcome zone = outcome.zones().get(0);
        ZoneOutcome empty = new ZoneOutcome(
                zone.zone(), new StandResult(List.of(), List.of(), zone.stand().daily()), zone.response(), List.of());
        StudyOutcome without = new StudyOutcome(
                outcome.study(),
                outcome.weather(),
                outcome.drivers(),
                outcome.deficit(),
                outcome.classes(),
                List.of(empty),
                List.of());

        assertThatThrownBy(() -> run(without, options(1)))
                .isInstanceOf(InputException.class)
                .extracting(failure -> ((InputException) failure).code())
                .isEqualTo((ErrorCode) CalibrationError.NO_YEAR_TO_VARY);
    }

    @Test
    void progressEndsAtItsTotal() throws IOException {
        StudyOutcome outcome = InfluenceStudy.of(folder, 4);
        List<int[]> told = new ArrayList<>();

        StudyInfluence.of(
                outcome, outcome.study().zones(), options(2), (done, total) -> told.add(new int[] {done, total}));
        assertThat(told).isSortedAccordingTo((a, b) -> Integer.compare(a[0], b[0]));
        assertThat(told).allMatch(step -> step[0] <= step[1]);
        assertThat(told.get(told.size() - 1)[0]).isEqualTo(told.get(0)[1]);
    }
}
