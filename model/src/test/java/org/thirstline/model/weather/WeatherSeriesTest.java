package org.thirstline.model.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class WeatherSeriesTest {

    private static final LocalDate START = LocalDate.of(2003, 12, 30);
    private static final int DAYS = 5;

    /** Day i of variable v holds 10 v + i. */
    private static Map<WeatherVariable, double[]> columns() {
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            double[] column = new double[DAYS];
            Arrays.setAll(column, day -> 10.0 * variable.ordinal() + day);
            columns.put(variable, column);
        }
        return columns;
    }

    private static void assertRefused(ModelError code, ThrowingCallable what) {
        assertThatThrownBy(what).isInstanceOfSatisfying(InputException.class, refused -> assertThat(refused.code())
                .isEqualTo(code));
    }

    @Test
    void daysCountFromTheStartAcrossTheNewYear() {
        WeatherSeries series = WeatherSeries.measured(START, columns());

        assertThat(series.start()).isEqualTo(START);
        assertThat(series.end()).isEqualTo(LocalDate.of(2004, 1, 3));
        assertThat(series.days()).isEqualTo(DAYS);
        assertThat(series.date(2)).isEqualTo(LocalDate.of(2004, 1, 1));
        assertThat(series.indexOf(LocalDate.of(2004, 1, 1))).isEqualTo(2);
        assertThat(series.indexOf(START.minusDays(1))).isEqualTo(-1);
        assertThat(series.value(WeatherVariable.SOLAR, 4)).isEqualTo(34.0);
        assertThat(series.column(WeatherVariable.WIND)).containsExactly(40.0, 41.0, 42.0, 43.0, 44.0);
        assertThat(series.origin(WeatherVariable.WIND, 0)).isEqualTo(Origin.MEASURED);
    }

    @Test
    void aSeriesIsNoLongerTheCallersArrays() {
        Map<WeatherVariable, double[]> columns = columns();
        WeatherSeries series = WeatherSeries.measured(START, columns);
        columns.get(WeatherVariable.RAIN)[0] = 99.0;
        series.column(WeatherVariable.RAIN)[1] = 99.0;

        assertThat(series.column(WeatherVariable.RAIN)).containsExactly(20.0, 21.0, 22.0, 23.0, 24.0);
    }

    @Test
    void originsAreCountedInsideTheRecordOnly() {
        Origin[] origins = {Origin.ESTIMATED, Origin.MEASURED, Origin.MEASURED, Origin.CLIMATOLOGY, Origin.MEASURED};
        WeatherSeries series = WeatherSeries.of(START, columns(), Map.of(WeatherVariable.RAIN, origins));

        assertThat(series.origin(WeatherVariable.RAIN, 3)).isEqualTo(Origin.CLIMATOLOGY);
        assertThat(series.count(WeatherVariable.RAIN, Origin.MEASURED, 0, 4)).isEqualTo(3);
        assertThat(series.count(WeatherVariable.RAIN, Origin.MEASURED, -7, 70)).isEqualTo(3);
        assertThat(series.count(WeatherVariable.RAIN, Origin.MEASURED, 2, 3)).isEqualTo(1);
        assertThat(series.count(WeatherVariable.RAIN, Origin.ESTIMATED, 0, 0)).isEqualTo(1);
        assertThat(series.count(WeatherVariable.RAIN, Origin.ESTIMATED, 1, 4)).isZero();
    }

    @Test
    void aPartKeepsItsDatesValuesAndOrigins() {
        Origin[] origins = {Origin.MEASURED, Origin.ESTIMATED, Origin.MEASURED, Origin.CLIMATOLOGY, Origin.MEASURED};
        WeatherSeries series = WeatherSeries.of(START, columns(), Map.of(WeatherVariable.TMIN, origins));

        WeatherSeries part = series.between(START.plusDays(1), START.plusDays(3));

        assertThat(part.start()).isEqualTo(START.plusDays(1));
        assertThat(part.end()).isEqualTo(START.plusDays(3));
        assertThat(part.column(WeatherVariable.TMAX)).containsExactly(11.0, 12.0, 13.0);
        assertThat(part.origin(WeatherVariable.TMIN, 0)).isEqualTo(Origin.ESTIMATED);
        assertThat(part.origin(WeatherVariable.TMIN, 2)).isEqualTo(Origin.CLIMATOLOGY);
    }

    @ParameterizedTest
    @EnumSource(WeatherVariable.class)
    void everyColumnIsNeededWholeAndFinite(WeatherVariable variable) {
        Map<WeatherVariable, double[]> missing = columns();
        missing.remove(variable);
        assertRefused(ModelError.VALUE_MISSING, () -> WeatherSeries.measured(START, missing));
        Map<WeatherVariable, double[]> shorter = columns();
        shorter.put(variable, new double[DAYS - 1]);
        assertRefused(ModelError.COLUMN_LENGTH, () -> WeatherSeries.measured(START, shorter));
        Map<WeatherVariable, double[]> gap = columns();
        gap.get(variable)[DAYS - 1] = Double.NaN;
        assertRefused(ModelError.WEATHER_NOT_FINITE, () -> WeatherSeries.measured(START, gap));
        assertRefused(
                ModelError.COLUMN_LENGTH,
                () -> WeatherSeries.of(START, columns(), Map.of(variable, new Origin[] {Origin.MEASURED})));
    }

    @ParameterizedTest
    @EnumSource(WeatherVariable.class)
    void onlyTemperaturesMayBeBelowZero(WeatherVariable variable) {
        boolean temperature = variable == WeatherVariable.TMIN || variable == WeatherVariable.TMAX;
        Map<WeatherVariable, double[]> zero = columns();
        zero.get(variable)[DAYS - 1] = 0.0;
        assertThat(WeatherSeries.measured(START, zero).value(variable, DAYS - 1))
                .isZero();
        Map<WeatherVariable, double[]> negative = columns();
        negative.get(variable)[DAYS - 1] = -0.1;
        if (temperature) {
            assertThat(WeatherSeries.measured(START, negative).value(variable, DAYS - 1))
                    .isEqualTo(-0.1);
        } else {
            assertRefused(ModelError.WEATHER_NEGATIVE, () -> WeatherSeries.measured(START, negative));
        }
    }

    @Test
    void theEquatorIsNorthern() {
        assertThat(new Site("a", 0.0, 0.0).isSouthern()).isFalse();
        assertThat(new Site("b", -0.1, 0.0).isSouthern()).isTrue();
        assertThat(new Site("c", 45.0, 0.0).latitudeRad()).isCloseTo(0.25 * Math.PI, within(1.0e-15));
        assertRefused(ModelError.VALUE_OUT_OF_RANGE, () -> new Site("d", 90.1, 0.0));
        assertRefused(ModelError.VALUE_OUT_OF_RANGE, () -> new Site("e", 45.0, 8851.0));
    }
}
