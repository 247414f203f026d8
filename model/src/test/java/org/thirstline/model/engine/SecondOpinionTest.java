package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.opinion.DayLoopAgreement;
import org.thirstline.model.opinion.PlainDayLoop;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;

/** The engine against a second day loop, written from docs/formulation.md: five invented years on random soils, every parameter moved. */
class SecondOpinionTest {

    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int DAYS = 5 * 365 + 1;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyDayOfTheEngineIsThatOfThePlainLoop(long seed) {
        Random random = new Random(seed);
        DailyDrivers drivers =
                DailyDrivers.of(TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, DAYS, random));
        CropParameters crop = seed == 1 ? TestFields.grass() : TestFields.randomGrass(random);
        LocalDate planted = START.plusDays(random.nextInt(-1500, 400));
        FieldConditions field = TestFields.withHarvest(
                TestFields.field(crop, TestFields.randomSoil(random), planted),
                new HarvestRule.OnDate(random.nextBoolean() ? MonthDay.of(3, 1) : MonthDay.of(11, 20)),
                GrowingSeason.defaultFor(TestFields.NORTH));

        StandResult engine = PairedRuns.simulate(drivers, field, 400);

        DayLoopAgreement.check(PlainDayLoop.run(drivers, field), engine);
        if (seed == 1) {
            assertThat(engine.completeSeasons()).anySatisfy(season -> assertThat(season.value(SeasonVariable.HARVESTED))
                    .as("there is something to compare")
                    .isGreaterThan(1.0));
        }
    }
}
