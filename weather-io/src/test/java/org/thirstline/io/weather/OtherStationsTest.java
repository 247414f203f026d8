package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.IntFunction;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Law: a file of any station and any years reads back what was written, to the last digit of the format. Stations, first days, values and
 * missing values are drawn; the files are written by the providers' descriptions of their formats, not by the readers.
 */
class OtherStationsTest {

    private static final int TRIALS = 12;

    /** Tenths are exact; W/m² and knots are converted. */
    private static final Offset<Double> ROUNDING = within(1e-9);

    private static final DateTimeFormatter COMPACT = DateTimeFormatter.BASIC_ISO_DATE;

    @TempDir
    Path folder;

    /** Tenths of °C, mm and m/s, whole J/cm²; {@link Integer#MIN_VALUE} where missing. */
    private record Station(String id, LocalDate start, int[] tmin, int[] tmax, int[] rain, int[] solar, int[] wind) {

        int days() {
            return tmin.length;
        }

        String date(int day, DateTimeFormatter form) {
            return start.plusDays(day).format(form);
        }
    }

    private static Station draw(RandomGenerator random) {
        int days = 60 + random.nextInt(700);
        LocalDate start = LocalDate.of(1850 + random.nextInt(170), 1 + random.nextInt(12), 1 + random.nextInt(28));
        String id = String.format(Locale.ROOT, "XX%09d", random.nextInt(1_000_000_000));
        int[] tmin = values(days, random, -450, 250);
        int[] tmax = IntStream.range(0, days)
                .map(day -> tmin[day] == Integer.MIN_VALUE ? 111 : tmin[day] + random.nextInt(200))
                .toArray();
        int[] solar = values(days, random, 1, 3200);
        return new Station(id, start, tmin, tmax, values(days, random, 0, 2500), solar, values(days, random, 0, 190));
    }

    /** Never missing on the first and last day, so that the period is told by the file. */
    private static int[] values(int days, RandomGenerator random, int low, int high) {
        return IntStream.range(0, days)
                .map(day -> day > 0 && day < days - 1 && random.nextInt(12) == 0
                        ? Integer.MIN_VALUE
                        : low + random.nextInt(high - low))
                .toArray();
    }

    private static String or(int value, String missing, IntFunction<String> text) {
        return value == Integer.MIN_VALUE ? missing : text.apply(value);
    }

    private static String tenth(int value) {
        return String.format(Locale.ROOT, "%.1f", value / 10.0);
    }

    private static String lines(Station station, IntFunction<String> line) {
        return IntStream.range(0, station.days()).mapToObj(line).collect(Collectors.joining("\n", "", "\n"));
    }

    private static String ghcnDaily(Station station) {
        StringBuilder text = new StringBuilder();
        Map<String, int[]> elements = new LinkedHashMap<>();
        elements.put("PRCP", station.rain());
        elements.put("TMIN", station.tmin());
        elements.put("TMAX", station.tmax());
        elements.put("AWND", station.wind());
        YearMonth last = YearMonth.from(station.start().plusDays(station.days() - 1L));
        for (YearMonth month = YearMonth.from(station.start()); !month.isAfter(last); month = month.plusMonths(1)) {
            for (Map.Entry<String, int[]> element : elements.entrySet()) {
                text.append(String.format(
                        Locale.ROOT,
                        "%s%04d%02d%s",
                        station.id(),
                        month.getYear(),
                        month.getMonthValue(),
                        element.getKey()));
                for (int day = 1; day <= 31; day++) {
                    int at = day <= month.lengthOfMonth()
                            ? (int) (month.atDay(day).toEpochDay()
                                    - station.start().toEpochDay())
                            : -1;
                    boolean there = at >= 0 && at < station.days() && element.getValue()[at] != Integer.MIN_VALUE;
                    text.append(there ? String.format(Locale.ROOT, "%5d  S", element.getValue()[at]) : "-9999   ");
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    private static String ghcnLong(Station station) {
        StringBuilder text = new StringBuilder();
        for (int day = 0; day < station.days(); day++) {
            String start = station.id() + "," + station.date(day, COMPACT) + ",";
            for (Map.Entry<String, int[]> element : Map.of(
                            "TMAX",
                            station.tmax(),
                            "TMIN",
                            station.tmin(),
                            "PRCP",
                            station.rain(),
                            "AWND",
                            station.wind())
                    .entrySet()) {
                int value = element.getValue()[day];
                if (value != Integer.MIN_VALUE) {
                    text.append(start)
                            .append(element.getKey())
                            .append(',')
                            .append(value)
                            .append(",,,S,\n");
                }
            }
        }
        return text.toString();
    }

    private static String knmi(Station station) {
        String id = station.id().substring(8);
        return "# DETAILS\n# STN,YYYYMMDD,   TN,   TX,   RH,    Q,   FG\n\n"
                + lines(
                        station,
                        day -> "  " + id + "," + station.date(day, COMPACT) + ","
                                + or(station.tmin()[day], "     ", value -> String.format("%5d", value)) + ","
                                + or(station.tmax()[day], "     ", value -> String.format("%5d", value)) + ","
                                + or(station.rain()[day], "     ", value -> value == 0 ? "   -1" : "" + value) + ","
                                + or(station.solar()[day], "     ", value -> String.format("%5d", value)) + ","
                                + or(station.wind()[day], "     ", value -> String.format("%5d", value)));
    }

    private static String dwd(Station station) {
        String id = station.id().substring(6);
        return "STATIONS_ID;MESS_DATUM;QN_3;  FX;  FM;QN_4; RSK;RSKF; SDK; TMK; TXK; TNK;eor\r\n"
                + lines(
                                station,
                                day -> "      " + id + ";" + station.date(day, COMPACT) + ";   10;-999;"
                                        + or(station.wind()[day], "-999", OtherStationsTest::tenth) + ";    3;"
                                        + or(station.rain()[day], "-999", OtherStationsTest::tenth) + ";   8;-999;-999;"
                                        + or(station.tmax()[day], "-999", OtherStationsTest::tenth) + ";"
                                        + or(station.tmin()[day], "-999", OtherStationsTest::tenth) + ";eor")
                        .replace("\n", "\r\n");
    }

    private static String metEireann(Station station) {
        DateTimeFormatter form = DateTimeFormatter.ofPattern("dd-MMM-yyyy", Locale.ENGLISH);
        return "Station Name: ELSEWHERE\nStation Height: 9 M \nLatitude:51.9  ,Longitude: -8.4\n\n"
                + "date,ind,rain,ind,maxtp,ind,mintp,gmin,soil,wdsp,glorad\n"
                + lines(
                        station,
                        day -> station.date(day, form).toLowerCase(Locale.ROOT) + ",0,"
                                + or(station.rain()[day], " ", OtherStationsTest::tenth) + ",0,"
                                + or(station.tmax()[day], " ", OtherStationsTest::tenth) + ",0,"
                                + or(station.tmin()[day], " ", OtherStationsTest::tenth) + ", ,9.9,"
                                + or(station.wind()[day], " ", OtherStationsTest::tenth) + ","
                                + or(station.solar()[day], " ", Integer::toString));
    }

    private static String meteoSwiss(Station station) {
        DateTimeFormatter form = DateTimeFormatter.ofPattern("dd.MM.yyyy HH:mm");
        return "station_abbr;reference_timestamp;tre200d0;tre200dn;tre200dx;rre150d0;gre000d0;fkl010d0\n"
                + lines(
                        station,
                        day -> "ABC;"
                                + station.start().plusDays(day).atStartOfDay().format(form) + ";;"
                                + or(station.tmin()[day], "", OtherStationsTest::tenth) + ";"
                                + or(station.tmax()[day], "", OtherStationsTest::tenth) + ";"
                                + or(station.rain()[day], "", OtherStationsTest::tenth) + ";"
                                + or(station.solar()[day], "", value -> Double.toString(value / 8.64)) + ";"
                                + or(station.wind()[day], "", OtherStationsTest::tenth));
    }

    private static String geosphere(Station station) {
        return "time,station,tlmin,tlmax,rr,cglo_j,vv_mittel,tlmin_flag\n"
                + lines(
                        station,
                        day -> station.date(day, DateTimeFormatter.ISO_LOCAL_DATE) + "T00:00+00:00,105,"
                                + or(station.tmin()[day], "", OtherStationsTest::tenth) + ","
                                + or(station.tmax()[day], "", OtherStationsTest::tenth) + ","
                                + or(station.rain()[day], "", OtherStationsTest::tenth) + ","
                                + or(station.solar()[day], "", Integer::toString) + ","
                                + or(station.wind()[day], "", OtherStationsTest::tenth) + ",20");
    }

    private static String uscrn(Station station) {
        String gap = "-9999.0";
        return lines(
                station,
                day -> String.format(
                        Locale.ROOT,
                        "%s %s  2.622 -155.08   19.65 %7s %7s -9999.0 -9999.0 %7s %8s C -9999.0 -9999.0 -9999.0 %s",
                        station.id().substring(6),
                        station.date(day, COMPACT),
                        or(station.tmax()[day], gap, OtherStationsTest::tenth),
                        or(station.tmin()[day], gap, OtherStationsTest::tenth),
                        or(station.rain()[day], gap, OtherStationsTest::tenth),
                        or(
                                station.solar()[day],
                                "-9999.00",
                                value -> String.format(Locale.ROOT, "%.2f", value / 100.0)),
                        "-9999.0 -9999.0 -9999.0 -99.000 -99.000 -99.000 -99.000 -99.000 -9999.0 -9999.0 -9999.0 -9999.0 -9999.0"));
    }

    private static String nasaPower(Station station) {
        return "-BEGIN HEADER-\nNASA/POWER\nLocation: latitude  -31.5   longitude 20.5\n"
                + "elevation from MERRA-2: Average for region = 900.5 meters\n"
                + "The value for missing source data is: -999\nparameter(s):\n"
                + "ALLSKY_SFC_SW_DWN     CERES All Sky Surface Shortwave Downward Irradiance (kW-hr/m^2/day) \n-END HEADER-\n"
                + "YEAR,MO,DY,WS2M,ALLSKY_SFC_SW_DWN,PRECTOTCORR,T2M_MIN,T2M_MAX\n"
                + lines(station, day -> {
                    LocalDate date = station.start().plusDays(day);
                    return date.getYear() + "," + date.getMonthValue() + "," + date.getDayOfMonth() + ","
                            + or(station.wind()[day], "-999", OtherStationsTest::tenth) + ","
                            + or(station.solar()[day], "-999.0", value -> Double.toString(value / 360.0)) + ","
                            + or(station.rain()[day], "-999.0", OtherStationsTest::tenth) + ","
                            + or(station.tmin()[day], "-999", OtherStationsTest::tenth) + ","
                            + or(station.tmax()[day], "-999", OtherStationsTest::tenth);
                });
    }

    /** How a format is written, the factor of its wind to m/s, and whether it holds radiation. */
    private record Written(BiFunction<Station, RandomGenerator, String> text, double windFactor, boolean solar) {}

    static Map<String, Written> formats() {
        Map<String, Written> formats = new LinkedHashMap<>();
        formats.put("ghcn-daily", new Written((station, random) -> ghcnDaily(station), 1.0, false));
        formats.put("ghcn-daily-long", new Written((station, random) -> ghcnLong(station), 1.0, false));
        formats.put("knmi", new Written((station, random) -> knmi(station), 1.0, true));
        formats.put("dwd", new Written((station, random) -> dwd(station), 1.0, false));
        formats.put("met-eireann", new Written((station, random) -> metEireann(station), 1852.0 / 3600.0, true));
        formats.put("meteoswiss", new Written((station, random) -> meteoSwiss(station), 1.0, true));
        formats.put("geosphere", new Written((station, random) -> geosphere(station), 1.0, true));
        formats.put("uscrn", new Written((station, random) -> uscrn(station), 0.0, true));
        formats.put("nasa-power", new Written((station, random) -> nasaPower(station), 1.0, true));
        return formats;
    }

    static Set<String> names() {
        return formats().keySet();
    }

    @ParameterizedTest
    @MethodSource("names")
    void anyStationAndYearsReadBack(String name) {
        Written written = formats().get(name);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(name.hashCode());
        for (int trial = 0; trial < TRIALS; trial++) {
            Station station = draw(random);
            RawWeather raw = WeatherSamples.read(folder, written.text().apply(station, random));
            assertThat(raw.format().id()).isEqualTo(name);
            assertThat(raw.start()).isEqualTo(station.start());
            assertThat(raw.days()).isEqualTo(station.days());
            same(raw, RawVariable.TMIN, station.tmin(), 0.1);
            same(raw, RawVariable.TMAX, station.tmax(), 0.1);
            same(raw, RawVariable.RAIN, station.rain(), 0.1);
            if (written.solar()) {
                same(raw, RawVariable.SOLAR, station.solar(), 0.01);
            }
            if (written.windFactor() > 0.0) {
                same(raw, RawVariable.WIND, station.wind(), 0.1 * written.windFactor());
            }
        }
    }

    private static void same(RawWeather raw, RawVariable variable, int[] expected, double factor) {
        for (int day = 0; day < expected.length; day++) {
            double value = raw.value(variable, day);
            String where = variable + " on " + raw.date(day);
            if (expected[day] == Integer.MIN_VALUE) {
                assertThat(value).as(where).isNaN();
            } else {
                assertThat(value).as(where).isCloseTo(expected[day] * factor, ROUNDING);
            }
        }
    }
}
