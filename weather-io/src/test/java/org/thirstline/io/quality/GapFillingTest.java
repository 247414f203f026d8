package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.read;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.function.Function;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherVariable;

class GapFillingTest {

    private static final Site SITE = new Site("Larkmoor field station", 45.72, 200.0);

    /** Half a unit of the last decimal that records keep. */
    private static final Offset<Double> KEPT_2 = within(0.005);

    private static final Offset<Double> KEPT_3 = within(0.0005);

    @TempDir
    Path folder;

    @Test
    void shortTemperatureGapsAreStraightLines() {
        WeatherRecord record = years(1, date -> isBetween(date, "2001-03-10", "2001-03-14") ? ",," : values(date));
        int day = record.series().indexOf(LocalDate.of(2001, 3, 9));
        double before = record.series().value(WeatherVariable.TMIN, day);
        double after = record.series().value(WeatherVariable.TMIN, day + 6);
        for (int i = 1; i <= 5; i++) {
            assertThat(record.series().value(WeatherVariable.TMIN, day + i))
                    .isCloseTo(before + (after - before) * i / 6.0, KEPT_2);
            assertThat(record.series().origin(WeatherVariable.TMIN, day + i)).isEqualTo(Origin.INTERPOLATED);
        }
        assertThat(record.count(WeatherVariable.TMAX, Origin.INTERPOLATED)).isEqualTo(5);
    }

    @Test
    void longTemperatureGapsTakeTheSameDatesOfOtherYears() {
        WeatherRecord record = years(4, date -> isBetween(date, "2002-03-10", "2002-03-15") ? ",," : values(date));
        int day = record.series().indexOf(LocalDate.of(2002, 3, 12));
        assertThat(record.count(WeatherVariable.TMIN, Origin.CLIMATOLOGY)).isEqualTo(6);
        // the same 15 dates in the other three years, and in 2002 those of them that are there
        double sum = 0.0;
        int count = 0;
        for (int year = 2001; year <= 2004; year++) {
            for (int away = -7; away <= 7; away++) {
                LocalDate date = LocalDate.of(year, 3, 12).plusDays(away);
                if (!isBetween(date, "2002-03-10", "2002-03-15")) {
                    sum += tmin(date);
                    count++;
                }
            }
        }
        assertThat(record.series().value(WeatherVariable.TMIN, day)).isCloseTo(sum / count, within(0.01));
    }

    @Test
    void missingRainIsWhatIsUsualNeverZero() {
        WeatherRecord record = years(
                3,
                date -> date.equals(LocalDate.of(2002, 6, 15))
                        ? "10,20,"
                        : "10,20," + (date.getMonthValue() == 6 ? (date.getDayOfMonth() % 2) * 4 : 0));
        int day = record.series().indexOf(LocalDate.of(2002, 6, 15));
        assertThat(record.series().origin(WeatherVariable.RAIN, day)).isEqualTo(Origin.CLIMATOLOGY);
        // 31 May to 30 June in three years: 15 days of 4 mm among 31, less the missing one, which is odd
        assertThat(record.series().value(WeatherVariable.RAIN, day))
                .isCloseTo((3 * 15 - 1) * 4.0 / (3 * 31 - 1), KEPT_2);
        // the constant temperatures of the made-up years are rightly suspect
        assertThat(record.issues())
                .filteredOn(issue -> issue.kind() != IssueKind.SUSPECT)
                .singleElement()
                .satisfies(issue -> {
                    assertThat(issue.kind()).isEqualTo(IssueKind.CLIMATOLOGY);
                    assertThat(issue.variableName()).isEqualTo("rain_mm");
                });
    }

    @Test
    void endsWithoutTemperatureAreCutNotFilled() {
        WeatherRecord record = years(
                1,
                date -> isBetween(date, "2001-01-01", "2001-02-03") || isBetween(date, "2001-12-30", "2001-12-31")
                        ? ",5,1"
                        : values(date));
        assertThat(record.series().start()).isEqualTo(LocalDate.of(2001, 2, 4));
        assertThat(record.series().end()).isEqualTo(LocalDate.of(2001, 12, 29));
        assertThat(record.issues())
                .filteredOn(issue -> issue.kind() == IssueKind.CUT_OFF)
                .extracting(issue -> issue.days())
                .containsExactly(34, 2);
    }

    @Test
    void filledExtremesNeverCross() {
        WeatherRecord record = years(
                1,
                date -> date.getDayOfMonth() % 3 == 0
                        ? "," + (date.getDayOfMonth() % 2 == 0 ? -20 : 5) + ",0"
                        : (date.getDayOfMonth() % 5) + ",12,0");
        double[] tmin = record.series().column(WeatherVariable.TMIN);
        double[] tmax = record.series().column(WeatherVariable.TMAX);
        for (int day = 0; day < tmin.length; day++) {
            assertThat(tmin[day]).isLessThanOrEqualTo(tmax[day]);
        }
        assertThat(Arrays.stream(tmax).min()).hasValue(-20.0);
    }

    @Test
    void meanTemperatureAndOneExtremeGiveTheOther() {
        WeatherRecord record = one("tmin_c,tmax_c,tmean_c,rain_mm", "2,10,6,0", ",12,7,0", "3,11,7,0");
        assertThat(record.series().value(WeatherVariable.TMIN, 1)).isEqualTo(2.0);
        assertThat(record.series().origin(WeatherVariable.TMIN, 1)).isEqualTo(Origin.ESTIMATED);
    }

    /**
     * Source: FAO-56 example 5 (e_a from RH_min 54 %, RH_max 82 % at 18 and 25 °C: 1.70 kPa) and example 14 (wind 3.2 m/s at 10 m: 2.4 m/s),
     * example 15 (Lyon, 45.72° N, 200 m, July 14.8 and 26.6 °C: R_s 22.3 by k_Rs 0.16; worked there for the month, here for the 15th).
     */
    @Test
    void estimatesAgreeWithThePublishedExamples() {
        WeatherRecord humid = one("tmin_c,tmax_c,rh_min_pct,rh_max_pct,rain_mm", "18,25,54,82,0");
        assertThat(humid.series().value(WeatherVariable.VAPOUR_PRESSURE, 0)).isCloseTo(1.70, KEPT_2);
        WeatherRecord windy = one("tmin_c,tmax_c,wind_10m_m_s,rain_mm", "18,25,3.2,0");
        assertThat(windy.series().value(WeatherVariable.WIND, 0)).isCloseTo(2.4, within(0.05));
        WeatherRecord lyon = one("tmin_c,tmax_c,rain_mm", "14.8,26.6,0");
        assertThat(lyon.series().value(WeatherVariable.SOLAR, 0)).isCloseTo(22.3, within(0.05));
    }

    /** Every method of the day, with the text that reports it. Saturation pressures of 8, 10 and 20 °C from FAO-56 Table 2.3: 1.073, 1.228, 2.338 kPa. */
    @ParameterizedTest
    @CsvSource({
        "'tmin_c,tmax_c,rain_mm,dew_point_c', '10,20,0,8', VAPOUR_PRESSURE, 1.073, eq. 14",
        "'tmin_c,tmax_c,rain_mm,rh_mean_pct', '10,20,0,70', VAPOUR_PRESSURE, 1.2481, eq. 19",
        "'tmin_c,tmax_c,rain_mm,rh_mean_pct', '10,20,0,104', VAPOUR_PRESSURE, 1.783, eq. 19",
        "'tmin_c,tmax_c,rain_mm', '10,20,0', VAPOUR_PRESSURE, 1.228, eq. 48",
        "'tmin_c,tmax_c,rain_mm', '10,20,0', WIND, 2, FAO-56 p. 63",
    })
    void methodOfAnEstimateIsReported(String header, String line, WeatherVariable variable, double value, String text) {
        WeatherRecord record = one(header, line);
        assertThat(record.series().value(variable, 0)).isCloseTo(value, KEPT_3);
        assertThat(record.series().origin(variable, 0)).isEqualTo(Origin.ESTIMATED);
        assertThat(record.issues())
                .filteredOn(issue -> issue.variableName().equals(variable.column()))
                .singleElement()
                .satisfies(issue -> assertThat(issue.action()).contains(text));
    }

    @Test
    void sunshineGoesBeforeTemperatureRange() {
        WeatherRecord record =
                one("tmin_c,tmax_c,rain_mm,sunshine_h,solar_mj_m2", "10,20,0,0,", "10,20,0,24,", "10,20,0,,");
        double[] solar = record.series().column(WeatherVariable.SOLAR);
        // eq. 35: a quarter of R_a without sunshine, three quarters at full sunshine
        assertThat(solar[1] / solar[0]).isCloseTo(3.0, within(0.02));
        assertThat(record.issues()).anyMatch(issue -> issue.action().contains("eq. 35"));
        assertThat(record.issues()).anyMatch(issue -> issue.action().contains("eq. 50"));
    }

    @Test
    void coefficientOfTheTemperatureRangeIsASetting() {
        String text = "date,tmin_c,tmax_c,rain_mm\n2001-07-15,14,20,0\n";
        double inland = WeatherAssembly.assemble(read(folder, text), SITE, AssemblySettings.DEFAULT)
                .series()
                .value(WeatherVariable.SOLAR, 0);
        double coast = WeatherAssembly.assemble(
                        read(folder, text), SITE, AssemblySettings.DEFAULT.withSolarTemperatureCoefficient(0.19))
                .series()
                .value(WeatherVariable.SOLAR, 0);
        assertThat(coast / inland).isCloseTo(0.19 / 0.16, KEPT_3);
    }

    @Test
    void reportCountsByVariableYearAndKind() throws java.io.IOException {
        WeatherRecord record = years(2, date -> date.getDayOfYear() == 100 ? "5,10," : values(date));
        WeatherRecord withoutWind = WeatherAssembly.assemble(
                read(
                        folder,
                        "date,tmin_c,tmax_c,rain_mm,solar_mj_m2,vapour_pressure_kpa\n2001-12-31,5,10,-3,5,0.7\n2002-01-01,5,10,2,5,0.7\n"),
                SITE,
                AssemblySettings.DEFAULT);
        assertThat(WeatherReport.rows(record))
                .filteredOn(row -> row.variable().equals("rain_mm") && row.kind() == IssueKind.CLIMATOLOGY)
                .hasSize(2);
        StringBuilder text = new StringBuilder();
        WeatherReport.write(withoutWind, text);
        assertThat(text.toString()).isEqualTo("""
                        variable,year,kind,count,first_date,last_date,example_value,action
                        rain_mm,2001,impossible,1,2001-12-31,2001-12-31,-3.0,rain outside 0 to 1830 mm; taken as missing
                        rain_mm,2001,climatology,1,2001-12-31,2001-12-31,,"mean daily rain of the time of year (15 days either side), so that a gap is no drought"
                        wind_2m_m_s,2001,estimated,1,2001-12-31,2001-12-31,,default wind of 2.0 m/s (FAO-56 p. 63)
                        wind_2m_m_s,2002,estimated,1,2002-01-01,2002-01-01,,default wind of 2.0 m/s (FAO-56 p. 63)
                        """);
    }

    private static boolean isBetween(LocalDate date, String first, String last) {
        return !date.isBefore(LocalDate.parse(first)) && !date.isAfter(LocalDate.parse(last));
    }

    private static double tmin(LocalDate date) {
        return Math.rint(100.0 * (10.0 - 8.0 * Math.cos(date.getDayOfYear() / 58.0) + date.getYear() % 3)) / 100.0;
    }

    private static String values(LocalDate date) {
        double tmin = tmin(date);
        return tmin + "," + (tmin + 8.0) + "," + (date.toEpochDay() % 3);
    }

    /** Years of weather from 2001 with temperatures and rain made by a rule; all else given. */
    private WeatherRecord years(int years, Function<LocalDate, String> rule) {
        StringBuilder text =
                new StringBuilder("date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa\n");
        LocalDate end = LocalDate.of(2001 + years, 1, 1);
        for (LocalDate date = LocalDate.of(2001, 1, 1); date.isBefore(end); date = date.plusDays(1)) {
            String values = rule.apply(date);
            text.append(date).append(',').append(values).append(",5,2,0.5\n");
        }
        return WeatherAssembly.assemble(read(folder, text.toString()), SITE, AssemblySettings.DEFAULT);
    }

    /** Consecutive days from 15 July 2001. */
    private WeatherRecord one(String columns, String... lines) {
        StringBuilder text = new StringBuilder("date," + columns + "\n");
        for (int i = 0; i < lines.length; i++) {
            text.append(LocalDate.of(2001, 7, 15).plusDays(i))
                    .append(',')
                    .append(lines[i])
                    .append('\n');
        }
        return WeatherAssembly.assemble(read(folder, text.toString()), SITE, AssemblySettings.DEFAULT);
    }
}
