package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherSeries;

/** Repeated runs share work, so they must say exactly what a run of its own says. */
class WatchedRunTest {

    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int NO_LIMIT = 400;

    private static DailyDrivers drivers(int days, long seed) {
        return DailyDrivers.of(
                TestFields.NORTH,
                WeatherSeries.measured(
                        START, TestFields.randomColumns(TestFields.NORTH, START, days, new Random(seed))));
    }

    private static FieldConditions field(CropParameters crop, SoilProfile soil) {
        return TestFields.field(crop, soil, LocalDate.of(2001, 4, 20));
    }

    private static void assertSame(List<SeasonRecord> repeated, List<SeasonRecord> alone, String as) {
        assertThat(repeated).as(as).hasSameSizeAs(alone);
        for (int i = 0; i < alone.size(); i++) {
            assertThat(repeated.get(i).status()).as(as).isEqualTo(alone.get(i).status());
            assertThat(repeated.get(i).dates()).as(as).isEqualTo(alone.get(i).dates());
            for (SeasonVariable variable : SeasonVariable.values()) {
                // Boxed, so that a missing value equals a missing value.
                assertThat(Double.valueOf(repeated.get(i).value(variable)))
                        .as(as + " " + variable)
                        .isEqualTo(Double.valueOf(alone.get(i).value(variable)));
            }
        }
    }

    /** Would fail if a parameter that shapes the shared part of the weather were not on the list of those. */
    @Test
    void everyParameterChangedAloneGivesTheRunOfItsOwn() {
        DailyDrivers drivers = drivers(4 * 365, 3);
        CropParameters base = TestFields.grass();
        SoilProfile soil = TestFields.loam(1.2);
        SeasonRuns runs = new SeasonRuns(drivers, field(base, soil), NO_LIMIT);
        for (CropParameter parameter : CropParameter.values()) {
            for (double factor : new double[] {0.85, 1.2}) {
                CropParameters changed;
                try {
                    changed = base.with(parameter, base.get(parameter) * factor + (base.get(parameter) == 0 ? 0.1 : 0));
                } catch (InputException outOfOrder) {
                    continue;
                }
                assertSame(
                        runs.simulate(field(changed, soil), new int[0]).seasons(),
                        PairedRuns.simulateActual(drivers, field(changed, soil), NO_LIMIT),
                        parameter.key() + " times " + factor);
            }
        }
    }

    @Test
    void watchedDaysAreThoseOfTheDailyTable() {
        DailyDrivers drivers = drivers(3 * 365, 5);
        SoilProfile soil = TestFields.randomSoil(new Random(8));
        FieldConditions field = field(TestFields.grass(), soil);
        int[] days = {180, 181, 560, 900, 1094};
        StandResult whole = PairedRuns.simulate(drivers, field, NO_LIMIT);
        WatchedRun run = new SeasonRuns(drivers, field, NO_LIMIT).simulate(field, days);
        for (int i = 0; i < days.length; i++) {
            assertThat(run.leafAreaIndex(i)).isEqualTo(whole.daily().at(DailyVariable.LEAF_AREA_INDEX, days[i]));
            assertThat(run.interceptedFraction(i))
                    .isEqualTo(whole.daily().at(DailyVariable.INTERCEPTED_FRACTION, days[i]));
            assertThat(run.standingMgHa(i))
                    .isCloseTo(whole.daily().at(DailyVariable.STANDING, days[i]) / 100.0, within(1e-9));
            assertThat(run.soilWaterMm(i, Double.NaN))
                    .isCloseTo(whole.daily().at(DailyVariable.SOIL_WATER, days[i]), within(1e-9));
            double twoLayers =
                    whole.daily().soilWaterMm(0, days[i]) + 0.5 * whole.daily().soilWaterMm(1, days[i]);
            double depthM = 0.5 * (whole.daily().layerBottomM(0) + whole.daily().layerBottomM(1));
            assertThat(run.soilWaterMm(i, depthM)).isCloseTo(twoLayers, within(1e-9));
        }
    }

    @Test
    void weatherAfterTheLastHarvestDayChangesNothingBeforeIt() {
        DailyDrivers drivers = drivers(5 * 365, 7);
        SoilProfile soil = TestFields.loam(1.0);
        HarvestRule rule = new HarvestRule.InWindow(MonthDay.of(2, 10), MonthDay.of(4, 5), 18.0, 0.9);
        FieldConditions field = TestFields.withHarvest(
                field(TestFields.grass(), soil), rule, GrowingSeason.defaultFor(TestFields.NORTH));
        LocalDate last = SeasonRuns.lastHarvestDay(TestFields.NORTH, 2003, rule);
        assertThat(last).isEqualTo(LocalDate.of(2004, 4, 5));
        DailyDrivers until = DailyDrivers.of(TestFields.NORTH, drivers.weather().between(START, last));
        List<SeasonRecord> whole = new SeasonRuns(drivers, field, NO_LIMIT).simulate(field);
        List<SeasonRecord> cut = new SeasonRuns(until, field, NO_LIMIT).simulate(field);
        assertSame(cut.subList(0, 3), whole.subList(0, 3), "years up to 2003");
    }

    @Test
    void availableWaterAndDepthAreMultiplied() {
        Random random = new Random(11);
        for (int i = 0; i < 200; i++) {
            SoilProfile soil = TestFields.randomSoil(random);
            double factor = 0.75 + 0.5 * random.nextDouble();
            if (soil.depthM() * factor < 0.2) {
                continue;
            }
            SoilProfile deeper = soil.withDepthTimes(factor);
            assertThat(deeper.depthM()).isCloseTo(factor * soil.depthM(), within(1e-9));
            assertThat(soil.withDepthTimes(1.0).availableWaterMm()).isCloseTo(soil.availableWaterMm(), within(1e-9));
            try {
                assertThat(soil.withAvailableWaterTimes(factor).availableWaterMm())
                        .isCloseTo(factor * soil.availableWaterMm(), within(1e-9));
            } catch (InputException tooFull) {
                assertThat(factor).isGreaterThan(1.0);
            }
        }
    }
}
