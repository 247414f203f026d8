package org.thirstline.model.result;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.thirstline.model.weather.WeatherVariable;

class ResultColumnsTest {

    @Test
    void everyColumnHasANameOfItsOwnAUnitAndAMeaning() {
        assertThat(SeasonVariable.values()).extracting(SeasonVariable::column).doesNotHaveDuplicates();
        assertThat(DailyVariable.values()).extracting(DailyVariable::column).doesNotHaveDuplicates();
        assertThat(SeasonVariable.values())
                .allSatisfy(variable ->
                        assertThat(variable.unit() + variable.meaning()).isNotBlank())
                .allSatisfy(variable -> assertThat(variable.meaning().length()).isGreaterThan(4));
        assertThat(DailyVariable.values())
                .allSatisfy(variable -> assertThat(variable.unit()).isNotBlank())
                .allSatisfy(variable -> assertThat(variable.meaning().length()).isGreaterThan(3));
        assertThat(WeatherVariable.RAIN.column()).isEqualTo("rain_mm");
        assertThat(WeatherVariable.RAIN.unit()).isEqualTo("mm/d");
        assertThat(WeatherVariable.RAIN.meaning()).contains("recipitation");
        assertThat(SeasonVariable.HARVESTED.isYield()).isTrue();
        assertThat(SeasonVariable.SEASON_RAIN.isYield()).isFalse();
        assertThat(SeasonVariable.HARVESTED.unit()).isEqualTo("Mg/ha");
    }

    @Test
    void daysGiveBackWhatWasWritten() {
        DailyResults days = new DailyResults(LocalDate.of(2001, 2, 27), 3, new double[] {0.1, 0.4});
        days.set(DailyVariable.RAIN, 2, 7.5);
        days.setSoilWater(1, new double[] {20.0, 60.0});
        assertThat(days.at(DailyVariable.RAIN, 2)).isEqualTo(7.5);
        assertThat(days.column(DailyVariable.RAIN)).containsExactly(0.0, 0.0, 7.5);
        assertThat(days.soilWaterMm(0, 1)).isEqualTo(20.0);
        assertThat(days.soilWaterMm(1, 1)).isEqualTo(60.0);
        assertThat(days.date(2)).isEqualTo(LocalDate.of(2001, 3, 1));
        assertThat(days.start()).isEqualTo(LocalDate.of(2001, 2, 27));
        assertThat(days.days()).isEqualTo(3);
        assertThat(days.layers()).isEqualTo(2);
        assertThat(days.layerBottomM(1)).isEqualTo(0.4);
    }

    @Test
    void aChangedSeasonLeavesTheFirstAsItWas() {
        double[] values = new double[SeasonVariable.values().length];
        Arrays.fill(values, 1.0);
        SeasonRecord.Dates dates = new SeasonRecord.Dates(null, null, null, null, null);
        SeasonRecord season = new SeasonRecord(2005, 4, SeasonStatus.COMPLETE, dates, values);
        SeasonRecord other = season.with(SeasonVariable.HARVESTED, 12.0);
        assertThat(season.value(SeasonVariable.HARVESTED)).isEqualTo(1.0);
        assertThat(other.value(SeasonVariable.HARVESTED)).isEqualTo(12.0);
        assertThat(other.value(SeasonVariable.HEIGHT)).isEqualTo(1.0);
        assertThat(other.growthYear()).isEqualTo(2005);
        assertThat(other.standAge()).isEqualTo(4);
        assertThat(other.isComplete()).isTrue();
        assertThat(other.status()).isEqualTo(SeasonStatus.COMPLETE);
        assertThat(other.dates()).isSameAs(dates);
        assertThat(new SeasonRecord(2005, 4, SeasonStatus.WEATHER_GAPS, dates, values).isComplete())
                .isFalse();
    }
}
