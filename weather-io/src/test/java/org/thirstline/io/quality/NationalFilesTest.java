package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.MappedColumn;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.TableMapping;
import org.thirstline.io.weather.WeatherFiles;
import org.thirstline.io.weather.WeatherFormat;
import org.thirstline.io.weather.WeatherReaders;

/**
 * Real files of national services and reference series. Totals and extremes were taken from the same files by a short script of its own
 * in another language; days, missing and suspect values are also those of the catalogue that lies with the files.
 */
class NationalFilesTest {

    private static RawWeather read(String... names) {
        List<Path> files = Stream.of(names).map(SharedData::file).toList();
        return WeatherFiles.join(WeatherReaders.readAll(files, ReadOptions.DEFAULT));
    }

    /** Sums within half of the last digit of the script's print. */
    private static void check(
            RawWeather raw, RawVariable variable, int missing, double sum, double least, double most) {
        double[] found = Arrays.stream(raw.column(variable))
                .filter(v -> !Double.isNaN(v))
                .toArray();
        assertThat(raw.missing(variable)).as("missing %s", variable).isEqualTo(missing);
        assertThat(Arrays.stream(found).sum()).as("sum %s", variable).isCloseTo(sum, within(6e-5));
        assertThat(Arrays.stream(found).min().orElseThrow())
                .as("least %s", variable)
                .isCloseTo(least, within(6e-5));
        assertThat(Arrays.stream(found).max().orElseThrow())
                .as("most %s", variable)
                .isCloseTo(most, within(6e-5));
    }

    @Test
    void dwdPotsdamTwoOverlappingDownloadsAndTheirStation() {
        RawWeather raw = read(
                "dwd/produkt_klima_Tageswerte_20150729_20170128_03987.txt",
                "dwd/produkt_klima_Tageswerte_20150802_20170201_03987.txt",
                "dwd/Stationsmetadaten_klima_stationen_03987_20150729_20170128.txt");
        assertThat(raw.days()).isEqualTo(554);
        assertThat(raw.start()).isEqualTo(LocalDate.of(2015, 7, 29));
        assertThat(raw.site().latitudeDeg()).isEqualTo(52.3813);
        assertThat(raw.site().elevationM()).isEqualTo(81.0);
        check(raw, RawVariable.TMIN, 0, 3439.7, -12.0, 21.2);
        check(raw, RawVariable.TMAX, 0, 7952.5, -7.4, 37.6);
        check(raw, RawVariable.RAIN, 0, 809.2, 0.0, 46.3);
        check(raw, RawVariable.VAPOUR_PRESSURE, 0, 554.54, 0.23, 2.22);
        check(raw, RawVariable.SUNSHINE, 0, 2628.277, 0.0, 15.75);
    }

    @Test
    void metEireannDublinAirport() {
        RawWeather raw = read("met_eireann/dly532_dublin_airport_1942-2020.csv");
        assertThat(raw.days()).isEqualTo(28_794);
        assertThat(raw.site().elevationM()).isEqualTo(71.0);
        check(raw, RawVariable.TMIN, 0, 177_092.4, -12.2, 18.4);
        check(raw, RawVariable.TMAX, 0, 375_194.1, -4.7, 28.7);
        check(raw, RawVariable.RAIN, 0, 59_658.5, 0.0, 92.6);
        check(raw, RawVariable.WIND, 0, 151_830.664, 0.0, 18.2628);
    }

    @Test
    void ecadGenevaFromSixFiles() {
        RawWeather raw = read(
                "ecad/HU_STAID000241.txt",
                "ecad/QQ_STAID000241.txt",
                "ecad/RR_STAID000241.txt",
                "ecad/SS_STAID000241.txt",
                "ecad/TN_STAID000241.txt",
                "ecad/TX_STAID000241.txt",
                "ecad/stations.txt");
        assertThat(raw.start()).isEqualTo(LocalDate.of(1901, 1, 1));
        assertThat(raw.end()).isEqualTo(LocalDate.of(2021, 12, 31));
        assertThat(raw.site().latitudeDeg()).isCloseTo(46.2, within(1e-9));
        assertThat(raw.site().longitudeDeg()).isCloseTo(6.15, within(1e-9));
        int afterTheLast = raw.days() - 44_073;
        check(raw, RawVariable.TMAX, afterTheLast + 29, 651_854.0, -14.6, 39.7);
        check(raw, RawVariable.TMIN, afterTheLast + 29, 264_510.8, -19.9, 23.4);
        check(raw, RawVariable.RAIN, afterTheLast + 29, 109_780.7, 0.0, 92.6);
        check(raw, RawVariable.SOLAR, 176, 571_148.496, 0.0864, 36.5472);
        check(raw, RawVariable.SUNSHINE, afterTheLast, 232_167.8, 0.0, 15.0);
        check(raw, RawVariable.HUMIDITY_MEAN, afterTheLast, 3_290_434.0, 0.0, 100.0);
        assertThat(raw.issues().stream()
                        .filter(issue -> issue.kind() == IssueKind.SUSPECT && issue.variable() == RawVariable.TMIN))
                .hasSize(44);
    }

    @Test
    void meteoSwissSion() {
        RawWeather raw = read("meteoswiss/NBCN_SIO_sion_1953-2020.csv");
        assertThat(raw.days()).isEqualTo(24_656);
        check(raw, RawVariable.TMIN, 1645, 110_439.9, -20.6, 21.3);
        check(raw, RawVariable.TMAX, 1645, 369_880.3, -10.5, 38.0);
        check(raw, RawVariable.RAIN, 1645, 37_570.0, 0.0, 79.3);
        check(raw, RawVariable.SOLAR, 10_046, 201_245.04, 0.1728, 32.5728);
        check(raw, RawVariable.SUNSHINE, 8962, 89_943.7167, 0.0, 13.9667);
        check(raw, RawVariable.HUMIDITY_MEAN, 2010, 1_597_625.1, 11.0, 100.0);
    }

    @Test
    void milwaukeeInFahrenheitAndInches() {
        RawWeather raw = read("ghcnd/GHCN_USW00014839_milwaukee_F_inch_1938-2026.csv");
        assertThat(raw.format()).isEqualTo(WeatherFormat.GHCN_DAILY_WIDE);
        assertThat(raw.days()).isEqualTo(32_283);
        check(raw, RawVariable.TMAX, 1, 428_226.8, -25.0, 39.4);
        check(raw, RawVariable.TMIN, 0, 134_368.3, -32.2, 28.9);
        check(raw, RawVariable.RAIN, 138, 73_480.5397, 0.0, 173.0001);
    }

    @Test
    void referenceSeriesInputs() {
        RawWeather agrimet = read("ref_et/FALN_Agrimet_daily_raw_2015.csv");
        check(agrimet, RawVariable.TMIN, 0, 1261.7611, -17.7167, 21.3944);
        check(agrimet, RawVariable.WIND, 1, 610.4599, 0.4202, 5.8294);
        RawWeather coagmet = read("ref_et/coagmet_hyk02_2020_etasce.csv");
        check(coagmet, RawVariable.SOLAR, 0, 5846.3597, 2.0736, 36.8842);
        check(coagmet, RawVariable.HUMIDITY_MAX, 0, 33_309.5, 43.2, 102.1);
        RawWeather graz = read("ref_et/zamg_graz16412_klima_daily_2000-2021.csv");
        assertThat(graz.days()).isEqualTo(7986);
        check(graz, RawVariable.SOLAR, 0, 99_695.26, 0.31, 31.89);
        check(graz, RawVariable.TMAX, 0, 129_849.7, -8.4, 38.1);
        RawWeather gridmet = read("gridmet/gridmet_point_1980-1982.csv");
        check(gridmet, RawVariable.TMAX, 0, 20_547.6093, -11.8001, 42.5074);
        check(gridmet, RawVariable.SOLAR, 0, 17_154.2483, 2.2029, 28.3185);
    }

    @Test
    void tablesOfOthersThroughAMapping() {
        TableMapping seattle = mapping(
                column("date", "date", null),
                column("precipitation", "rain", "mm"),
                column("temp_max", "tmax", "°C"),
                column("temp_min", "tmin", "°C"),
                new MappedColumn("wind", "wind", "m/s", null, 10.0));
        RawWeather raw = WeatherReaders.read(
                SharedData.file("vega/seattle-weather.csv"), ReadOptions.DEFAULT.withMapping(seattle));
        assertThat(raw.days()).isEqualTo(1461);
        assertThat(raw.absentDays()).isZero();
        TableMapping drummondville = mapping(
                column("d_local", "date", null),
                column("Air temperature (°C)", "tmean", "°C"),
                column("Shortwave radiation (W.m-2)", "solar", "W/m2"),
                column("Relative humidity (%)", "rh_mean", "%"),
                column("Precipitation (mm)", "rain", "mm"),
                column("2m Wind speed (m.s-1)", "wind", "m/s"));
        RawWeather quebec = WeatherReaders.read(
                SharedData.file("soil_moisture/drummondville/daily_meteo.csv"),
                ReadOptions.DEFAULT.withMapping(drummondville));
        assertThat(quebec.start()).isEqualTo(LocalDate.of(2017, 7, 1));
        assertThat(quebec.missing(RawVariable.TMEAN)).isZero();
        assertThat(quebec.missing(RawVariable.RAIN)).isZero();
    }

    private static MappedColumn column(String name, String gives, String unit) {
        return new MappedColumn(name, gives, unit, null, null);
    }

    private static TableMapping mapping(MappedColumn... columns) {
        return new TableMapping(List.of(columns), null, false, List.of());
    }
}
