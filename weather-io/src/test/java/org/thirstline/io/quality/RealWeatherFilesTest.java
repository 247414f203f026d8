package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.error.InputError;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.WeatherFormat;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.io.weather.WeatherTable;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherVariable;

/**
 * Real files of the providers. Numbers of days, missing values and suspect days are those of the catalogue that lies with the files;
 * totals and extremes were taken from the same files by a short script of its own in another language.
 */
class RealWeatherFilesTest {

    /** Sums of tenths, added in another order. */
    private static final Offset<Double> SUM = within(1e-6);

    @TempDir
    Path folder;

    private static RawWeather read(String name) {
        return WeatherReaders.read(SharedData.file(name), ReadOptions.DEFAULT);
    }

    private static double sum(RawWeather raw, RawVariable variable) {
        return Arrays.stream(raw.column(variable)).filter(v -> !Double.isNaN(v)).sum();
    }

    private static double most(RawWeather raw, RawVariable variable) {
        return Arrays.stream(raw.column(variable))
                .filter(v -> !Double.isNaN(v))
                .max()
                .orElseThrow();
    }

    private static double least(RawWeather raw, RawVariable variable) {
        return Arrays.stream(raw.column(variable))
                .filter(v -> !Double.isNaN(v))
                .min()
                .orElseThrow();
    }

    private static long count(RawWeather raw, Predicate<WeatherIssue> which) {
        return raw.issues().stream().filter(which).count();
    }

    @Test
    void ghcnDailyGreer() {
        RawWeather raw = read("ghcnd/USW00003870.dly");
        assertThat(raw.format()).isEqualTo(WeatherFormat.GHCN_DAILY);
        assertThat(raw.start()).isEqualTo(LocalDate.of(1962, 10, 15));
        assertThat(raw.end()).isEqualTo(LocalDate.of(2012, 12, 9));
        assertThat(raw.days()).isEqualTo(18_319);
        assertThat(raw.absentDays()).isZero();
        assertThat(raw.missing(RawVariable.TMAX)).isEqualTo(1);
        assertThat(raw.missing(RawVariable.TMIN)).isEqualTo(1);
        assertThat(raw.missing(RawVariable.RAIN)).isEqualTo(2);
        assertThat(count(raw, issue -> issue.kind() == IssueKind.FAILED_AT_SOURCE))
                .isEqualTo(12);
        assertThat(sum(raw, RawVariable.TMAX)).isCloseTo(398_665.4, SUM);
        assertThat(sum(raw, RawVariable.RAIN)).isCloseTo(62_145.3, SUM);
        assertThat(least(raw, RawVariable.TMIN)).isEqualTo(-21.1);
        assertThat(most(raw, RawVariable.TMAX)).isEqualTo(41.7);
        assertThat(raw.days() - raw.missing(RawVariable.WIND)).isEqualTo(10_023);
        assertThat(sum(raw, RawVariable.SUNSHINE) * 60.0).isCloseTo(5_895_858.0, SUM);
    }

    @Test
    void ghcnDailyPragueIsFullOfHoles() throws IOException {
        RawWeather raw = read("ghcnd/EZM00011518.dly");
        assertThat(raw.absentDays()).isEqualTo(6770);
        assertThat(raw.days() - raw.missing(RawVariable.TMIN)).isEqualTo(14_273);
        WeatherRecord record =
                WeatherAssembly.assemble(raw, new Site("Praha-Ruzyne", 50.1, 380.0), AssemblySettings.DEFAULT);
        assertThat(record.count(WeatherVariable.RAIN, Origin.CLIMATOLOGY))
                .isEqualTo(record.series().days() - record.count(WeatherVariable.RAIN, Origin.MEASURED))
                .isGreaterThan(13_000);
        assertReadsBack(record);
    }

    @Test
    void theThreeFormsOfGhcnDailyAgree() {
        RawWeather fixed = read("ghcnd/USW00003870.dly");
        RawWeather access = read("ghcnd/derived_access_USW00003870_2002-2012.csv");
        RawWeather year = read("ghcnd/derived_by_year_2007_USW00003870.csv");
        assertThat(access.format()).isEqualTo(WeatherFormat.GHCN_DAILY_ACCESS);
        assertThat(year.format()).isEqualTo(WeatherFormat.GHCN_DAILY_LONG);
        assertThat(access.site().elevationM()).isEqualTo(286.5);
        for (RawWeather part : List.of(access, year)) {
            int offset = (int) (part.start().toEpochDay() - fixed.start().toEpochDay());
            for (RawVariable variable : RawVariable.values()) {
                double[] same = Arrays.copyOfRange(fixed.column(variable), offset, offset + part.days());
                assertThat(part.column(variable)).as(variable.words()).isEqualTo(same);
            }
        }
        assertThat(access.end()).isEqualTo(fixed.end());
        assertThat(year.days()).isEqualTo(365);
    }

    @Test
    void ghcnYear1800HasThreeStationsAndNoLeapDay() {
        Path file = SharedData.file("ghcnd/by_year_1800_extract.csv");
        refused(InputError.STATION_NEEDED, () -> WeatherReaders.read(file, ReadOptions.DEFAULT));
        RawWeather raw = WeatherReaders.read(file, ReadOptions.DEFAULT.withStation("EZE00100082"));
        assertThat(raw.days()).isEqualTo(365);
        assertThat(raw.absentDays()).isZero();
    }

    @Test
    void ghcnLongFormWithoutStation() {
        RawWeather raw = read("ghcnd/USW00014922_long_2014-2015.csv");
        assertThat(raw.start()).isEqualTo(LocalDate.of(2014, 1, 1));
        assertThat(raw.end()).isEqualTo(LocalDate.of(2015, 2, 5));
        assertThat(raw.value(RawVariable.TMAX, 0)).isEqualTo(-17.1);
    }

    @Test
    void knmiDeBilt() throws IOException {
        RawWeather raw = read("knmi/etmgeg_260_1980-2019.txt");
        assertThat(raw.format()).isEqualTo(WeatherFormat.KNMI);
        assertThat(raw.days()).isEqualTo(14_610);
        for (RawVariable complete : List.of(
                RawVariable.TMIN,
                RawVariable.TMAX,
                RawVariable.SOLAR,
                RawVariable.SUNSHINE,
                RawVariable.RAIN,
                RawVariable.WIND,
                RawVariable.HUMIDITY_MEAN)) {
            assertThat(raw.missing(complete)).as(complete.words()).isZero();
        }
        assertThat(sum(raw, RawVariable.RAIN)).isCloseTo(33_490.3, SUM);
        assertThat(least(raw, RawVariable.TMIN)).isEqualTo(-18.9);
        assertThat(most(raw, RawVariable.TMAX)).isEqualTo(37.5);
        WeatherRecord record = WeatherAssembly.assemble(raw, new Site("De Bilt", 52.1, 1.9), AssemblySettings.DEFAULT);
        assertThat(record.count(WeatherVariable.WIND, Origin.ESTIMATED)).isEqualTo(14_610);
        assertReadsBack(record);
    }

    @Test
    void daymetOakRidgeLacksThreeLastDaysOfLeapYears() {
        RawWeather raw = read("daymet/daymet_v3_oakridge_tn_2000-2010_11388.csv");
        assertThat(raw.days()).isEqualTo(4015 + 3);
        assertThat(raw.absentDays()).isEqualTo(3);
        assertThat(raw.missing(RawVariable.TMIN)).isEqualTo(3);
        assertThat(raw.issues())
                .extracting(WeatherIssue::first)
                .containsExactly(LocalDate.of(2000, 12, 31), LocalDate.of(2004, 12, 31), LocalDate.of(2008, 12, 31));
        assertThat(sum(raw, RawVariable.RAIN)).isCloseTo(16_211.0, SUM);
        assertThat(sum(raw, RawVariable.SOLAR)).isCloseTo(59_357.086_477, SUM);
        WeatherRecord record = WeatherAssembly.assemble(raw, null, AssemblySettings.DEFAULT);
        assertThat(record.count(WeatherVariable.TMAX, Origin.INTERPOLATED)).isEqualTo(3);
        assertThat(record.count(WeatherVariable.RAIN, Origin.CLIMATOLOGY)).isEqualTo(3);
        RawWeather mangled = read("daymet/daymet_v3_r_flavour_mortonarb_il_2018.csv");
        assertThat(mangled.site().latitudeDeg()).isEqualTo(41.81405);
        assertThat(mangled.start()).isEqualTo(LocalDate.of(2018, 1, 1));
    }

    @ParameterizedTest
    @CsvSource({
        "POWER_Point_Daily_20220101_20220201_037d98N_023d73E_LST.csv",
        "POWER_Point_Daily_20220101_20220201_037d98N_023d73E_LST.txt"
    })
    void nasaPowerAthensTellsItsUnitByTheTopOfTheAtmosphere(String name) {
        RawWeather raw = read("nasa_power/" + name);
        assertThat(raw.days()).isEqualTo(32);
        assertThat(raw.value(RawVariable.SOLAR, 0)).isEqualTo(8.78);
        assertThat(raw.windHeightM()).isEqualTo(2.0);
    }

    @Test
    void openMeteoBerlinInBothUnitSystems() {
        RawWeather metric = read("open_meteo/open-meteo-52.55N13.41E38m_berlin_2000-2025_metric_tempsun.csv");
        assertThat(metric.days()).isEqualTo(9137);
        assertThat(most(metric, RawVariable.TMAX)).isEqualTo(37.7);
        assertThat(least(metric, RawVariable.TMIN)).isEqualTo(-21.6);
        assertThat(sum(metric, RawVariable.SUNSHINE)).isCloseTo(67_324.730_014, SUM);
        RawWeather imperial = read("open_meteo/open-meteo-52.55N13.41E38m_berlin_2014-2024_imperial.csv");
        int last = imperial.days() - 1;
        assertThat(imperial.end()).isEqualTo(LocalDate.of(2024, 10, 28));
        assertThat(imperial.value(RawVariable.TMAX, last)).isCloseTo((46.1 - 32.0) / 1.8, within(1e-9));
        assertThat(imperial.value(RawVariable.RAIN, last)).isNaN();
        assertThat(imperial.value(RawVariable.SOLAR, last - 1)).isEqualTo(6.36);
    }

    /**
     * Days and missing values counted by a script of its own; days with more than 0.82 of extraterrestrial radiation from the catalogue.
     */
    @ParameterizedTest
    @CsvSource({
        "IL_Champaign_9_SW, 213, 7780, 138, 138, 414, 66, 106",
        "NE_Lincoln_8_ENE, 362, 8120, 78, 81, 415, 71, 5",
        "IA_Des_Moines_17_E, 267, 7145, 81, 134, 45, 58, 14",
        "MO_Chillicothe_22_ENE, 251, 6876, 23, 23, 19, 23, 5",
        "OK_Stillwater_2_W, 272, 8063, 49, 46, 82, 43, 162",
        "SD_Sioux_Falls_14_NNE, 486, 7925, 123, 123, 111, 122, 7",
        "IN_Bedford_5_WNW, 229, 6032, 22, 23, 11, 19, 4",
        "WI_Necedah_5_WNW, 285, 7129, 81, 89, 14, 21, 104",
    })
    void uscrnStations(
            String name, double elevationM, int days, int tmax, int tmin, int rain, int solar, int suspectDays)
            throws IOException {
        RawWeather raw = read("uscrn/CRND0103_" + name + ".txt");
        assertThat(raw.format()).isEqualTo(WeatherFormat.USCRN);
        assertThat(raw.days()).isEqualTo(days);
        assertThat(raw.absentDays()).isZero();
        assertThat(raw.missing(RawVariable.TMAX)).isEqualTo(tmax);
        assertThat(raw.missing(RawVariable.TMIN)).isEqualTo(tmin);
        assertThat(raw.missing(RawVariable.RAIN)).isEqualTo(rain);
        assertThat(raw.missing(RawVariable.SOLAR)).isEqualTo(solar);
        Double latitude = raw.site().latitudeDeg();
        Site site = new Site(name, latitude == null ? Double.NaN : latitude, elevationM);
        WeatherRecord record = WeatherAssembly.assemble(raw, site, AssemblySettings.DEFAULT);
        long suspect = record.issues().stream()
                .filter(issue -> issue.variable() == RawVariable.SOLAR)
                .filter(issue ->
                        issue.action().contains("0.82") || issue.action().contains("top of the atmosphere"))
                .count();
        assertThat(suspect).isEqualTo(suspectDays);
        assertReadsBack(record);
    }

    @Test
    void fiftyYearsOfFixedWidthAreReadAtOnce() {
        Path file = SharedData.file("ghcnd/USW00003870.dly");
        // takes about a tenth of this on one busy core
        Assertions.assertTimeout(Duration.ofSeconds(3), () -> WeatherReaders.read(file, ReadOptions.DEFAULT));
    }

    private void assertReadsBack(WeatherRecord record) throws IOException {
        StringBuilder written = new StringBuilder();
        WeatherTable.write(record, written);
        Path file = Files.writeString(folder.resolve("weather.csv"), written, StandardCharsets.UTF_8);
        WeatherRecord again = WeatherAssembly.assemble(
                WeatherReaders.read(file, ReadOptions.DEFAULT), record.site(), AssemblySettings.DEFAULT);
        StringBuilder rewritten = new StringBuilder();
        WeatherTable.write(again, rewritten);
        assertThat(rewritten.compareTo(written)).as("same bytes").isZero();
    }
}
