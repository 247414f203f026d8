package org.thirstline.calibration.years;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.response.ResponseVerdict;
import org.thirstline.calibration.study.StudyOutcome;
import org.thirstline.calibration.study.ZoneOutcome;
import org.thirstline.io.study.Zone;
import org.thirstline.model.climate.WindowRain;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;

/** What is read from the years of whole invented studies, of one year to sixty. */
class YearsOfAStudyTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 60})
    void anyNumberOfYearsBehavesAndInventsNothing(int years) throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, years, false, 7L);
        ZoneOutcome thin = outcome.zones().get(1);

        assertThat(FullGrown.seasons(thin)).hasSize(years);
        YearIndices indices = YearIndices.of(outcome, null);
        for (IndexResponse response : IndexResponse.all(thin, indices)) {
            assertThat(response.response().line().isPresent())
                    .as(response.kind().id())
                    .isEqualTo(response.response().n() >= 5);
        }
        ThirstTable thirst = ThirstTable.of(outcome);
        assertThat(thirst.hasLines()).isEqualTo(years >= 5);
        if (years < 5) {
            assertThat(thirst.rungs().get(0).response().verdict()).isEqualTo(ResponseVerdict.TOO_FEW_YEARS);
            assertThat(thirst.deficitsMm(10.0))
                    .allMatch(deficit -> thirst.rungs().get(0).at(deficit).isEmpty());
        }
        assertThat(YieldRisk.of(thin).n()).isEqualTo(years);
        assertThat(PenaltySplit.of(thin, outcome.classes()).years()).hasSize(years);
        assertThat(IrrigationSweep.of(outcome, thin).steps()).hasSize(10);
        assertThat(HarvestDates.of(outcome, thin).dates()).isNotEmpty();
        assertThat(ZoneComparison.of(outcome.zones()).years()).hasSize(years);
    }

    /**
     * Totals over all years on a fixed harvest date. A single year may go the other way: a stand that was spared in one year enters the next
     * with more reserve and leaf, and then needs more water.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void moreAvailableWaterNeverRaisesTheDroughtPenaltyOfAllYears(long seed) throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 20, false, seed);
        Zone zone = outcome.study().zones().get(0);
        double before = Double.POSITIVE_INFINITY;
        for (double water = 50.0; water <= 300.0; water += 25.0) {
            double penalty = PairedRuns.simulate(
                            outcome.drivers(),
                            outcome.study().field(new Zone("", zone.areaHa(), SoilLadder.holding(zone.soil(), water))),
                            400)
                    .completeSeasons()
                    .stream()
                    .mapToDouble(season -> season.value(SeasonVariable.DROUGHT_PENALTY))
                    .sum();
            assertThat(penalty).as("penalty with " + water + " mm").isLessThanOrEqualTo(before + 1e-9);
            before = penalty;
        }
    }

    @Test
    void cellsBeyondTheDataAreEmpty() throws IOException {
        ThirstTable thirst = ThirstTable.of(InventedStudy.of(folder, 20, false, 3L));
        ThirstTable.Rung thin = thirst.rungs().get(0);

        assertThat(thin.at(thin.driestMm())).isPresent();
        assertThat(thin.at(thin.driestMm() + 1.0)).isEmpty();
        assertThat(thin.at(thin.wettestMm() - 1.0)).isEmpty();
        ThirstTable.Cell cell = thin.at(thin.driestMm()).orElseThrow();
        assertThat(cell.expectedMgHa())
                .isBetween(cell.range().lower(), cell.range().upper());
        assertThat(thirst.deficitsMm(50.0)).allMatch(deficit -> deficit % 50.0 == 0.0);
    }

    @ParameterizedTest
    @CsvSource({"false", "true"})
    void indicesAgreeWithSumsByHand(boolean southern) throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 12, southern, 5L);
        GrowingSeason summer = southern
                ? new GrowingSeason(MonthDay.of(12, 1), MonthDay.of(2, 28))
                : new GrowingSeason(MonthDay.of(6, 1), MonthDay.of(8, 31));
        YearIndices indices = YearIndices.of(outcome, summer);
        SeasonRecord season = outcome.zones().get(0).responseSeasons().get(4);
        int year = season.growthYear();
        List<WindowRain> rain =
                WindowRain.of(outcome.weather().series(), outcome.study().site(), summer);
        double normal = rain.stream()
                .filter(window -> outcome.deficit().normals().period().contains(window.growthYear()))
                .mapToDouble(WindowRain::rainMm)
                .average()
                .orElseThrow();
        double actual = rain.stream()
                .filter(window -> window.growthYear() == year)
                .findFirst()
                .orElseThrow()
                .rainMm();

        assertThat(indices.at(IndexKind.WINDOW, season)).isCloseTo(normal - actual, within(1e-9));
        assertThat(indices.at(IndexKind.SEASON, season)).isEqualTo(season.value(SeasonVariable.RAIN_DEFICIT));
        assertThat(indices.at(IndexKind.ET0_MINUS_RAIN, season))
                .isCloseTo(
                        WindowRain.climaticWaterDeficitMm(
                                outcome.drivers(), outcome.study().season(), year),
                        within(1e-9));
        assertThat(indices.at(IndexKind.SPI_3, season)).isBetween(-4.0, 4.0);
    }

    @Test
    void canopyDeficitsAverageToNothingWhereEveryYearHasTheSameDates() throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 12, false, 5L);
        YearIndices indices = YearIndices.of(outcome, null);
        SeasonRecord like = outcome.zones().get(0).responseSeasons().get(0);
        LocalDate from = LocalDate.of(like.growthYear(), 5, 1);
        double sum = 0.0;
        int count = 0;
        for (int year = 1960; year < 1960 + 14; year++) {
            long shift = year - (long) like.growthYear();
            SeasonRecord shifted = new SeasonRecord(
                    year,
                    4,
                    like.status(),
                    new SeasonRecord.Dates(
                            from.plusYears(shift), null, from.plusYears(shift).plusMonths(4), null, null),
                    new double[0]);
            double deficit = indices.at(IndexKind.CANOPY, shifted);
            if (!Double.isNaN(deficit) && outcome.deficit().normals().period().contains(year)) {
                sum += deficit;
                count++;
            }
        }
        assertThat(count).isGreaterThan(10);
        assertThat(sum).isCloseTo(0.0, within(1e-6));
    }

    @Test
    void aWindowAcrossTwoGrowthYearsIsRefused() throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 3, false, 5L);
        GrowingSeason winter = new GrowingSeason(MonthDay.of(11, 1), MonthDay.of(2, 28));

        assertThatThrownBy(() -> YearIndices.of(outcome, winter)).isInstanceOf(InputException.class);
        assertThat(CalibrationError.NO_WINDOW.template()).contains("no whole growing season");
    }

    @Test
    void zonesAddUpToTheFieldByArea() throws IOException {
        ZoneComparison zones =
                ZoneComparison.of(InventedStudy.of(folder, 6, false, 5L).zones());
        ZoneComparison.Field field = zones.field().orElseThrow();
        double expected = 8.0 * zones.zones().get(0).harvestedMgHa()
                + 2.0 * zones.zones().get(1).harvestedMgHa();

        assertThat(field.areaHa()).isEqualTo(10.0);
        assertThat(field.meanMg()).isCloseTo(expected, within(1e-9));
        assertThat(field.lowestMg()).isLessThanOrEqualTo(field.meanMg());
    }

    @Test
    void splitPartsAddUpToThePenalty() throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 12, false, 5L);
        ZoneOutcome thin = outcome.zones().get(1);
        List<SeasonRecord> seasons = FullGrown.seasons(thin);
        List<PenaltySplit.Year> years = PenaltySplit.of(thin, outcome.classes()).years();
        for (int i = 0; i < years.size(); i++) {
            assertThat(years.get(i).thisSeasonMgHa() + years.get(i).carriedOverMgHa())
                    .isCloseTo(seasons.get(i).value(SeasonVariable.DROUGHT_PENALTY), within(1e-9));
        }
    }

    @Test
    void moreWaterIsGivenAtSmallerDepletionAndTheFirstStepIsRainOnly() throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 12, false, 5L);
        IrrigationSweep sweep = IrrigationSweep.of(outcome, outcome.zones().get(1));

        assertThat(sweep.steps().get(0).depletion()).isNaN();
        assertThat(sweep.steps().get(0).waterMm()).isZero();
        assertThat(sweep.gainMgHa(sweep.steps().get(0))).isZero();
        IrrigationSweep.Step most = sweep.steps().get(sweep.steps().size() - 1);
        assertThat(most.waterMm()).isPositive();
        assertThat(sweep.gainMgHa(most)).isPositive();
        assertThat(sweep.flattensAt(Double.POSITIVE_INFINITY)).isEmpty();
        assertThat(sweep.flattensAt(Double.NEGATIVE_INFINITY)).contains(most);
    }

    @ParameterizedTest
    @CsvSource({"false", "true"})
    void aCutOnTheStudysOwnDateBringsInTheStudysOwnHarvest(boolean southern) throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 8, southern, 5L);
        ZoneOutcome zone = outcome.zones().get(0);
        HarvestDates dates = HarvestDates.of(outcome, zone);
        MonthDay own = southern ? MonthDay.of(9, 1) : MonthDay.of(3, 1);
        for (SeasonRecord season : FullGrown.seasons(zone)) {
            HarvestDates.YearDay day = dates.days().stream()
                    .filter(candidate -> candidate.growthYear() == season.growthYear()
                            && MonthDay.from(candidate.date()).equals(own))
                    .findFirst()
                    .orElseThrow();
            // The cut takes place in the morning, the day's value is that of its evening: a day of winter loss apart.
            assertThat(day.harvestedMgHa())
                    .isCloseTo(
                            season.value(SeasonVariable.HARVESTED),
                            within(0.02 * season.value(SeasonVariable.HARVESTED)));
        }
    }

    @Test
    void monthsOfAGrowthYearAddUpToTheYear() throws IOException {
        StudyOutcome outcome = InventedStudy.of(folder, 4, true, 5L);
        ZoneOutcome zone = outcome.zones().get(0);
        SeasonRecord season = zone.stand().seasons().get(2);
        List<MonthsOfYears.YearMonthSums> months =
                MonthsOfYears.of(outcome.study().site(), zone.stand().daily(), season);

        assertThat(months).hasSize(12);
        assertThat(months.get(0).month()).isEqualTo(java.time.Month.JULY);
        GrowingSeason year = new GrowingSeason(MonthDay.of(7, 1), MonthDay.of(6, 30));
        double rain = WindowRain.of(outcome.weather().series(), outcome.study().site(), year).stream()
                .filter(window -> window.growthYear() == season.growthYear())
                .findFirst()
                .orElseThrow()
                .rainMm();
        assertThat(months.stream()
                        .mapToDouble(MonthsOfYears.YearMonthSums::rainMm)
                        .sum())
                .isCloseTo(rain, within(1e-6));
    }
}
