package org.thirstline.model.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.error.InputException;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** A window counts if the record holds all of it, from its first day to its last. */
class WindowRainTest {

    private static final Site NORTH = new Site("invented north", 45.0, 0.0);
    private static final Site SOUTH = new Site("invented south", -45.0, 0.0);
    private static final GrowingSeason MAY = new GrowingSeason(MonthDay.of(5, 1), MonthDay.of(5, 31));

    private static DailyDrivers drivers(Site site, LocalDate from, LocalDate until) {
        int days = (int) (until.toEpochDay() - from.toEpochDay()) + 1;
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            double[] column = new double[days];
            Arrays.fill(
                    column,
                    switch (variable) {
                        case TMIN -> 8.0;
                        case TMAX -> 20.0;
                        case RAIN -> 2.0;
                        case SOLAR -> 18.0;
                        case WIND -> 2.0;
                        case VAPOUR_PRESSURE -> 1.0;
                    });
            columns.put(variable, column);
        }
        return DailyDrivers.of(site, WeatherSeries.measured(from, columns));
    }

    @Test
    void aRecordOfExactlyTheWindowIsEnough() {
        DailyDrivers exact = drivers(NORTH, LocalDate.of(2001, 5, 1), LocalDate.of(2001, 5, 31));
        assertThat(WindowRain.of(exact.weather(), NORTH, MAY)).containsExactly(new WindowRain(2001, 62.0, 31, 0));
        double et0 = 0.0;
        for (int day = 0; day < 31; day++) {
            et0 += exact.et0(day);
        }
        assertThat(WindowRain.climaticWaterDeficitMm(exact, MAY, 2001)).isCloseTo(et0 - 62.0, within(1.0e-9));
    }

    @Test
    void aDayLessIsNot() {
        DailyDrivers late = drivers(NORTH, LocalDate.of(2001, 5, 2), LocalDate.of(2001, 5, 31));
        DailyDrivers early = drivers(NORTH, LocalDate.of(2001, 5, 1), LocalDate.of(2001, 5, 30));
        for (DailyDrivers lacking : new DailyDrivers[] {late, early}) {
            assertThat(WindowRain.of(lacking.weather(), NORTH, MAY)).isEmpty();
            assertThatThrownBy(() -> WindowRain.climaticWaterDeficitMm(lacking, MAY, 2001))
                    .isInstanceOf(InputException.class);
        }
    }

    /** In the south the growth year turns on 1 July: May to August runs backwards there, and October to March in the north. */
    @Test
    void aWindowAcrossTheTurnOfTheGrowthYearIsRefused() {
        GrowingSeason summer = new GrowingSeason(MonthDay.of(5, 1), MonthDay.of(8, 31));
        GrowingSeason winter = new GrowingSeason(MonthDay.of(10, 1), MonthDay.of(3, 31));
        LocalDate from = LocalDate.of(2001, 1, 1);
        LocalDate until = LocalDate.of(2003, 12, 31);
        DailyDrivers south = drivers(SOUTH, from, until);
        DailyDrivers north = drivers(NORTH, from, until);
        assertThatThrownBy(() -> WindowRain.climaticWaterDeficitMm(south, summer, 2001))
                .hasMessageContaining("1 July");
        assertThatThrownBy(() -> WindowRain.climaticWaterDeficitMm(north, winter, 2001))
                .hasMessageContaining("1 January");
        assertThat(WindowRain.of(south.weather(), SOUTH, winter)).hasSize(2);
    }
}
