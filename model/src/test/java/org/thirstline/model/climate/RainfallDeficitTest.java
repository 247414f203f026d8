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
import org.thirstline.model.error.ModelError;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

class RainfallDeficitTest {

    private static final Site NORTH = new Site("Larkmoor field station (invented)", 52.0, 20.0);
    private static final Site SOUTH = new Site("Larkmoor field station (invented)", -35.0, 20.0);

    /** Rain of year y is y - 2000 mm on each day. */
    private static WeatherSeries yearsOfRisingRain(int firstYear, int lastYear, int filledDaysOf2003) {
        LocalDate start = LocalDate.of(firstYear, 1, 1);
        int days = (int) (LocalDate.of(lastYear, 12, 31).toEpochDay() - start.toEpochDay()) + 1;
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            columns.put(variable, new double[days]);
        }
        Arrays.fill(columns.get(WeatherVariable.TMAX), 20.0);
        Arrays.fill(columns.get(WeatherVariable.TMIN), 10.0);
        Arrays.fill(columns.get(WeatherVariable.SOLAR), 15.0);
        Arrays.fill(columns.get(WeatherVariable.WIND), 2.0);
        Arrays.fill(columns.get(WeatherVariable.VAPOUR_PRESSURE), 1.0);
        Origin[] origins = new Origin[days];
        Arrays.fill(origins, Origin.MEASURED);
        for (int day = 0; day < days; day++) {
            columns.get(WeatherVariable.RAIN)[day] = start.plusDays(day).getYear() - 2000.0;
        }
        int june = (int) (LocalDate.of(2003, 6, 1).toEpochDay() - start.toEpochDay());
        if (filledDaysOf2003 > 0) {
            Arrays.fill(origins, june, june + filledDaysOf2003, Origin.CLIMATOLOGY);
        }
        return WeatherSeries.of(start, columns, Map.of(WeatherVariable.RAIN, origins));
    }

    private static GrowingSeason june() {
        return new GrowingSeason(MonthDay.of(6, 1), MonthDay.of(6, 30));
    }

    @Test
    void deficitIsNormalMinusActual() {
        RainfallDeficit deficit =
                RainfallDeficit.of(yearsOfRisingRain(2001, 2005, 0), NORTH, june(), NormalPeriod.of(2001, 2005));

        assertThat(deficit.normals().meanRainMm()).isCloseTo(90.0, within(1e-9));
        assertThat(deficit.deficitMm(2001)).hasValueCloseTo(60.0, within(1e-9));
        assertThat(deficit.deficitMm(2005)).hasValueCloseTo(-60.0, within(1e-9));
        assertThat(deficit.deficitMm(2006)).isEmpty();
        assertThat(deficit.years()).hasSize(5).allMatch(year -> year.days() == 30);
    }

    @Test
    void deficitsOverTheNormalPeriodAddUpToZero() {
        RainfallDeficit deficit =
                RainfallDeficit.ofWholeRecord(yearsOfRisingRain(2001, 2012, 0), NORTH, GrowingSeason.defaultFor(NORTH));

        double sum = deficit.years().stream()
                .mapToDouble(year -> deficit.deficitMm(year.growthYear()).orElseThrow())
                .sum();
        assertThat(sum).isCloseTo(0.0, within(1e-9));
    }

    @Test
    void yearsWithManyFilledDaysStayOutOfTheNormal() {
        RainfallDeficit six =
                RainfallDeficit.of(yearsOfRisingRain(2001, 2005, 6), NORTH, june(), NormalPeriod.of(2001, 2005));
        RainfallDeficit five =
                RainfallDeficit.of(yearsOfRisingRain(2001, 2005, 5), NORTH, june(), NormalPeriod.of(2001, 2005));

        assertThat(six.normals().yearsLeftOut()).containsExactly(2003);
        assertThat(six.normals().yearsUsed()).containsExactly(2001, 2002, 2004, 2005);
        assertThat(six.isReliable(2003)).isFalse();
        assertThat(six.isReliable(2004)).isTrue();
        assertThat(six.normals().notice().orElseThrow())
                .contains("rests on 4 years")
                .contains("2003");
        assertThat(five.normals().yearsLeftOut()).isEmpty();
        assertThat(five.isReliable(2003)).isTrue();
        assertThat(five.isReliable(1999)).isFalse();
    }

    @Test
    void thirtyYearsNeedNoNotice() {
        WeatherSeries weather = yearsOfRisingRain(2001, 2030, 0);

        assertThat(Normals.of(WindowRain.of(weather, NORTH, june()), NormalPeriod.of(2001, 2030))
                        .notice())
                .isEmpty();
        assertThat(Normals.of(WindowRain.of(weather, NORTH, june()), NormalPeriod.of(2001, 2029))
                        .notice())
                .isPresent();
    }

    @Test
    void southernWindowCrossesTheCalendarYear() {
        RainfallDeficit deficit =
                RainfallDeficit.ofWholeRecord(yearsOfRisingRain(2001, 2004, 0), SOUTH, GrowingSeason.defaultFor(SOUTH));

        assertThat(deficit.years()).extracting(WindowRain::growthYear).containsExactly(2001, 2002, 2003);
        // October to December of 2001 at 1 mm, January to March of 2002 at 2 mm
        assertThat(deficit.year(2001).orElseThrow().rainMm()).isCloseTo(92.0 + 2.0 * 90.0, within(1e-9));
    }

    @Test
    void windowThatRunsBackwardsIsRefused() {
        GrowingSeason backwards = new GrowingSeason(MonthDay.of(10, 1), MonthDay.of(3, 31));
        WeatherSeries weather = yearsOfRisingRain(2001, 2004, 0);

        assertThatThrownBy(() -> RainfallDeficit.ofWholeRecord(weather, NORTH, backwards))
                .isInstanceOfSatisfying(
                        InputException.class, error -> assertThat(error.code()).isEqualTo(ModelError.INCONSISTENT))
                .hasMessageContaining("1 January");
    }

    @Test
    void normalWithoutUsableYearIsRefused() {
        WeatherSeries weather = yearsOfRisingRain(2001, 2004, 0);

        assertThatThrownBy(() -> RainfallDeficit.of(weather, NORTH, june(), NormalPeriod.of(1961, 1990)))
                .isInstanceOfSatisfying(
                        InputException.class, error -> assertThat(error.code()).isEqualTo(ModelError.INCONSISTENT));
        assertThatThrownBy(() -> NormalPeriod.of(2001, 2000))
                .isInstanceOfSatisfying(InputException.class, error -> assertThat(error.code())
                        .isEqualTo(ModelError.VALUE_OUT_OF_RANGE));
    }

    @Test
    void leapDayWindowIsKeptAsWritten() {
        GrowingSeason leapDay = new GrowingSeason(MonthDay.of(2, 29), MonthDay.of(3, 1));

        assertThat(WindowRain.of(yearsOfRisingRain(2003, 2004, 0), NORTH, leapDay))
                .extracting(WindowRain::days)
                .containsExactly(2, 2);
    }

    @Test
    void climaticWaterDeficitIsEvapotranspirationMinusRain() {
        DailyDrivers drivers = DailyDrivers.of(NORTH, yearsOfRisingRain(2001, 2002, 0));
        int first = drivers.weather().indexOf(LocalDate.of(2002, 6, 1));
        double et0 = 0.0;
        for (int day = first; day < first + 30; day++) {
            et0 += drivers.et0(day);
        }

        assertThat(WindowRain.climaticWaterDeficitMm(drivers, june(), 2002)).isCloseTo(et0 - 60.0, within(1e-9));
        assertThatThrownBy(() -> WindowRain.climaticWaterDeficitMm(drivers, june(), 2003))
                .isInstanceOf(InputException.class);
    }
}
