package org.thirstline.model.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.thirstline.model.evapotranspiration.Atmosphere;

/** What is derived from site and weather: FAO-56 Example 18 (Allen et al. 1998), Uccle on 6 July, and limits by hand. */
class DailyDriversTest {

    private static final Offset<Double> EXACT = within(1.0e-12);

    private static DailyDrivers drivers(double wind, double vapour) {
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        columns.put(WeatherVariable.TMIN, new double[] {0.0, 12.3});
        columns.put(WeatherVariable.TMAX, new double[] {10.0, 21.5});
        columns.put(WeatherVariable.RAIN, new double[] {0.0, 3.0});
        columns.put(WeatherVariable.SOLAR, new double[] {5.0, 22.07});
        columns.put(WeatherVariable.WIND, new double[] {1.0, wind});
        columns.put(WeatherVariable.VAPOUR_PRESSURE, new double[] {0.5, vapour});
        return DailyDrivers.of(
                new Site("Uccle", 50.8, 100.0), WeatherSeries.measured(LocalDate.of(2001, 7, 5), columns));
    }

    @Test
    void exampleEighteen() {
        DailyDrivers day = drivers(2.078, 1.409);
        assertThat(day.days()).isEqualTo(2);
        assertThat(day.extraterrestrial(1)).isCloseTo(41.09, within(0.005));
        assertThat(day.dayLength(1)).isCloseTo(16.1, within(0.05));
        assertThat(day.et0(1)).isCloseTo(3.88, within(0.005));
        assertThat(day.relativeHumidity(1)).isCloseTo(100.0 * 1.409 / 1.997, within(0.05));
        assertThat(day.tmin(1)).isEqualTo(12.3);
        assertThat(day.tmax(1)).isEqualTo(21.5);
        assertThat(day.tmean(1)).isCloseTo(16.9, EXACT);
        assertThat(day.rain(1)).isEqualTo(3.0);
        assertThat(day.solar(1)).isEqualTo(22.07);
        double lowest = 100.0 * 1.409 / Atmosphere.saturationVapourPressure(21.5);
        assertThat(day.cropCoefficientClimate(1)).isCloseTo(0.04 * 0.078 - 0.004 * (lowest - 45.0), EXACT);
    }

    @Test
    void climateTermStaysInTheRangeItWasMadeFor() {
        assertThat(drivers(9.0, 0.05).cropCoefficientClimate(1)).isCloseTo(0.04 * 4.0 + 0.004 * 25.0, EXACT);
        assertThat(drivers(0.2, 5.0).cropCoefficientClimate(1)).isCloseTo(-0.04 - 0.004 * 35.0, EXACT);
        assertThat(drivers(2.0, 5.0).relativeHumidity(1)).isEqualTo(100.0);
    }
}
