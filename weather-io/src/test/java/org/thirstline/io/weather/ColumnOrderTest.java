package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Law: columns are found by name. Shuffled, and with columns among them that nobody knows, a file reads the same. */
class ColumnOrderTest {

    private static final int SHUFFLES = 40;

    /** Start of the header line, and columns that stay in front because the format is recognised by them. */
    private record Layout(String header, int fixed) {}

    private static final Map<WeatherFormat, Layout> LAYOUTS = Map.ofEntries(
            Map.entry(WeatherFormat.PLAIN, new Layout("date,", 0)),
            Map.entry(WeatherFormat.NASA_POWER, new Layout("YEAR,DOY", 2)),
            Map.entry(WeatherFormat.DAYMET, new Layout("year,yday", 2)),
            Map.entry(WeatherFormat.KNMI, new Layout("# STN,YYYYMMDD", 2)),
            Map.entry(WeatherFormat.OPEN_METEO, new Layout("time,", 1)),
            Map.entry(WeatherFormat.GHCN_DAILY_ACCESS, new Layout("\"STATION\"", 1)),
            Map.entry(WeatherFormat.GHCN_DAILY_WIDE, new Layout("\"STATION\"", 1)),
            Map.entry(WeatherFormat.DWD, new Layout("STATIONS_ID", 2)),
            Map.entry(WeatherFormat.MET_EIREANN, new Layout("date,ind", 2)),
            Map.entry(WeatherFormat.METEOSWISS, new Layout("station/location", 2)),
            Map.entry(WeatherFormat.GRIDMET, new Layout("id,", 0)),
            Map.entry(WeatherFormat.AGRIMET, new Layout("DATE ", 1)),
            Map.entry(WeatherFormat.COAGMET, new Layout("name,", 0)),
            Map.entry(WeatherFormat.GEOSPHERE, new Layout("time,station", 2)));

    @TempDir
    Path folder;

    /** The formats without a header have no names to find columns by; ECA&D has one element a file. */
    @ParameterizedTest
    @EnumSource(
            mode = EnumSource.Mode.EXCLUDE,
            names = {"GHCN_DAILY", "GHCN_DAILY_LONG", "USCRN", "ECAD"})
    void columnsAreFoundByName(WeatherFormat format) {
        Layout layout = LAYOUTS.get(format);
        String text = WeatherSamples.all().get(format);
        RawWeather whole = WeatherSamples.read(folder, text);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(format.ordinal());
        for (int i = 0; i < SHUFFLES; i++) {
            String shuffled = shuffled(text, layout, random);
            RawWeather read = WeatherSamples.read(folder, shuffled);
            assertThat(read.format()).as(shuffled).isEqualTo(format);
            assertThat(read.site()).isEqualTo(whole.site());
            assertThat(read.windHeightM()).isEqualTo(whole.windHeightM());
            for (RawVariable variable : RawVariable.values()) {
                assertThat(read.column(variable))
                        .as("%s of %s", variable, shuffled)
                        .isEqualTo(whole.column(variable));
            }
        }
    }

    private static String shuffled(String text, Layout layout, RandomGenerator random) {
        List<String> lines = Arrays.asList(text.split("\n", -1));
        int header = 0;
        while (!lines.get(header).startsWith(layout.header())) {
            header++;
        }
        String separator = lines.get(header).indexOf(';') > 0 ? ";" : ",";
        int columns = fields(lines.get(header), separator).size();
        List<Integer> order = order(columns, layout.fixed(), random);
        int unknown = layout.fixed() + random.nextInt(columns - layout.fixed() + 1);
        List<String> out = new ArrayList<>(lines.subList(0, header));
        for (int i = header; i < lines.size(); i++) {
            List<String> fields = fields(lines.get(i), separator);
            if (fields.size() != columns) {
                out.add(lines.get(i));
                continue;
            }
            List<String> moved = order.stream().map(fields::get).collect(Collectors.toCollection(ArrayList::new));
            moved.add(unknown, i == header ? "qx" : "7");
            out.add(String.join(separator, moved));
        }
        return String.join("\n", out);
    }

    private static List<Integer> order(int columns, int fixed, RandomGenerator random) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < columns; i++) {
            int at = i < fixed ? i : fixed + random.nextInt(i - fixed + 1);
            order.add(at, i);
        }
        return order;
    }

    /** Cuts at separators outside quotes. */
    private static List<String> fields(String line, String separator) {
        return Arrays.asList(line.split(separator + "(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1));
    }
}
