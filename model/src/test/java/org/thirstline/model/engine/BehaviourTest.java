package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.result.YieldLedger;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** What a crop physiologist asks of any run, whatever the numbers. */
class BehaviourTest {

    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int SIX_YEARS = 6 * 365 + 1;
    private static final int NO_LIMIT = 366;
    private static final double RESERVE_SPENT_EARLIER = 1e-5; // largest share of growth it may cost

    static LongStream seeds() {
        return LongStream.range(100, 130);
    }

    private static DailyDrivers drivers(long seed) {
        return DailyDrivers.of(
                TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, SIX_YEARS, new Random(seed)));
    }

    private static DailyDrivers withRain(DailyDrivers drivers, double factor, double extraMm) {
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            columns.put(variable, drivers.weather().column(variable));
        }
        double[] rain = columns.get(WeatherVariable.RAIN);
        for (int day = 0; day < rain.length; day++) {
            rain[day] = rain[day] * factor + extraMm;
        }
        return DailyDrivers.of(
                drivers.site(), WeatherSeries.measured(drivers.weather().start(), columns));
    }

    /**
     * More rain never lowers the growth of a stand that lacks nothing but water. Growth, not the standing peak: a leafier canopy moves dry
     * matter from stems, which stay, to leaves, which fall. Poor aeration and frost are the scenario's to leave out. The one cause left, named and
     * bounded here: leaf that grew earlier has spent reserve that is missing for leaf a few weeks later.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1.1, 1.5, 3.0})
    void moreRainNeverLowersTheGrowthOfAThirstyStand(double factor) {
        seeds().forEach(seed -> {
            DailyDrivers dry = drivers(seed);
            FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(0.8), START);
            double[] less = grownByYear(dry, field, Scenario.AGE_DROUGHT);
            double[] more = grownByYear(withRain(dry, factor, 0.0), field, Scenario.AGE_DROUGHT);
            for (int year = 0; year < less.length; year++) {
                assertThat(more[year])
                        .as("seed %s year %s", seed, year)
                        .isGreaterThanOrEqualTo(less[year] * (1.0 - RESERVE_SPENT_EARLIER));
            }
        });
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theWellWateredTwinNeverGrowsLess(long seed) {
        Random random = new Random(seed);
        DailyDrivers drivers = drivers(seed);
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(0.3 + random.nextDouble()), START);
        double[] actual = grownByYear(drivers, field, Scenario.AGE_DROUGHT);
        double[] watered = grownByYear(drivers, field, Scenario.AGE);
        for (int year = 0; year < actual.length; year++) {
            assertThat(watered[year]).as("year %s", year).isGreaterThanOrEqualTo(actual[year] - 1e-9);
        }
    }

    /** Growth of each calendar year [g m⁻²]. */
    private static double[] grownByYear(DailyDrivers drivers, FieldConditions field, Scenario scenario) {
        double[] grown = new double[6];
        double[] before = {0.0};
        new StandSimulation(
                        drivers,
                        new CropWeather(drivers, field.crop()),
                        field,
                        new YearTable(drivers.site(), drivers.weather(), field.season(), field.harvest()),
                        scenario)
                .observedBy((day, s) -> {
                    grown[START.plusDays(day).getYear() - START.getYear()] += s.grown - before[0];
                    before[0] = s.grown;
                })
                .run();
        return grown;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void noNumberThatIsNotANumberLeaves(long seed) {
        Random random = new Random(seed);
        FieldConditions field =
                TestFields.field(TestFields.randomGrass(random), TestFields.randomSoil(random), START.plusDays(100));
        StandResult result = PairedRuns.simulate(drivers(seed), field, NO_LIMIT);
        DailyResults daily = result.daily();
        for (DailyVariable variable : DailyVariable.values()) {
            for (double value : daily.column(variable)) {
                boolean absentMoisture = variable == DailyVariable.MOISTURE && Double.isNaN(value);
                assertThat(absentMoisture || Double.isFinite(value))
                        .as(variable.column())
                        .isTrue();
            }
        }
        for (SeasonRecord season : result.completeSeasons()) {
            for (SeasonVariable variable : SeasonVariable.values()) {
                boolean addedLater = variable == SeasonVariable.RAIN_DEFICIT;
                assertThat(addedLater || Double.isFinite(season.value(variable)))
                        .as("%s in %s", variable.column(), season.growthYear())
                        .isTrue();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void everyLedgerAddsUp(long seed) {
        Random random = new Random(seed);
        FieldConditions field =
                TestFields.field(TestFields.randomGrass(random), TestFields.randomSoil(random), START.plusDays(100));
        List<YieldLedger> ledgers =
                PairedRuns.simulate(drivers(seed), field, NO_LIMIT).ledgers();
        assertThat(ledgers).isNotEmpty();
        for (YieldLedger l : ledgers) {
            double left = l.potentialMgHa()
                    - l.ageMgHa()
                    - l.droughtMgHa()
                    - l.excessWaterMgHa()
                    - l.frostMgHa()
                    - l.winterMgHa()
                    - l.leftOnFieldMgHa();
            assertThat(left).isCloseTo(l.harvestedMgHa(), within(1e-9));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void thePenaltySplitsExactly(long seed) {
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(0.5), START.plusDays(100));
        for (SeasonRecord season :
                PairedRuns.simulate(drivers(seed), field, NO_LIMIT).completeSeasons()) {
            double parts = season.value(SeasonVariable.PENALTY_THIS_SEASON)
                    + season.value(SeasonVariable.PENALTY_CARRIED_OVER);
            assertThat(parts).isCloseTo(season.value(SeasonVariable.DROUGHT_PENALTY), within(1e-9));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theSeasonsWaterRowCloses(long seed) {
        Random random = new Random(seed);
        FieldConditions field =
                TestFields.field(TestFields.randomGrass(random), TestFields.randomSoil(random), START.plusDays(100));
        for (SeasonRecord s :
                PairedRuns.simulate(drivers(seed), field, NO_LIMIT).completeSeasons()) {
            double in = s.value(SeasonVariable.SEASON_RAIN)
                    + s.value(SeasonVariable.IRRIGATION)
                    + s.value(SeasonVariable.GROUNDWATER)
                    - s.value(SeasonVariable.SNOW_CHANGE);
            double out = s.value(SeasonVariable.INTERCEPTION)
                    + s.value(SeasonVariable.RUNOFF)
                    + s.value(SeasonVariable.DRAINAGE)
                    + s.value(SeasonVariable.SOIL_EVAPORATION)
                    + s.value(SeasonVariable.TRANSPIRATION);
            double change = s.value(SeasonVariable.SOIL_WATER_END) - s.value(SeasonVariable.SOIL_WATER_START);
            assertThat(in - out - change).isCloseTo(0.0, within(1e-9));
        }
    }

    /**
     * The same drivers half a year apart, in years without 29 February. Radiation above clear sky makes reference evapotranspiration the same;
     * what is left is that the Sun's declination half a year apart is not exactly mirrored, so autumn starts a few days apart.
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void hemispheresMirror(long seed) {
        LocalDate north = LocalDate.of(2001, 1, 1);
        LocalDate south = LocalDate.of(2001, 7, 1);
        Map<WeatherVariable, double[]> columns =
                TestFields.randomColumns(TestFields.NORTH, north, 2 * 365, new Random(seed));
        Arrays.fill(columns.get(WeatherVariable.SOLAR), 45.0);
        FieldConditions northField = TestFields.withHarvest(
                TestFields.field(TestFields.grass(), TestFields.loam(0.8), north.minusYears(4)),
                new HarvestRule.OnDate(MonthDay.of(12, 1)),
                new GrowingSeason(MonthDay.of(4, 1), MonthDay.of(9, 28)));
        FieldConditions southField = TestFields.withHarvest(
                TestFields.field(TestFields.grass(), TestFields.loam(0.8), south.minusYears(4)),
                new HarvestRule.OnDate(MonthDay.of(6, 1)),
                new GrowingSeason(MonthDay.of(9, 29), MonthDay.of(3, 28)));
        SeasonRecord a = firstComplete(TestFields.NORTH, WeatherSeries.measured(north, columns), northField);
        SeasonRecord b = firstComplete(TestFields.SOUTH, WeatherSeries.measured(south, columns), southField);
        assertThat(b.growthYear()).isEqualTo(2001);
        assertThat(daysAfter(south, b.dates().emergence()))
                .isEqualTo(daysAfter(north, a.dates().emergence()));
        assertThat(b.value(SeasonVariable.SEASON_ET0)).isCloseTo(a.value(SeasonVariable.SEASON_ET0), within(1e-9));
        assertThat(b.value(SeasonVariable.HARVESTED))
                .isCloseTo(a.value(SeasonVariable.HARVESTED), within(0.03 * a.value(SeasonVariable.HARVESTED)));
    }

    private static SeasonRecord firstComplete(Site site, WeatherSeries weather, FieldConditions field) {
        return PairedRuns.simulate(DailyDrivers.of(site, weather), field, NO_LIMIT)
                .completeSeasons()
                .get(0);
    }

    private static long daysAfter(LocalDate start, @Nullable LocalDate date) {
        return date == null ? -1 : date.toEpochDay() - start.toEpochDay();
    }

    @Test
    void seasonsCutOffByTheWeatherAreReportedNotLow() {
        DailyDrivers whole = drivers(7);
        WeatherSeries weather = whole.weather();
        DailyDrivers cut =
                DailyDrivers.of(TestFields.NORTH, weather.between(START.plusDays(40), LocalDate.of(2004, 8, 15)));
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(1.0), LocalDate.of(1995, 5, 1));
        List<SeasonRecord> seasons = PairedRuns.simulate(cut, field, NO_LIMIT).seasons();
        assertThat(seasons).extracting(SeasonRecord::growthYear).containsExactly(2002, 2003, 2004);
        assertThat(seasons)
                .extracting(SeasonRecord::status)
                .containsExactly(SeasonStatus.COMPLETE, SeasonStatus.COMPLETE, SeasonStatus.ENDS_EARLY);
        assertThat(seasons.get(2).value(SeasonVariable.HARVESTED)).isNaN();
        assertThat(seasons.get(2).value(SeasonVariable.PEAK_BIOMASS)).isNaN();
    }

    @Test
    void aYearWithFilledRainIsReportedNotDry() {
        Map<WeatherVariable, double[]> columns =
                TestFields.randomColumns(TestFields.NORTH, START, SIX_YEARS, new Random(3));
        Origin[] origins = new Origin[SIX_YEARS];
        Arrays.fill(origins, Origin.MEASURED);
        Arrays.fill(origins, 365 + 150, 365 + 161, Origin.CLIMATOLOGY);
        WeatherSeries weather = WeatherSeries.of(START, columns, Map.of(WeatherVariable.RAIN, origins));
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.minusYears(5));
        List<SeasonRecord> strict = PairedRuns.simulate(DailyDrivers.of(TestFields.NORTH, weather), field, 10)
                .seasons();
        assertThat(strict.get(1).status()).isEqualTo(SeasonStatus.WEATHER_GAPS);
        assertThat(strict.get(1).value(SeasonVariable.HARVESTED)).isNaN();
        assertThat(PairedRuns.simulate(DailyDrivers.of(TestFields.NORTH, weather), field, 11)
                        .seasons()
                        .get(1)
                        .status())
                .isEqualTo(SeasonStatus.COMPLETE);
    }

    @Test
    void aHardWinterKillsAYoungStand() {
        Map<WeatherVariable, double[]> columns =
                TestFields.randomColumns(TestFields.NORTH, START, SIX_YEARS, new Random(5));
        Arrays.fill(columns.get(WeatherVariable.RAIN), 300, 405, 0.0);
        Arrays.fill(columns.get(WeatherVariable.TMIN), 365, 405, -45.0);
        Arrays.fill(columns.get(WeatherVariable.TMAX), 365, 405, -35.0);
        DailyDrivers drivers = DailyDrivers.of(TestFields.NORTH, WeatherSeries.measured(START, columns));
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.plusDays(120));
        List<SeasonRecord> seasons =
                PairedRuns.simulate(drivers, field, NO_LIMIT).seasons();
        assertThat(seasons.get(0).status()).isEqualTo(SeasonStatus.COMPLETE);
        assertThat(seasons.get(1).status()).isEqualTo(SeasonStatus.WINTER_KILLED);
    }

    @Test
    void youngStandsYieldLessThanFullOnes() {
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(1.5), START.plusDays(120));
        List<YieldLedger> ledgers =
                PairedRuns.simulate(drivers(11), field, NO_LIMIT).ledgers();
        assertThat(ledgers.get(0).ageMgHa()).isGreaterThan(ledgers.get(1).ageMgHa());
        assertThat(ledgers.get(1).ageMgHa()).isGreaterThan(ledgers.get(2).ageMgHa());
        assertThat(ledgers.get(4).ageMgHa()).isLessThan(0.1 * ledgers.get(4).potentialMgHa());
    }

    @Test
    void declineShowsAsAge() {
        FieldConditions steady = TestFields.field(TestFields.grass(), TestFields.loam(1.5), START.minusYears(12));
        FieldConditions ageing = TestFields.field(
                TestFields.grass().with(CropParameter.DECLINE_PER_YEAR, 0.05),
                TestFields.loam(1.5),
                START.minusYears(12));
        double before = PairedRuns.simulate(drivers(11), steady, NO_LIMIT)
                .ledgers()
                .get(3)
                .ageMgHa();
        double after = PairedRuns.simulate(drivers(11), ageing, NO_LIMIT)
                .ledgers()
                .get(3)
                .ageMgHa();
        assertThat(after - before).isGreaterThan(1.0);
    }

    @Test
    void irrigationOnDepletionTakesTheDroughtAway() {
        DailyDrivers dry = withRain(drivers(13), 0.4, 0.0);
        FieldConditions rainFed = TestFields.field(TestFields.grass(), TestFields.loam(0.8), START.minusYears(5));
        FieldConditions irrigated = TestFields.withIrrigation(rainFed, new Irrigation.OnDepletion(0.4, 30.0));
        SeasonRecord thirsty =
                PairedRuns.simulate(dry, rainFed, NO_LIMIT).completeSeasons().get(1);
        SeasonRecord watered =
                PairedRuns.simulate(dry, irrigated, NO_LIMIT).completeSeasons().get(1);
        assertThat(thirsty.value(SeasonVariable.DROUGHT_PENALTY_PCT)).isGreaterThan(20.0);
        assertThat(watered.value(SeasonVariable.DROUGHT_PENALTY_PCT)).isLessThan(3.0);
        assertThat(watered.value(SeasonVariable.IRRIGATION)).isGreaterThan(100.0);
    }

    @Test
    void aRestrictingLayerBringsExcessWater() {
        DailyDrivers wet = withRain(drivers(17), 2.5, 0.0);
        FieldConditions free = TestFields.field(TestFields.grass(), TestFields.loam(0.8), START.minusYears(5));
        FieldConditions perched = TestFields.field(
                TestFields.grass(),
                new org.thirstline.model.soil.SoilProfile(
                        free.soil().layers(), 9.0, 60.0, 0.5, Double.POSITIVE_INFINITY),
                START.minusYears(5));
        assertThat(excess(wet, perched)).isGreaterThan(excess(wet, free) + 0.5);
    }

    private static double excess(DailyDrivers drivers, FieldConditions field) {
        return PairedRuns.simulate(drivers, field, NO_LIMIT).completeSeasons().stream()
                .mapToDouble(season -> season.value(SeasonVariable.EXCESS_WATER_PENALTY))
                .sum();
    }

    @Test
    void plantedLaterInTheYearMeansLess() {
        FieldConditions early = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.plusDays(110));
        FieldConditions late = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.plusDays(190));
        double first = PairedRuns.simulate(drivers(19), early, NO_LIMIT)
                .completeSeasons()
                .get(0)
                .value(SeasonVariable.PEAK_BIOMASS);
        double second = PairedRuns.simulate(drivers(19), late, NO_LIMIT)
                .completeSeasons()
                .get(0)
                .value(SeasonVariable.PEAK_BIOMASS);
        assertThat(first).isGreaterThan(second);
    }

    @Test
    void aWindowWaitsForDryStemsAndTakesItsLastDayIfNeedBe() {
        FieldConditions base = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.minusYears(5));
        FieldConditions patient = TestFields.withHarvest(
                base, new HarvestRule.InWindow(MonthDay.of(12, 1), MonthDay.of(4, 10), 25.0, 10.0), base.season());
        FieldConditions hopeless = TestFields.withHarvest(
                base, new HarvestRule.InWindow(MonthDay.of(12, 1), MonthDay.of(1, 10), 1.0, 10.0), base.season());
        for (SeasonRecord season :
                PairedRuns.simulate(drivers(23), patient, NO_LIMIT).completeSeasons()) {
            assertThat(season.value(SeasonVariable.HARVEST_MOISTURE)).isLessThanOrEqualTo(25.0);
        }
        for (SeasonRecord season :
                PairedRuns.simulate(drivers(23), hopeless, NO_LIMIT).completeSeasons()) {
            assertThat(MonthDay.from(season.dates().harvest())).isEqualTo(MonthDay.of(1, 10));
        }
    }

    @Test
    void anAutumnCutIsGreenAndWet() {
        FieldConditions base = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.minusYears(5));
        FieldConditions green = TestFields.withHarvest(base, new HarvestRule.OnDate(MonthDay.of(8, 20)), base.season());
        SeasonRecord season = PairedRuns.simulate(drivers(29), green, NO_LIMIT)
                .completeSeasons()
                .get(1);
        assertThat(season.dates().canopyEndCause()).isEqualTo(org.thirstline.model.result.CanopyEnd.CUT);
        assertThat(season.value(SeasonVariable.HARVEST_MOISTURE)).isGreaterThan(50.0);
    }

    @Test
    void theSameInputGivesTheSameResultOnManyThreads() {
        DailyDrivers drivers = drivers(31);
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(0.7), START);
        List<Double> alone = harvests(drivers, field);
        List<List<Double>> together = IntStream.range(0, 16)
                .parallel()
                .mapToObj(i -> harvests(drivers, field))
                .toList();
        assertThat(together).allSatisfy(result -> assertThat(result).isEqualTo(alone));
    }

    private static List<Double> harvests(DailyDrivers drivers, FieldConditions field) {
        return PairedRuns.simulate(drivers, field, NO_LIMIT).seasons().stream()
                .map(season -> season.value(SeasonVariable.HARVESTED))
                .toList();
    }

    @Test
    void plantingsTheSameSpacingGiveTheSameDensity() {
        assertThat(Stand.spaced(START, 0.762, 0.762).plantsPerM2()).isCloseTo(1.722, within(0.001));
    }
}
