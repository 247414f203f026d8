package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.thirstline.model.weather.DailyDrivers;

/** Nothing appears and nothing vanishes, on any day, over random weather, soils, crops, irrigation and scenarios. */
class ConservationTest {

    private static final Offset<Double> WATER_CLOSURE = within(1e-9); // [mm]
    private static final Offset<Double> DRY_MATTER_CLOSURE = within(1e-9); // [g m⁻²]
    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int DAYS = 4 * 365 + 1;

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    private static StandSimulation randomRun(long seed, Random random) {
        DailyDrivers drivers =
                DailyDrivers.of(TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, DAYS, random));
        FieldConditions dry = TestFields.field(
                TestFields.randomGrass(random),
                TestFields.randomSoil(random),
                START.plusDays(random.nextInt(500) - 100));
        FieldConditions field = TestFields.withIrrigation(dry, TestFields.randomIrrigation(random, START, DAYS));
        Scenario[] scenarios = {
            Scenario.ACTUAL, Scenario.WELL_WATERED, Scenario.AERATED, Scenario.POTENTIAL, Scenario.AGE_DROUGHT
        };
        return new StandSimulation(
                drivers,
                new CropWeather(drivers, field.crop()),
                field,
                new YearTable(drivers.site(), drivers.weather(), field.season(), field.harvest()),
                scenarios[(int) (seed % scenarios.length)]);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void waterClosesEveryDay(long seed) {
        Random random = new Random(seed);
        double[] rainAndMelt = new double[DAYS];
        double[] before = {Double.NaN};
        Random again = new Random(seed);
        DailyDrivers drivers =
                DailyDrivers.of(TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, DAYS, again));
        CropWeather weather = new CropWeather(drivers, TestFields.grass());
        for (int day = 0; day < DAYS; day++) {
            rainAndMelt[day] = weather.liquidRain[day] + weather.melt[day];
        }
        randomRun(seed, random)
                .observedBy((day, s) -> {
                    double stored = DoubleStream.of(s.soilWater).sum();
                    if (day > 0) {
                        double in = rainAndMelt[day] + s.irrigation + s.groundwater + s.suppliedFromOutside;
                        double out = s.interception + s.runoff + s.drainage + s.soilEvaporation + s.transpiration;
                        assertThat(before[0] + in - out - stored)
                                .as("day %s", day)
                                .isCloseTo(0.0, WATER_CLOSURE);
                        assertThat(DoubleStream.of(s.runoff, s.drainage, s.soilEvaporation, s.transpiration)
                                        .min()
                                        .orElseThrow())
                                .isGreaterThanOrEqualTo(0.0);
                    }
                    before[0] = stored;
                })
                .run();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void snowClosesEveryDay(long seed) {
        DailyDrivers drivers = DailyDrivers.of(
                TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, DAYS, new Random(seed)));
        CropWeather weather = new CropWeather(drivers, TestFields.grass());
        double snow = 0.0;
        for (int day = 0; day < DAYS; day++) {
            double change = drivers.rain(day) - weather.liquidRain[day] - weather.melt[day];
            assertThat(weather.snowWater[day] - snow).isCloseTo(change, WATER_CLOSURE);
            assertThat(weather.snowWater[day]).isGreaterThanOrEqualTo(0.0);
            snow = weather.snowWater[day];
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void dryMatterClosesEveryDay(long seed) {
        double[] before = {0.0};
        StandSimulation run = randomRun(seed, new Random(seed));
        double leaf = run.gramsPerLeafArea();
        run.observedBy((day, s) -> {
                    double pools = s.leafAreaIndex * leaf + s.deadLeaf + s.stem + s.reserve + s.litter;
                    double in = s.grown + s.plantedReserve + s.reserveGranted;
                    double out = s.harvested + s.respired + s.turnedOver + s.winterKilled + s.litterDecayed;
                    double missing = in - out - pools;
                    assertThat(missing - before[0]).as("day %s", day).isCloseTo(0.0, DRY_MATTER_CLOSURE);
                    before[0] = missing;
                    assertThat(DoubleStream.of(s.leafAreaIndex, s.deadLeaf, s.stem, s.reserve, s.litter)
                                    .min()
                                    .orElseThrow())
                            .isGreaterThanOrEqualTo(-1e-12);
                })
                .run();
        assertThat(before[0]).as("over the whole run").isCloseTo(0.0, within(1e-6));
    }
}
