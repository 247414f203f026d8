package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.dlyLine;
import static org.thirstline.io.weather.WeatherSamples.file;
import static org.thirstline.io.weather.WeatherSamples.read;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.error.InputError;

/** Quirks of the public formats; expected values follow from the units that each provider documents. */
class PublicFormatsTest {

    private static final Offset<Double> EXACT = within(1e-9);

    @TempDir
    Path folder;

    @Test
    void ghcnDailyTenthsTraceMissingAndFailedValues() {
        RawWeather raw = read(folder, WeatherSamples.ghcnDaily());
        assertThat(raw.start()).isEqualTo(LocalDate.of(2001, 2, 27));
        assertThat(raw.days()).isEqualTo(4);
        assertThat(raw.absentDays()).isEqualTo(1);
        assertThat(raw.site().name()).isEqualTo("USW00003870");
        assertThat(raw.column(RawVariable.TMAX)).containsExactly(12.3, 8.9, Double.NaN, 15.0);
        assertThat(raw.column(RawVariable.TMIN)).containsExactly(-1.2, Double.NaN, Double.NaN, 1.0);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(0.0, 25.4, Double.NaN, Double.NaN);
        assertThat(raw.value(RawVariable.SUNSHINE, 3)).isEqualTo(5.5);
        assertThat(raw.value(RawVariable.WIND, 3)).isEqualTo(3.6);
        assertThat(raw.windHeightM()).isEqualTo(10.0);
        assertThat(raw.issues())
                .filteredOn(issue -> issue.kind() == IssueKind.FAILED_AT_SOURCE)
                .singleElement()
                .satisfies(issue -> {
                    assertThat(issue.found()).isEqualTo("-5.0");
                    assertThat(issue.action()).contains("flag I");
                });
    }

    @Test
    void ghcnDailyLinesTrimmedAtTheirEndAreRead() {
        String text =
                WeatherSamples.ghcnDaily().replaceAll("(-9999   )+\n", "\n").replaceAll(" +\n", "\n");
        assertThat(text.lines().mapToInt(String::length).max().orElse(0)).isLessThan(269);
        assertThat(read(folder, text).column(RawVariable.TMAX)).containsExactly(12.3, 8.9, Double.NaN, 15.0);
    }

    @Test
    void ghcnDailyRefusesDaysThatDoNotExistAndTheSameMonthTwice() {
        String line = dlyLine("USW00003870", 1900, 2, "TMAX", Map.of(29, "  100  0"));
        refused(InputError.BAD_DATE, () -> read(folder, line));
        String once = dlyLine("USW00003870", 1900, 2, "TMAX", Map.of(28, "  100  0"));
        refused(InputError.DUPLICATE_DATE, () -> read(folder, once + once));
        refused(InputError.LINE_MALFORMED, () -> read(folder, once + "rubbish\n"));
        refused(InputError.NOT_A_NUMBER, () -> read(folder, once.replace("  100  0", "  1x0  0")));
    }

    @Test
    void ghcnRainSummedOverDaysIsReportedAndNotUsed() {
        RawWeather raw = read(
                folder,
                WeatherSamples.ghcnDaily()
                        + dlyLine("USW00003870", 2001, 3, "MDPR", Map.of(2, "  300  0"))
                        + dlyLine("USW00003870", 2001, 3, "DAPR", Map.of(2, "    3  0")));
        assertThat(raw.issues()).anySatisfy(issue -> {
            assertThat(issue.action()).startsWith("a sum of several days");
            assertThat(issue.found()).isEqualTo("30.0");
        });
        assertThat(raw.value(RawVariable.RAIN, 3)).isNaN();
    }

    @Test
    void ghcnLongFormSkipsFailedValuesAndKnowsAbsentDates() {
        RawWeather raw = read(folder, WeatherSamples.GHCN_LONG);
        assertThat(raw.days()).isEqualTo(4);
        assertThat(raw.absentDays()).isEqualTo(1);
        assertThat(raw.column(RawVariable.TMIN)).containsExactly(5.0, Double.NaN, Double.NaN, 2.2);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(19.6, 0.0, Double.NaN, Double.NaN);
    }

    @Test
    void severalStationsNeedAChoice() {
        String two =
                WeatherSamples.GHCN_LONG + "ITE00100554,20070105,TMAX,-75,,,E,\nITE00100554,20070105,TMIN,-99,,,E,\n";
        assertThat(refused(InputError.STATION_NEEDED, () -> read(folder, two)))
                .hasMessageContaining("USW00003870, ITE00100554");
        RawWeather raw = WeatherReaders.read(file(folder, two), ReadOptions.DEFAULT.withStation("ITE00100554"));
        assertThat(raw.days()).isEqualTo(1);
        assertThat(raw.value(RawVariable.TMAX, 0)).isEqualTo(-7.5);
        refused(
                InputError.STATION_NOT_FOUND,
                () -> WeatherReaders.read(file(folder, two), ReadOptions.DEFAULT.withStation("XX")));
    }

    @Test
    void ghcnLongFormWithHeaderAndWithoutStationIsRead() {
        RawWeather raw =
                read(folder, "date,attr,value,a,b,c,d\n20140101,TMAX,-171,,,W,2400\n20140101,TMIN,-221,,,W,2400\n");
        assertThat(raw.value(RawVariable.TMAX, 0)).isEqualTo(-17.1);
        String header = "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n";
        assertThat(read(folder, header + WeatherSamples.GHCN_LONG).days()).isEqualTo(4);
    }

    @Test
    void ghcnAccessTableHasCommasInsideQuotes() {
        RawWeather raw = read(folder, WeatherSamples.GHCN_ACCESS);
        assertThat(raw.site()).isEqualTo(new SiteInfo("GREER, SC US", 34.8831, -82.2203, 286.5));
        assertThat(raw.column(RawVariable.TMAX)).containsExactly(7.2, 0.0);
        assertThat(raw.column(RawVariable.TMIN)).containsExactly(-6.1, Double.NaN);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(0.0, 3.3);
        assertThat(raw.column(RawVariable.SUNSHINE)).containsExactly(Double.NaN, 2.0);
    }

    @Test
    void tableInUnknownUnitsIsRefused() {
        refused(
                InputError.UNIT_NOT_STATED,
                () -> read(folder, "\"STATION\",\"NAME\",\"DATE\",\"TMAX\"\n\"A\",\"B\",\"2001-01-01\",\"44\"\n"));
    }

    @Test
    void nasaPowerBlockGivesPlaceUnitAndMissingCode() {
        RawWeather raw = read(folder, WeatherSamples.NASA_POWER);
        assertThat(raw.site()).isEqualTo(new SiteInfo(null, 52.25, 5.5, 12.5));
        assertThat(raw.start()).isEqualTo(LocalDate.of(2020, 1, 1));
        assertThat(raw.column(RawVariable.SOLAR)).containsExactly(2.5, Double.NaN, 3.6);
        assertThat(raw.column(RawVariable.HUMIDITY_MEAN)).containsExactly(88.1, 90.0, Double.NaN);
        assertThat(raw.windHeightM()).isEqualTo(10.0);
    }

    @Test
    void nasaPowerKilowattHoursAreConverted() {
        RawWeather raw = read(folder, WeatherSamples.NASA_POWER.replace("(MJ/m^2/day)", "(kW-hr/m^2/day)"));
        assertThat(raw.value(RawVariable.SOLAR, 0)).isCloseTo(9.0, EXACT);
        refused(
                InputError.UNIT_NOT_UNDERSTOOD,
                () -> read(folder, WeatherSamples.NASA_POWER.replace("(MJ/m^2/day)", "(cal/ft^2)")));
    }

    @Test
    void nasaPowerMonthAndDayAndOlderMissingCodeAreRead() {
        RawWeather raw = read(
                folder,
                "LAT,LON,YEAR,MM,DD,DOY,T2M_MIN,T2M_MAX,PRECTOT\n40.1,-88.2,2019,02,28,59,-99,5,0.5\n40.1,-88.2,2019,03,01,60,1,6,-99\n");
        assertThat(raw.start()).isEqualTo(LocalDate.of(2019, 2, 28));
        assertThat(raw.site().latitudeDeg()).isEqualTo(40.1);
        assertThat(raw.missing(RawVariable.TMIN)).isEqualTo(1);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(0.5, Double.NaN);
    }

    @Test
    void nasaPowerWithoutBlockShowsItsUnitOnlyByItsSize() {
        String header = "YEAR,MO,DY,T2M_MIN,T2M_MAX,ALLSKY_SFC_SW_DWN\n";
        RawWeather raw = read(folder, header + "2019,6,30,10,20,25.2\n");
        assertThat(raw.value(RawVariable.SOLAR, 0)).isEqualTo(25.2);
        assertThat(raw.issues()).anyMatch(issue -> issue.kind() == IssueKind.ASSUMED);
        refused(InputError.UNIT_NOT_STATED, () -> read(folder, header + "2019,6,30,10,20,7.2\n"));
    }

    @Test
    void daymetLeapYearLacksItsLastDayAndRadiationIsADaylightMean() {
        RawWeather raw = read(folder, WeatherSamples.DAYMET);
        assertThat(raw.site()).isEqualTo(new SiteInfo(null, 36.0133, -84.2625, 279.0));
        assertThat(raw.start()).isEqualTo(LocalDate.of(2004, 12, 29));
        assertThat(raw.days()).isEqualTo(4);
        assertThat(raw.absentDays()).isEqualTo(1);
        assertThat(raw.value(RawVariable.TMAX, 2)).isNaN();
        assertThat(raw.value(RawVariable.TMAX, 3)).isEqualTo(11.0);
        assertThat(raw.value(RawVariable.SOLAR, 0)).isCloseTo(6.92, EXACT);
        assertThat(raw.value(RawVariable.VAPOUR_PRESSURE, 0)).isEqualTo(0.5);
    }

    @Test
    void daymetHeaderMangledByAStatisticsProgramIsRead() {
        RawWeather raw = read(
                folder,
                "\"year\",\"yday\",\"dayl..s.\",\"prcp..mm.day.\",\"srad..W.m.2.\",\"swe..kg.m.2.\",\"tmax..deg.c.\",\"tmin..deg.c.\","
                        + "\"vp..Pa.\",\"latitude\",\"longitude\"\n2018,1,32486.4,0,220.8,0,-14,-24,80,41.81405,-88.05032\n");
        assertThat(raw.site().latitudeDeg()).isEqualTo(41.81405);
        assertThat(raw.value(RawVariable.TMIN, 0)).isEqualTo(-24.0);
        assertThat(raw.value(RawVariable.SOLAR, 0)).isCloseTo(220.8 * 32486.4 / 1e6, EXACT);
        refused(InputError.BAD_DATE, () -> read(folder, "year,yday,tmin (deg c),tmax (deg c)\n2018,366,1,2\n"));
    }

    @Test
    void knmiTenthsTraceCodesAndStationList() {
        RawWeather raw = read(folder, WeatherSamples.KNMI);
        assertThat(raw.site()).isEqualTo(new SiteInfo("De Bilt", 52.1, 5.18, 1.9));
        assertThat(raw.column(RawVariable.TMIN)).containsExactly(-0.8, -2.1, -6.3);
        assertThat(raw.column(RawVariable.SUNSHINE)).containsExactly(0.0, 2.7, 0.0);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(5.8, 0.0, 1.3);
        assertThat(raw.column(RawVariable.SOLAR)).containsExactly(2.53, 2.55, Double.NaN);
        assertThat(raw.column(RawVariable.WIND)).containsExactly(2.6, 1.5, Double.NaN);
        assertThat(raw.value(RawVariable.HUMIDITY_MIN, 0)).isEqualTo(85.0);
        assertThat(raw.windHeightM()).isEqualTo(10.0);
    }

    @Test
    void uscrnCopiesUnderColumnNames() {
        RawWeather raw = read(
                folder,
                "SOLARAD_DAILY,WBANNO,LST_DATE,LATITUDE,LONGITUDE,T_DAILY_MAX,T_DAILY_MIN,P_DAILY_CALC,RH_DAILY_AVG\n"
                        + "28.12,54808,20120630,40.05,-88.37,35.1,18.2,0.0,60.1\n-9999,54808,20120701,40.05,-88.37,36,-9999,-9999,-9999\n");
        assertThat(raw.format()).isEqualTo(WeatherFormat.USCRN);
        assertThat(raw.site().latitudeDeg()).isEqualTo(40.05);
        assertThat(raw.value(RawVariable.SOLAR, 0)).isEqualTo(28.12);
        assertThat(raw.value(RawVariable.SOLAR, 1)).isNaN();
        assertThat(raw.value(RawVariable.TMAX, 1)).isEqualTo(36.0);
        assertThat(raw.missing(RawVariable.HUMIDITY_MEAN)).isEqualTo(1);
    }

    /** A summary of the day looks like the access table but has none of its elements. */
    @Test
    void tableOfOtherElementsIsRefused() {
        refused(
                InputError.FORMAT_MISMATCH,
                () -> read(
                        folder,
                        "\"STATION\",\"DATE\",\"LATITUDE\",\"TEMP\",\"TEMP_ATTRIBUTES\",\"MAX\",\"MAX_ATTRIBUTES\"\n"
                                + "\"72530094846\",\"2012-07-01\",\"41.99\",\"  81.5\",\"24\",\"  93.0\",\" \"\n"));
    }

    @Test
    void uscrnHasLongitudeFirstAndSeveralMissingCodes() {
        RawWeather raw = read(folder, WeatherSamples.USCRN);
        assertThat(raw.site()).isEqualTo(new SiteInfo("WBAN 54808", 40.05, -88.37, null));
        assertThat(raw.column(RawVariable.TMIN)).containsExactly(18.2, Double.NaN, 20.0);
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(0.0, Double.NaN, 12.7);
        assertThat(raw.column(RawVariable.SOLAR)).containsExactly(28.12, Double.NaN, 20.5);
        assertThat(raw.has(RawVariable.WIND)).isFalse();
        refused(InputError.FIELD_COUNT, () -> read(folder, WeatherSamples.USCRN + "54808 20120703 2.6\n"));
    }

    @Test
    void openMeteoUnitsStandInTheHeaderAndTheWindMaximumIsNoMean() {
        RawWeather raw = read(folder, WeatherSamples.OPEN_METEO);
        assertThat(raw.site()).isEqualTo(new SiteInfo(null, 52.54833, 13.407822, 38.0));
        assertThat(raw.value(RawVariable.TMAX, 0)).isCloseTo(12.0, EXACT);
        assertThat(raw.value(RawVariable.RAIN, 0)).isCloseTo(2.54, EXACT);
        assertThat(raw.value(RawVariable.WIND, 0)).isCloseTo(2.0, EXACT);
        assertThat(raw.value(RawVariable.SUNSHINE, 0)).isCloseTo(8.5, EXACT);
        assertThat(raw.value(RawVariable.DEW_POINT, 0)).isEqualTo(4.5);
        assertThat(raw.missing(RawVariable.SOLAR)).isEqualTo(1);
        RawWeather withoutMean =
                read(folder, WeatherSamples.OPEN_METEO.replace("wind_speed_10m_mean", "wind_gusts_10m"));
        assertThat(withoutMean.has(RawVariable.WIND)).isFalse();
        refused(
                InputError.UNIT_NOT_UNDERSTOOD,
                () -> read(folder, WeatherSamples.OPEN_METEO.replace("(inch)", "(bucket)")));
    }

    @Test
    void openMeteoHourlyTableInFrontAndUnixTimesAreUnderstood() {
        String place =
                "latitude,longitude,elevation,utc_offset_seconds,timezone,timezone_abbreviation\n52.5,13.4,38.0,3600,Europe/Berlin,CET\n\n";
        String daily = "time,temperature_2m_max (°C),temperature_2m_min (°C)\n";
        RawWeather raw = read(
                folder,
                place + "time,temperature_2m (°C)\n2020-01-01T00:00,1.5\n2020-01-01T01:00,1.6\n\n" + daily
                        + "1577833200,5.5,1.1\n1577919600,6.5,1.2\n");
        // 1577833200 s is 2019-12-31 23:00 UTC, midnight in Berlin
        assertThat(raw.start()).isEqualTo(LocalDate.of(2020, 1, 1));
        assertThat(raw.column(RawVariable.TMAX)).containsExactly(5.5, 6.5);
        refused(
                InputError.FORMAT_MISMATCH,
                () -> read(folder, place + "time,temperature_2m (°C)\n2020-01-01T00:00,1.5\n"));
    }
}
