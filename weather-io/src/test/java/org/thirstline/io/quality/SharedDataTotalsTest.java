package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.thirstline.io.weather.MappedColumn;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.TableMapping;
import org.thirstline.io.weather.WeatherFiles;
import org.thirstline.io.weather.WeatherFormat;
import org.thirstline.io.weather.WeatherReaders;

/**
 * Every file of the folder of real files: it reads, and what it holds is what the catalogue that lies with the files says. Prints one line for
 * each. Files that are no daily weather are named, so that a new file is either read here or said not to be weather.
 */
class SharedDataTotalsTest {

    /** The catalogue prints one decimal, in two places rounded from two decimals: 0.848 as 0.9 and 1.248 as 1.3. */
    private static final Offset<Double> HALF_LAST_PRINTED_DIGIT = within(0.055);

    /** No daily weather: texts, results of others, soil, plots, a recording of a web request. */
    private static final List<String> OTHER = List.of(
            "README",
            "weather-formats.md",
            "agridat/",
            "dwd/Protokoll",
            "ecad/sources.txt",
            "ghcnd/ghcnd-readme.txt",
            "nasa_power/vcr_daily_ag_point.json",
            "ref_et/FALN_Agrimet_daily.def",
            "ref_et/FALN_Agrimet_daily_raw_2015.out",
            "ref_et/eto_lib_example_daily_results.csv",
            "soil_moisture/drummondville/hyprop",
            "soil_moisture/drummondville/percolation",
            "soil_moisture/drummondville/state_vars",
            "uscrn/HEADERS");

    /**
     * What the catalogue says of a file.
     *
     * @param days days from the first to the last, both there; 0 where it says nothing
     * @param absent days inside about which the file says nothing, -1 where the catalogue says nothing
     * @param missingPct share of missing values [%] of some variables, as printed with one decimal
     */
    private record Said(String first, String last, int days, int absent, Map<RawVariable, Double> missingPct) {}

    private record Entry(List<String> files, ReadOptions options, Said said) {}

    private static final Map<RawVariable, Double> NONE = Map.of(RawVariable.TMIN, 0.0, RawVariable.TMAX, 0.0);

    private static Map<RawVariable, Double> missing(double tmax, double tmin, double rain, double solar) {
        return Map.of(RawVariable.TMAX, tmax, RawVariable.TMIN, tmin, RawVariable.RAIN, rain, RawVariable.SOLAR, solar);
    }

    private static Map<String, Entry> entries() {
        Map<String, Entry> all = new TreeMap<>();
        stations(all);
        ghcn(all);
        services(all);
        grids(all);
        references(all);
        tables(all);
        return all;
    }

    private static void stations(Map<String, Entry> all) {
        uscrn(all, "IL_Champaign_9_SW", "2002-12", missing(1.8, 1.8, 5.3, 0.9));
        uscrn(all, "NE_Lincoln_8_ENE", "2002-01", missing(1.0, 1.0, 5.1, 0.9));
        uscrn(all, "IA_Des_Moines_17_E", "2004-09", missing(1.1, 1.9, 0.6, 0.8));
        uscrn(all, "MO_Chillicothe_22_ENE", "2005-06", missing(0.3, 0.3, 0.3, 0.3));
        uscrn(all, "OK_Stillwater_2_W", "2002-03", missing(0.6, 0.6, 1.0, 0.5));
        uscrn(all, "SD_Sioux_Falls_14_NNE", "2002-09", missing(1.6, 1.6, 1.4, 1.5));
        uscrn(all, "IN_Bedford_5_WNW", "2007-10", missing(0.4, 0.4, 0.2, 0.3));
        uscrn(all, "WI_Necedah_5_WNW", "2004-10", missing(1.1, 1.3, 0.2, 0.3));
    }

    private static void ghcn(Map<String, Entry> all) {
        one(all, "ghcnd/USW00003870.dly", new Said("1962-10-15", "2012-12-09", 18_319, 0, NONE));
        one(all, "ghcnd/EZM00011518.dly", new Said("1940", "2017-05", 0, 6770, Map.of()));
        one(
                all,
                "ghcnd/by_year_1800_extract.csv",
                ReadOptions.DEFAULT.withStation("ITE00100554"),
                new Said("1800-01-01", "1800-12-31", 365, 0, Map.of()));
        one(all, "ghcnd/USW00014922_long_2014-2015.csv", new Said("2014-01-01", "2015-02-05", 401, -1, Map.of()));
        one(
                all,
                "ghcnd/GHCN_USW00014839_milwaukee_F_inch_1938-2026.csv",
                new Said("1938-04-01", "2026-08-19", 32_283, 0, Map.of(RawVariable.RAIN, 0.4)));
        one(all, "ghcnd/derived_access_USW00003870_2002-2012.csv", new Said("2002", "2012-12-09", 0, -1, Map.of()));
        one(all, "ghcnd/derived_by_year_2007_USW00003870.csv", new Said("2007", "2007", 0, -1, Map.of()));
    }

    private static void services(Map<String, Entry> all) {
        one(all, "knmi/etmgeg_260_1980-2019.txt", new Said("1980", "2019", 14_610, 0, missing(0.0, 0.0, 0.0, 0.0)));
        one(
                all,
                "met_eireann/dly532_dublin_airport_1942-2020.csv",
                new Said("1942-01-01", "2020-10-31", 0, -1, Map.of(RawVariable.RAIN, 0.0)));
        all.put(
                "ecad",
                new Entry(
                        Stream.of("HU", "QQ", "RR", "SS", "TN", "TX")
                                .map(element -> "ecad/" + element + "_STAID000241.txt")
                                .toList(),
                        ReadOptions.DEFAULT,
                        new Said("1901-01-01", "2021-12-31", 0, -1, Map.of())));
        one(all, "meteoswiss/NBCN_SIO_sion_1953-2020.csv", new Said("1953", "2020", 0, -1, Map.of()));
        all.put(
                "dwd",
                new Entry(
                        List.of(
                                "dwd/produkt_klima_Tageswerte_20150729_20170128_03987.txt",
                                "dwd/produkt_klima_Tageswerte_20150802_20170201_03987.txt"),
                        ReadOptions.DEFAULT,
                        new Said(
                                "2015-07-29",
                                "2017-02-01",
                                554,
                                0,
                                Map.of(RawVariable.TMIN, 0.0, RawVariable.RAIN, 0.0))));
    }

    private static void grids(Map<String, Entry> all) {
        one(
                all,
                "gridmet/gridmet_point_1980-1982.csv",
                new Said("1980-01-01", "1982-12-31", 1096, 0, missing(0.0, 0.0, 0.0, 0.0)));
        one(
                all,
                "daymet/daymet_v3_oakridge_tn_2000-2010_11388.csv",
                new Said("2000-01-01", "2010-12-31", 4018, 3, Map.of()));
        one(all, "daymet/daymet_v3_r_flavour_mortonarb_il_2018.csv", new Said("2018", "2019", 730, 0, Map.of()));
        for (String end : List.of("csv", "txt")) {
            one(
                    all,
                    "nasa_power/POWER_Point_Daily_20220101_20220201_037d98N_023d73E_LST." + end,
                    new Said("2022-01-01", "2022-02-01", 32, 0, Map.of()));
        }
        one(
                all,
                "open_meteo/open-meteo-52.55N13.41E38m_berlin_2014-2024_imperial.csv",
                new Said("2014", "2024", 0, 0, Map.of()));
        one(
                all,
                "open_meteo/open-meteo-52.55N13.41E38m_berlin_2000-2025_metric_tempsun.csv",
                new Said("2000", "2025", 9137, 0, Map.of()));
    }

    private static void references(Map<String, Entry> all) {
        one(all, "ref_et/FALN_Agrimet_daily_raw_2015.csv", new Said("2015-01-01", "2015-12-31", 365, 0, NONE));
        one(all, "ref_et/coagmet_hyk02_2020_etasce.csv", new Said("2020-01-01", "2020-12-31", 366, 0, NONE));
        one(all, "ref_et/zamg_graz16412_klima_daily_2000-2021.csv", new Said("2000", "2021", 7986, 0, NONE));
        one(
                all,
                "ref_et/pyet_knmi_2018_meteo_pet.csv",
                mapped(
                        new MappedColumn("YYYYMMDD", "date", null, "yyyy-MM-dd", null),
                        column("Tmax[°C]", "tmax", "°C"),
                        column("Tmin[°C]", "tmin", "°C"),
                        column("RH[%]", "rh_mean", "%"),
                        column("Rs[MJ/m2/d]", "solar", "MJ/m2"),
                        column("u2[m/s]", "wind", "m/s")),
                new Said("2018-01-01", "2018-12-31", 365, 0, NONE));
        one(
                all,
                "ref_et/eto_lib_example_daily_inputs.csv",
                mapped(
                        column("date", "date", null),
                        column("R_s", "solar", "MJ/m2"),
                        column("T_max", "tmax", "°C"),
                        column("T_min", "tmin", "°C"),
                        column("e_a", "vapour_pressure", "kPa")),
                new Said("2000-01-01", "", 0, 23, Map.of()));
    }

    private static void tables(Map<String, Entry> all) {
        TableMapping vega = mapping(
                column("date", "date", null),
                column("precipitation", "rain", "mm"),
                column("temp_max", "tmax", "°C"),
                column("temp_min", "tmin", "°C"),
                column("wind", "wind", "m/s"));
        Said fourYears = new Said("2012", "2015", 1461, 0, missing(0.0, 0.0, 0.0, 100.0));
        one(all, "vega/seattle-weather.csv", ReadOptions.DEFAULT.withMapping(vega), fourYears);
        List<MappedColumn> withPlace = new ArrayList<>(vega.columns());
        withPlace.add(column("location", "station", null));
        ReadOptions places = ReadOptions.DEFAULT.withMapping(mapping(withPlace.toArray(MappedColumn[]::new)));
        one(all, "vega/weather.csv", places.withStation("New York"), fourYears);
        one(
                all,
                "soil_moisture/drummondville/daily_meteo.csv",
                mapped(
                        column("d_local", "date", null),
                        column("Air temperature (°C)", "tmean", "°C"),
                        column("Shortwave radiation (W.m-2)", "solar", "W/m2"),
                        column("Relative humidity (%)", "rh_mean", "%"),
                        column("Precipitation (mm)", "rain", "mm"),
                        column("2m Wind speed (m.s-1)", "wind", "m/s")),
                new Said("2017-07", "2021-06", 0, 0, Map.of(RawVariable.TMEAN, 0.0, RawVariable.RAIN, 0.0)));
        one(
                all,
                "soil_moisture/drummondville/DailyAveraged_MeteoObs.csv",
                mapped(
                        column("date", "date", null),
                        column("Air temperature (°C)", "tmean", "°C"),
                        column("Wind speed (m.s-1)", "wind", "m/s"),
                        column("Shortwave radiation (W.m-2)", "solar", "W/m2"),
                        column("Specific humidity (kg.kg-1)", "specific_humidity", "kg/kg"),
                        column("Precipitation (mm)", "rain", "mm")),
                new Said("2019-07-01", "", 0, -1, Map.of()));
    }

    private static void uscrn(Map<String, Entry> all, String station, String first, Map<RawVariable, Double> missing) {
        one(all, "uscrn/CRND0103_" + station + ".txt", new Said(first, "2024-04", 0, 0, missing));
    }

    private static void one(Map<String, Entry> all, String file, Said said) {
        one(all, file, ReadOptions.DEFAULT, said);
    }

    private static void one(Map<String, Entry> all, String file, ReadOptions options, Said said) {
        all.put(file, new Entry(List.of(file), options, said));
    }

    private static MappedColumn column(String name, String gives, @Nullable String unit) {
        return new MappedColumn(name, gives, unit, null, null);
    }

    private static TableMapping mapping(MappedColumn... columns) {
        return new TableMapping(List.of(columns), null, false, List.of());
    }

    private static ReadOptions mapped(MappedColumn... columns) {
        return ReadOptions.DEFAULT.withMapping(mapping(columns));
    }

    @TestFactory
    Stream<DynamicTest> everyFileHoldsWhatTheCatalogueSays() {
        SharedData.file("README.md");
        System.out.printf(
                Locale.ROOT,
                "DATA | %-58s | %-17s | %-23s | %6s %6s | %s | %9s %9s | %6s %6s | %9s%n",
                "file",
                "format",
                "days",
                "n",
                "absent",
                "missing tmin tmax rain solar wind",
                "rain mm",
                "wettest",
                "min",
                "max",
                "solar MJ");
        return entries().entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> check(entry.getKey(), entry.getValue())));
    }

    private static void check(String name, Entry entry) {
        List<Path> files = entry.files().stream().map(SharedData::file).toList();
        RawWeather raw = WeatherFiles.join(WeatherReaders.readAll(files, entry.options()));
        print(name, raw);
        Said said = entry.said();
        assertThat(first(raw).toString()).startsWith(said.first());
        assertThat(raw.end().toString()).startsWith(said.last());
        if (said.days() > 0) {
            assertThat(raw.days()).isEqualTo(said.days());
        }
        if (said.absent() >= 0) {
            assertThat(raw.absentDays()).isEqualTo(said.absent());
        }
        said.missingPct().forEach((variable, percent) -> {
            double found = 100.0 * raw.missing(variable) / raw.days();
            assertThat(found).as("%s missing [%%]", variable).isCloseTo(percent, HALF_LAST_PRINTED_DIGIT);
        });
    }

    /** The catalogue dates stations by their first values, which some of the files precede by empty lines. */
    private static LocalDate first(RawWeather raw) {
        int day = 0;
        while (raw.format() == WeatherFormat.USCRN && Double.isNaN(raw.value(RawVariable.TMAX, day))) {
            day++;
        }
        return raw.date(day);
    }

    private static void print(String name, RawWeather raw) {
        StringBuilder missing = new StringBuilder();
        for (RawVariable variable :
                List.of(RawVariable.TMIN, RawVariable.TMAX, RawVariable.RAIN, RawVariable.SOLAR, RawVariable.WIND)) {
            missing.append(raw.has(variable) ? String.format(Locale.ROOT, " %6d", raw.missing(variable)) : "      -");
        }
        System.out.printf(
                Locale.ROOT,
                "DATA | %-58s | %-17s | %s %s | %6d %6d |%s | %9.1f %9.1f | %6.1f %6.1f | %9.1f%n",
                name,
                raw.format().id(),
                raw.start(),
                raw.end(),
                raw.days(),
                raw.absentDays(),
                missing,
                sum(raw, RawVariable.RAIN),
                most(raw, RawVariable.RAIN, 1.0),
                -most(raw, RawVariable.TMIN, -1.0),
                most(raw, RawVariable.TMAX, 1.0),
                sum(raw, RawVariable.SOLAR));
    }

    private static double sum(RawWeather raw, RawVariable variable) {
        return Arrays.stream(raw.column(variable))
                .filter(value -> !Double.isNaN(value))
                .sum();
    }

    private static double most(RawWeather raw, RawVariable variable, double sign) {
        return Arrays.stream(raw.column(variable))
                .map(value -> sign * value)
                .filter(value -> !Double.isNaN(value))
                .max()
                .orElse(Double.NaN);
    }

    @Test
    void noFileIsForgotten() throws IOException {
        Path folder = SharedData.file("README.md").getParent();
        List<String> read = entries().values().stream()
                .flatMap(entry -> entry.files().stream())
                .toList();
        try (Stream<Path> files = Files.walk(folder)) {
            List<String> forgotten = files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .filter(file -> !read.contains(file))
                    .filter(file -> OTHER.stream().noneMatch(file::startsWith))
                    .filter(file -> !file.endsWith("stations.txt") && !file.startsWith("dwd/Stationsmetadaten"))
                    .filter(file -> !file.contains("README"))
                    .sorted()
                    .toList();
            assertThat(forgotten).isEmpty();
        }
    }
}
