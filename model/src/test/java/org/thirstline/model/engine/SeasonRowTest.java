package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Map;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;

/** A row of a season is what its columns say it is, worked out again from the days. */
class SeasonRowTest {

    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int DAYS = 5 * 365 + 1;
    private static final Offset<Double> SUM = within(1.0e-8);
    private static final GrowingSeason MAY_TO_AUGUST = new GrowingSeason(MonthDay.of(5, 1), MonthDay.of(8, 31));

    private static final Map<SeasonVariable, DailyVariable> SUMS = Map.of(
            SeasonVariable.SEASON_RAIN, DailyVariable.RAIN,
            SeasonVariable.SEASON_ET0, DailyVariable.ET0,
            SeasonVariable.TRANSPIRATION, DailyVariable.TRANSPIRATION,
            SeasonVariable.SOIL_EVAPORATION, DailyVariable.SOIL_EVAPORATION,
            SeasonVariable.RUNOFF, DailyVariable.RUNOFF,
            SeasonVariable.DRAINAGE, DailyVariable.DRAINAGE,
            SeasonVariable.INTERCEPTION, DailyVariable.INTERCEPTION,
            SeasonVariable.IRRIGATION, DailyVariable.IRRIGATION,
            SeasonVariable.GROUNDWATER, DailyVariable.GROUNDWATER);

    private static FieldConditions field(Random random) {
        FieldConditions field =
                TestFields.field(TestFields.randomGrass(random), TestFields.randomSoil(random), START.minusYears(3));
        return TestFields.withHarvest(
                TestFields.withIrrigation(field, TestFields.randomIrrigation(random, START, DAYS)),
                new HarvestRule.OnDate(MonthDay.of(2, 10)),
                MAY_TO_AUGUST);
    }

    private static double sum(int from, int to, IntToDoubleFunction value) {
        return IntStream.rangeClosed(from, to).mapToDouble(value).sum();
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void everyColumnFollowsFromTheDays(long seed) {
        Random random = new Random(seed);
        DailyDrivers drivers =
                DailyDrivers.of(TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, DAYS, random));
        FieldConditions field = field(random);
        StandResult result = PairedRuns.simulate(drivers, field, 400);

        assertThat(result.completeSeasons()).hasSizeGreaterThanOrEqualTo(3);
        for (SeasonRecord season : result.completeSeasons()) {
            assertWindow(season, result.daily());
            assertCanopy(season, result.daily(), field);
            assertHarvest(season, result.daily(), field);
            assertPenalties(season);
        }
    }

    private static void assertWindow(SeasonRecord season, DailyResults daily) {
        int from = day(daily, LocalDate.of(season.growthYear(), 5, 1));
        int to = day(daily, LocalDate.of(season.growthYear(), 8, 31));
        SUMS.forEach((column, variable) -> assertThat(season.value(column))
                .as(column.column())
                .isCloseTo(sum(from, to, day -> daily.at(variable, day)), SUM));
        assertThat(season.value(SeasonVariable.SOIL_WATER_START))
                .isCloseTo(daily.at(DailyVariable.SOIL_WATER, from - 1), SUM);
        assertThat(season.value(SeasonVariable.SOIL_WATER_END)).isEqualTo(daily.at(DailyVariable.SOIL_WATER, to));
        assertThat(season.value(SeasonVariable.SNOW_CHANGE))
                .isCloseTo(daily.at(DailyVariable.SNOW, to) - daily.at(DailyVariable.SNOW, from - 1), SUM);
    }

    private static void assertCanopy(SeasonRecord season, DailyResults daily, FieldConditions field) {
        int from = day(daily, season.dates().emergence());
        int to = day(daily, season.dates().canopyEnd()) - 1;
        double share = field.crop().get(CropParameter.PAR_FRACTION);
        double par = sum(
                from,
                to,
                day -> share * daily.at(DailyVariable.SOLAR, day) * daily.at(DailyVariable.INTERCEPTED_FRACTION, day));
        assertThat(season.value(SeasonVariable.INTERCEPTED_PAR)).isCloseTo(par, SUM);
        assertThat(season.value(SeasonVariable.MAX_LEAF_AREA_INDEX))
                .isEqualTo(IntStream.rangeClosed(from, to)
                        .mapToDouble(day -> daily.at(DailyVariable.LEAF_AREA_INDEX, day))
                        .max()
                        .orElseThrow());
        assertThat(season.value(SeasonVariable.STRESSED_DAYS))
                .isEqualTo(sum(from, to, day -> daily.at(DailyVariable.WATER_FACTOR, day) < 0.9 ? 1.0 : 0.0));
        assertThat(season.value(SeasonVariable.MEAN_WATER_FACTOR))
                .isCloseTo(sum(from, to, day -> daily.at(DailyVariable.WATER_FACTOR, day)) / (to - from + 1), SUM);
        assertThat(season.value(SeasonVariable.HEIGHT)).isEqualTo(daily.at(DailyVariable.HEIGHT, to + 1));
    }

    private static void assertHarvest(SeasonRecord season, DailyResults daily, FieldConditions field) {
        int cut = day(daily, season.dates().harvest());
        int emergence = day(daily, season.dates().emergence());
        double dry = season.value(SeasonVariable.HARVESTED);
        double fresh = season.value(SeasonVariable.HARVESTED_FRESH);
        double peak = IntStream.range(emergence, cut)
                .mapToDouble(day -> daily.at(DailyVariable.STANDING, day))
                .max()
                .orElseThrow();
        assertThat(season.dates().harvest()).isEqualTo(LocalDate.of(season.growthYear() + 1, 2, 10));
        assertThat(season.value(SeasonVariable.PEAK_BIOMASS)).isCloseTo(0.01 * peak, SUM);
        assertThat(fresh * (1.0 - 0.01 * season.value(SeasonVariable.HARVEST_MOISTURE)))
                .isCloseTo(dry, SUM);
        assertThat(season.value(SeasonVariable.BALE_VOLUME) * field.crop().get(CropParameter.BALE_DENSITY))
                .isCloseTo(1000.0 * dry, within(1.0e-6));
        // Latent heat of vaporisation at 25 °C, 2.443 MJ/kg.
        assertThat(season.value(SeasonVariable.ENERGY))
                .isCloseTo(dry * field.crop().get(CropParameter.HEATING_VALUE) - 2.443 * (fresh - dry), SUM);
    }

    private static void assertPenalties(SeasonRecord season) {
        double penalty = season.value(SeasonVariable.DROUGHT_PENALTY);
        double potential = season.value(SeasonVariable.POTENTIAL_HARVESTED);
        assertThat(potential - season.value(SeasonVariable.HARVESTED)).isCloseTo(penalty, SUM);
        assertThat(season.value(SeasonVariable.DROUGHT_PENALTY_PCT) * potential).isCloseTo(100.0 * penalty, SUM);
        assertThat(season.value(SeasonVariable.PENALTY_THIS_SEASON) + season.value(SeasonVariable.PENALTY_CARRIED_OVER))
                .isCloseTo(penalty, SUM);
    }

    private static int day(DailyResults daily, LocalDate date) {
        return (int) (date.toEpochDay() - daily.start().toEpochDay());
    }

    /** Growth years start in the middle of winter: 1 January in the north, 1 July in the south. */
    @Test
    void growthYears() {
        Site north = TestFields.NORTH;
        Site south = TestFields.SOUTH;
        assertThat(GrowthCalendar.growthYear(north, LocalDate.of(2005, 6, 30))).isEqualTo(2005);
        assertThat(GrowthCalendar.growthYear(north, LocalDate.of(2005, 7, 1))).isEqualTo(2005);
        assertThat(GrowthCalendar.growthYear(south, LocalDate.of(2005, 6, 30))).isEqualTo(2004);
        assertThat(GrowthCalendar.growthYear(south, LocalDate.of(2005, 7, 1))).isEqualTo(2005);
        assertThat(GrowthCalendar.firstDay(south, 2005)).isEqualTo(LocalDate.of(2005, 7, 1));
        assertThat(GrowthCalendar.dateIn(south, 2005, MonthDay.of(6, 30))).isEqualTo(LocalDate.of(2006, 6, 30));
        assertThat(GrowthCalendar.dateIn(south, 2005, MonthDay.of(7, 1))).isEqualTo(LocalDate.of(2005, 7, 1));
        assertThat(GrowthCalendar.dateIn(north, 2005, MonthDay.of(6, 30))).isEqualTo(LocalDate.of(2005, 6, 30));
        assertThat(GrowingSeason.defaultFor(south).end(south, 2005)).isEqualTo(LocalDate.of(2006, 3, 31));
        assertThat(GrowingSeason.defaultFor(north).start(north, 2005)).isEqualTo(LocalDate.of(2005, 4, 1));
    }
}
