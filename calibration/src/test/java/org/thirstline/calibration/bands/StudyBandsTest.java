package org.thirstline.calibration.bands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.calibration.bands.CalibratedStudy.LAI;
import static org.thirstline.calibration.bands.CalibratedStudy.RUE;
import static org.thirstline.calibration.bands.CalibratedStudy.THIN_WATER;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.calibration.years.FullGrown;
import org.thirstline.calibration.years.RiskBands;
import org.thirstline.calibration.years.YieldRisk;
import org.thirstline.calibration.years.ZoneComparison;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** Bands are what the draws make of a study, no more. */
class StudyBandsTest {

    /** A factor of four digits on a soil, and back, in yields of tens of Mg/ha. */
    private static final double WRITTEN_FACTOR = 1.0e-9;

    @TempDir
    private Path folder;

    private CalibratedStudy study() {
        return new CalibratedStudy(folder);
    }

    private static double width(Band band) {
        return band.high() - band.low();
    }

    private static List<SeasonRecord> complete(StudyOutcome outcome, int zone) {
        return outcome.zones().get(zone).stand().completeSeasons();
    }

    @Test
    void drawsThatAreAllTheFittedValueGiveItAndNoWidth() throws IOException {
        StudyOutcome outcome = study().draws(List.of(RUE, LAI), Collections.nCopies(7, "2.8 6.0"))
                .outcome();
        StudyBands bands = CalibratedStudy.bands(outcome, 2);
        for (ZoneOutcome zone : outcome.zones()) {
            ZoneBands ofZone = bands.zone(zone.zone().name());
            for (SeasonRecord season : zone.stand().completeSeasons()) {
                int year = season.growthYear();
                assertThat(ofZone.harvested(year).quantiles())
                        .containsOnly(season.value(SeasonVariable.HARVESTED))
                        .hasSize(5);
                assertThat(ofZone.potential(year).median())
                        .isCloseTo(season.value(SeasonVariable.POTENTIAL_HARVESTED), within(1e-12));
                assertThat(ofZone.penalty(year).quantiles()).containsOnly(season.value(SeasonVariable.DROUGHT_PENALTY));
            }
            assertSameRisk(YieldRisk.of(zone), RiskBands.of(YieldRisk.of(zone), ofZone));
        }
        ZoneComparison comparison = ZoneComparison.of(outcome.zones());
        ZoneComparison.Field field = comparison.field().orElseThrow();
        assertSameRisk(field.risk(), RiskBands.of(field, comparison.zones(), bands));
        assertThat(bands.notices()).isEmpty();
    }

    private static void assertSameRisk(YieldRisk risk, RiskBands bands) {
        double target = risk.exceedance().get(2).year().harvestedMgHa();
        assertThat(bands.share(target).median()).isEqualTo(risk.probability(target));
        assertThat(bands.worstRun(2).low())
                .isCloseTo(risk.worstRun(2).orElseThrow().meanMgHa(), within(1e-12));
        assertThat(bands.exceedance()).hasSize(risk.n());
        assertThat(width(bands.exceedance().get(0))).isZero();
    }

    @Test
    void drawsAboutTheFittedValueBracketIt() throws IOException {
        StudyOutcome outcome = study().draws(List.of(RUE), List.of("2.6", "2.7", "2.8", "2.9", "3.0"))
                .outcome();
        StudyBands bands = CalibratedStudy.bands(outcome, 1);
        for (SeasonRecord season : complete(outcome, 0)) {
            Band band = bands.zone("deep").harvested(season.growthYear());
            assertThat(season.value(SeasonVariable.HARVESTED)).isBetween(band.low(), band.high());
            assertThat(width(band)).isPositive();
        }
        List<Integer> years = FullGrown.seasons(outcome.zones().get(0)).stream()
                .map(SeasonRecord::growthYear)
                .toList();
        Band mean = bands.zone("deep").meanHarvested(years);
        assertThat(mean.low()).isLessThan(mean.median());
        assertThat(mean.median()).isLessThan(mean.high());
        assertThat(bands.zone("deep").fewestDraws(years)).isEqualTo(5);
    }

    /** A penalty is the difference of the two yields under one draw, as a run with that draw's values has it. */
    @Test
    void penaltiesArePairedWithinADraw() throws IOException {
        List<String> drawn = List.of("2.4", "2.8", "3.2");
        StudyBands bands =
                CalibratedStudy.bands(study().draws(List.of(RUE), drawn).outcome(), 1);
        List<StudyOutcome> alone = new ArrayList<>();
        for (String value : drawn) {
            alone.add(study().withEfficiency(value).outcome());
        }
        for (SeasonRecord season : complete(alone.get(1), 1)) {
            double[] penalties = alone.stream()
                    .mapToDouble(outcome -> outcome.zones().get(1).stand().seasons().stream()
                            .filter(each -> each.growthYear() == season.growthYear())
                            .findFirst()
                            .orElseThrow()
                            .value(SeasonVariable.DROUGHT_PENALTY))
                    .toArray();
            assertThat(bands.zone("thin").penalty(season.growthYear()).quantiles())
                    .containsExactly(Band.of(penalties).quantiles(), within(1e-12));
        }
    }

    @Test
    void threadsChangeNothing() throws IOException {
        StudyOutcome outcome = study().draws(
                        List.of(RUE, LAI, THIN_WATER),
                        IntStream.range(0, 9)
                                .mapToObj(i -> (2.5 + 0.1 * i) + " " + (7.0 - 0.2 * i) + " " + (0.8 + 0.03 * i))
                                .toList())
                .outcome();
        StudyBands one = CalibratedStudy.bands(outcome, 1);
        StudyBands many = CalibratedStudy.bands(outcome, 4);
        for (String zone : List.of("deep", "thin")) {
            for (int year : one.zone(zone).years()) {
                assertThat(many.zone(zone).harvested(year))
                        .isEqualTo(one.zone(zone).harvested(year));
                assertThat(many.zone(zone).penalty(year))
                        .isEqualTo(one.zone(zone).penalty(year));
            }
        }
    }

    @Test
    void aSoilIsDrawnInItsZoneOnly() throws IOException {
        StudyOutcome outcome =
                study().draws(List.of(THIN_WATER), List.of("0.7", "0.9", "1.2")).outcome();
        StudyBands bands = CalibratedStudy.bands(outcome, 1);
        int last = complete(outcome, 0).get(5).growthYear();
        assertThat(width(bands.zone("deep").harvested(last))).isZero();
        assertThat(width(bands.zone("thin").harvested(last))).isPositive();
        assertThat(bands.notices())
                .singleElement()
                .asString()
                .contains("thin", "write 'available_water_factor: 0.9000' into the soil")
                .doesNotContain("deep");
    }

    @Test
    void aSoilThatHasTheFittedFactorIsDrawnAboutIt() throws IOException {
        StudyOutcome outcome = study().withSoilFactor(0.9)
                .draws(List.of(THIN_WATER), List.of("0.9", "0.9"))
                .outcome();
        StudyBands bands = CalibratedStudy.bands(outcome, 1);
        for (SeasonRecord season : complete(outcome, 1)) {
            assertThat(bands.zone("thin").harvested(season.growthYear()).median())
                    .isCloseTo(season.value(SeasonVariable.HARVESTED), within(WRITTEN_FACTOR));
        }
        assertThat(bands.notices()).isEmpty();
    }

    @Test
    void aSoilWithAnotherFactorIsLeftAlone() throws IOException {
        StudyOutcome outcome = study().withSoilFactor(0.7)
                .draws(List.of(THIN_WATER), List.of("0.7", "0.9", "1.2"))
                .outcome();
        StudyBands bands = CalibratedStudy.bands(outcome, 1);
        assertThat(width(bands.zone("thin").harvested(2007))).isZero();
        assertThat(bands.notices()).singleElement().asString().contains("neither 1 nor the fitted 0.9000");
    }

    @Test
    void theSoilOfAnotherFieldIsLeftAlone() throws IOException {
        StudyOutcome outcome = study().titled("another field")
                .draws(List.of(RUE, THIN_WATER), List.of("2.7 0.7", "2.9 1.2"))
                .outcome();
        StudyBands bands = CalibratedStudy.bands(outcome, 1);
        assertThat(bands.notices()).singleElement().asString().contains("does not have: " + THIN_WATER);
        StudyOutcome cropOnly = study().titled("another field")
                .draws(List.of(RUE), List.of("2.7", "2.9"))
                .outcome();
        assertThat(bands.zone("thin").harvested(2007))
                .isEqualTo(CalibratedStudy.bands(cropOnly, 1).zone("thin").harvested(2007));
    }

    @Test
    void ofManyDrawsEvenlySpacedOnesAreTaken() throws IOException {
        List<String> many =
                IntStream.range(0, 500).mapToObj(i -> "" + (2.0 + 0.002 * i)).toList();
        StudyOutcome outcome = study().draws(List.of(RUE), many).outcome();
        ParameterDraws draws = ParameterDraws.of(outcome.study().crop(), 1).orElseThrow();
        assertThat(draws.size()).isEqualTo(ParameterDraws.MOST);
        assertThat(draws.inFile()).isEqualTo(500);
        assertThat(draws.value(0, 0)).isEqualTo(2.0);
        assertThat(draws.value(2, 0)).isEqualTo(2.0 + 0.002 * 5);
        assertThat(draws.value(199, 0)).isEqualTo(2.0 + 0.002 * 497);
    }

    @Test
    void aValueChangedSinceIsTold() throws IOException {
        StudyOutcome outcome = study().fitted(CalibratedStudy.fitted(RUE, 2.9, ""))
                .draws(List.of(RUE), List.of("2.9", "2.9"))
                .outcome();
        assertThat(CalibratedStudy.bands(outcome, 1).notices())
                .singleElement()
                .asString()
                .contains("other values than those that were fitted", RUE);
    }

    @Test
    void chainsThatHadNotSettledAreTold() throws IOException {
        StudyOutcome outcome = study().with("  unsettled: true\n")
                .draws(List.of(RUE), List.of("2.7", "2.9"))
                .outcome();
        assertThat(CalibratedStudy.bands(outcome, 1).notices())
                .singleElement()
                .asString()
                .contains("had not settled");
    }

    @Test
    void aDrawThatNoSoilCanHaveIsNamed() throws IOException {
        StudyOutcome outcome =
                study().draws(List.of(THIN_WATER), List.of("0.9", "-4")).outcome();
        assertThatThrownBy(() -> CalibratedStudy.bands(outcome, 2))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("draw 2 of the calibration, on thin");
    }

    @Test
    void withoutDrawsAndErrorsThereAreNoBands() throws IOException {
        assertThat(ParameterDraws.of(study().outcome().study().crop(), 1)).isEmpty();
    }
}
