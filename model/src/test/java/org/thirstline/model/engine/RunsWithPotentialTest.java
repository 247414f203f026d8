package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;

/** The short pair of runs says what the full set says, and no more. */
class RunsWithPotentialTest {

    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int SIX_YEARS = 6 * 365 + 1;
    private static final int NO_LIMIT = 366;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void penaltiesAreThoseOfTheFullSet(long seed) {
        DailyDrivers drivers = DailyDrivers.of(
                TestFields.NORTH, TestFields.randomWeather(TestFields.NORTH, START, SIX_YEARS, new Random(seed)));
        FieldConditions field = TestFields.field(TestFields.grass(), TestFields.loam(0.8), START);
        List<SeasonRecord> full = PairedRuns.simulate(drivers, field, NO_LIMIT).seasons();
        List<SeasonRecord> pair = new SeasonRuns(drivers, field, NO_LIMIT).simulateWithPotential(field);

        assertThat(pair).hasSameSizeAs(full);
        for (int i = 0; i < full.size(); i++) {
            for (SeasonVariable variable : SeasonVariable.values()) {
                boolean ofOtherTwins = variable == SeasonVariable.PENALTY_THIS_SEASON
                        || variable == SeasonVariable.PENALTY_CARRIED_OVER
                        || variable == SeasonVariable.EXCESS_WATER_PENALTY;
                double expected = ofOtherTwins ? Double.NaN : full.get(i).value(variable);
                assertThat(Double.compare(pair.get(i).value(variable), expected))
                        .as(variable.column())
                        .isZero();
            }
        }
    }
}
