package org.thirstline.io.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.read;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Site;

/** Made-up years whose normals and frost dates can be told by hand. */
class ClimateSummariesTest {

    private static final String COLD = ",-2,8,";
    private static final String WARM = ",10,22,";

    @TempDir
    Path folder;

    /** Temperatures as given, 3 mm on every day, 6 mm in July. */
    private WeatherRecord record(
            LocalDate first, LocalDate last, double latitudeDeg, Function<LocalDate, String> temperatures) {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        for (LocalDate date = first; !date.isAfter(last); date = date.plusDays(1)) {
            text.append(date).append(temperatures.apply(date));
            text.append(date.getMonthValue() == 7 ? 6 : 3).append('\n');
        }
        return WeatherAssembly.assemble(
                read(folder, text.toString()),
                new Site("Larkmoor field station", latitudeDeg, 10),
                AssemblySettings.DEFAULT);
    }

    /** Frost up to 30 April less the last digit of the year, and from 1 October on. */
    private static String northern(LocalDate date) {
        LocalDate last = LocalDate.of(date.getYear(), 4, 30).minusDays(date.getYear() % 10);
        return !date.isAfter(last) || date.getMonthValue() >= 10 ? COLD : WARM;
    }

    private WeatherRecord northern(int firstYear, int lastYear) {
        return record(
                LocalDate.of(firstYear, 1, 1), LocalDate.of(lastYear, 12, 31), 50, ClimateSummariesTest::northern);
    }

    private static String csv(ClimateSummary summary) {
        return new String(ClimateTable.of(summary).toBytes(), StandardCharsets.UTF_8);
    }

    @Test
    void normalsAndFrostDates() {
        ClimateSummary summary = ClimateSummaries.of(northern(2001, 2009));
        ClimateNormal july = summary.months().get(6);
        assertThat(july.value(ClimateVariable.RAIN)).isCloseTo(186.0, within(1e-9));
        assertThat(july.years(ClimateVariable.RAIN)).isEqualTo(9);
        assertThat(summary.months().get(0).value(ClimateVariable.TMIN)).isCloseTo(-2.0, within(1e-9));
        assertThat(summary.season().value(ClimateVariable.RAIN)).isCloseTo(3.0 * 183 + 3.0 * 31, within(1e-9));
        assertThat(summary.season().of(ClimateVariable.RAIN).measuredPct()).isEqualTo(100.0);
        assertThat(summary.season().of(ClimateVariable.SOLAR).measuredPct()).isZero();
        // 30 April is day 120, 121 in 2004 and 2008: 119 118 117 117 115 114 113 113 111
        assertThat(summary.lastSpringFrost()).contains(new FrostDate(50, 115.0));
        // 1 October is day 274, 275 in two of nine years
        assertThat(summary.firstAutumnFrost()).contains(new FrostDate(50, 274.0));
        assertThat(summary.yearsWithBothFrosts()).isEqualTo(9);
        double last = (119 + 118 + 117 + 117 + 115 + 114 + 113 + 113 + 111) / 9.0;
        assertThat(summary.meanFrostFreeDays()).isCloseTo(274.0 + 2.0 / 9.0 - last - 1.0, within(1e-9));
        assertThat(csv(summary))
                .contains("rain,07,186.00,mm,,2001,2009,9,100.0\n")
                .contains("last_spring_frost,50 pct of years,115.00,day of year,04-25,2001,2009,9,\n")
                .contains("first_autumn_frost,2003,274.00,day of year,10-01,,,,\n");
    }

    /** The mean of the cold days is 3 °C, of the warm ones 16 °C, so the season by temperature is that between the frosts. */
    @Test
    void growingSeasonByTemperature() {
        ClimateSummary summary = ClimateSummaries.of(northern(2001, 2002));
        assertThat(summary.years()).extracting(YearSeason::growingDays).containsExactly(274 - 119 - 1, 274 - 118 - 1);
        Function<LocalDate, String> fiveWarmDays = date -> date.getDayOfYear() <= 5 ? WARM : COLD;
        LocalDate first = LocalDate.of(2001, 1, 1);
        assertThat(ClimateSummaries.of(record(first, LocalDate.of(2001, 12, 31), 50, fiveWarmDays))
                        .meanGrowingDays())
                .isZero();
        assertThat(ClimateSummaries.of(record(first, LocalDate.of(2001, 12, 31), 50, date -> WARM))
                        .meanGrowingDays())
                .isEqualTo(365.0);
    }

    /** The same seasons half a year on: frost to 30 October, and from 1 April on. */
    @Test
    void southOfTheEquatorYearsRunFromJulyToJune() {
        Function<LocalDate, String> southern =
                date -> date.getMonthValue() >= 4 && date.getMonthValue() <= 10 ? COLD : WARM;
        ClimateSummary summary =
                ClimateSummaries.of(record(LocalDate.of(2000, 1, 1), LocalDate.of(2005, 12, 31), -35, southern));
        assertThat(summary.southern()).isTrue();
        // five whole years from July to June; the halves at either end are left out
        assertThat(summary.years()).extracting(YearSeason::year).containsExactly(2000, 2001, 2002, 2003, 2004);
        // 31 October is day 123 from 1 July; 1 April is day 275, 276 across a leap day
        assertThat(summary.years())
                .allSatisfy(year -> assertThat(year.lastFrostDay()).isEqualTo(123.0));
        assertThat(summary.years())
                .extracting(YearSeason::firstFrostDay)
                .containsExactly(275.0, 275.0, 275.0, 276.0, 275.0);
        assertThat(summary.meanFrostFreeDays()).isCloseTo(151.2, within(1e-9));
        assertThat(summary.meanGrowingDays()).isCloseTo(151.2, within(1e-9));
        // October to March in five of the six years asked for; the sixth ends in December
        assertThat(summary.season().years(ClimateVariable.RAIN)).isEqualTo(5);
        assertThat(summary.season().value(ClimateVariable.RAIN)).isCloseTo(3.0 * 182.2, within(1e-9));
        assertThat(csv(summary))
                .contains("last_spring_frost,50 pct of years,123.00,day of year,10-31,")
                .contains("first_autumn_frost,50 pct of years,275.00,day of year,04-01,");
    }

    /** Where only some years have a frost, the shares count the others too. */
    @Test
    void yearsWithoutFrostCount() {
        Function<LocalDate, String> rare = date ->
                date.getYear() % 5 == 0 && date.getMonthValue() == 2 && date.getDayOfMonth() == 10 ? COLD : WARM;
        ClimateSummary summary =
                ClimateSummaries.of(record(LocalDate.of(2000, 1, 1), LocalDate.of(2010, 12, 31), 40, rare));
        assertThat(summary.years()).hasSize(11);
        assertThat(summary.yearsWithBothFrosts()).isZero();
        assertThat(summary.meanFrostFreeDays()).isNaN();
        // frost in 3 of 11 years: the last in nine of ten is 10 February, in half of the years there is none
        assertThat(summary.lastSpringFrost()).contains(new FrostDate(90, 41.0), new FrostDate(50, Double.NaN));
        assertThat(summary.firstAutumnFrost()).contains(new FrostDate(90, Double.NaN));
        assertThat(csv(summary)).contains("last_spring_frost,50 pct of years,,day of year,,2000,2010,11,\n");
    }

    @Test
    void monthsThatAreNotWholeOrMostlyFilledAreLeftOut() {
        ClimateSummary summary = ClimateSummaries.of(northern(2001, 2003), 2000, 2004);
        assertThat(summary.months().get(0).years(ClimateVariable.TMIN)).isEqualTo(3);
        assertThat(summary.years()).hasSize(3);
        Function<LocalDate, String> holes = date ->
                date.getYear() == 2002 && date.getMonthValue() == 6 && date.getDayOfMonth() <= 6 ? ",,22," : WARM;
        ClimateSummary gaps =
                ClimateSummaries.of(record(LocalDate.of(2001, 1, 1), LocalDate.of(2003, 12, 31), 50, holes));
        ClimateNormal june = gaps.months().get(5);
        assertThat(june.years(ClimateVariable.TMIN)).isEqualTo(2);
        assertThat(june.years(ClimateVariable.TMAX)).isEqualTo(3);
        assertThat(june.years(ClimateVariable.ET0)).isEqualTo(2);
        assertThat(gaps.season().years(ClimateVariable.TMIN)).isEqualTo(2);
        assertThat(gaps.years()).extracting(YearSeason::year).containsExactly(2001, 2003);
    }

    @Test
    void precipitationIndexAtThreeScales() {
        ClimateSummary summary = ClimateSummaries.of(northern(1991, 2020));
        assertThat(summary.indices()).extracting(index -> index.scaleMonths()).isEqualTo(List.of(3, 6, 12));
        assertThat(csv(summary)).contains("precipitation_index_12_months,1991-11,,1,,,,,\n");
    }

    @Test
    void withoutRainThereIsNoNormalOfIt() {
        String text = "date,tmin_c,tmax_c\n2001-01-01,1,2\n2001-01-02,1,2\n2001-01-03,1,2\n";
        WeatherRecord record = WeatherAssembly.assemble(
                read(folder, text), new Site("a", 50, 10), AssemblySettings.DEFAULT.withRainRequired(false));
        ClimateSummary summary = ClimateSummaries.of(record);
        assertThat(summary.months().get(0).of(ClimateVariable.RAIN).value()).isNaN();
        assertThat(summary.years()).isEmpty();
        assertThat(summary.lastSpringFrost()).isEmpty();
    }
}
