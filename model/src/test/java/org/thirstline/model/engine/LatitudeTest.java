package org.thirstline.model.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Anywhere on Earth, polar day and night included, and through leap years. */
class LatitudeTest {

    private static final LocalDate START = LocalDate.of(2003, 1, 1);
    private static final int FIVE_YEARS = 5 * 365 + 2;

    @ParameterizedTest
    @ValueSource(doubles = {-90.0, -66.7, -35.0, -0.001, 0.0, 12.0, 23.44, 52.0, 66.7, 78.2, 90.0})
    void everyLatitudeGivesNumbers(double latitude) {
        Site site = new Site("invented", latitude, 100.0);
        FieldConditions base = TestFields.field(TestFields.grass(), TestFields.loam(1.0), START.minusYears(5));
        FieldConditions field = TestFields.withHarvest(base, base.harvest(), GrowingSeason.defaultFor(site));
        WeatherSeries weather = TestFields.randomWeather(site, START, FIVE_YEARS, new Random(9));
        StandResult result = PairedRuns.simulate(DailyDrivers.of(site, weather), field, 366);
        assertThat(result.seasons()).isNotEmpty();
        for (DailyVariable variable : DailyVariable.values()) {
            if (variable != DailyVariable.MOISTURE) {
                for (double value : result.daily().column(variable)) {
                    assertThat(Double.isFinite(value)).as(variable.column()).isTrue();
                }
            }
        }
    }

    @Test
    void weatherThatCannotBeIsRefused() {
        for (WeatherVariable variable : new WeatherVariable[] {WeatherVariable.RAIN, WeatherVariable.SOLAR}) {
            Map<WeatherVariable, double[]> columns =
                    TestFields.randomColumns(TestFields.NORTH, START, 30, new Random(9));
            columns.get(variable)[7] = -1.0;
            assertThatThrownBy(() -> WeatherSeries.measured(START, columns))
                    .isInstanceOfSatisfying(
                            InputException.class, e -> assertThat(e.code()).isEqualTo(ModelError.WEATHER_NEGATIVE))
                    .hasMessageContaining("2003-01-08");
        }
    }
}
