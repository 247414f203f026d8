package org.thirstline.io.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.file;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.io.error.InputError;

class MappedReaderTest {

    private static final String LOGGER = """
            Logger 7, field 3
            Datum;Tmax;Tmin;Regen;Wind
            30.07.2012;86,0;50,0;0,10;10,0
            31.07.2012;88,7;n/a;-99;5,5
            """;

    @TempDir
    Path folder;

    private static MappedColumn column(String name, String gives, @Nullable String unit) {
        return new MappedColumn(name, gives, unit, null, null);
    }

    private static TableMapping mapping(@Nullable Character separator, boolean comma, MappedColumn... columns) {
        return new TableMapping(List.of(columns), separator, comma, List.of("-99", "n/a"));
    }

    private RawWeather read(String text, TableMapping mapping) {
        return WeatherReaders.read(file(folder, text), ReadOptions.DEFAULT.withMapping(mapping));
    }

    @Test
    void anyNamesUnitsDatesAndDecimalCommas() {
        RawWeather raw = read(
                LOGGER,
                mapping(
                        null,
                        true,
                        new MappedColumn("Datum", "date", null, "dd.MM.yyyy", null),
                        column("tmax", "tmax", "°F"),
                        column("Tmin", "tmin", "F"),
                        column("Regen", "rain", "inch"),
                        new MappedColumn("Wind", "wind", "mph", null, 3.0)));
        assertThat(raw.start()).isEqualTo(LocalDate.of(2012, 7, 30));
        assertThat(raw.value(RawVariable.TMAX, 1)).isCloseTo(31.5, within(1e-9));
        assertThat(raw.value(RawVariable.TMIN, 0)).isCloseTo(10.0, within(1e-9));
        assertThat(raw.value(RawVariable.TMIN, 1)).isNaN();
        assertThat(raw.value(RawVariable.RAIN, 0)).isCloseTo(2.54, within(1e-9));
        assertThat(raw.value(RawVariable.RAIN, 1)).isNaN();
        assertThat(raw.windHeightM()).isEqualTo(3.0);
    }

    @Test
    void aTableOfSeveralStationsGivesTheOneAskedFor() {
        String text = "place,day,t\nEast,2012-07-01,20\nEast,2012-07-02,21\nWest,2012-07-01,30\nWest,2012-07-02,31\n";
        TableMapping mapping = mapping(
                null, false, column("place", "station", null), column("day", "date", null), column("t", "tmax", "°C"));
        refused(InputError.STATION_NEEDED, () -> read(text, mapping));
        ReadOptions west = ReadOptions.DEFAULT.withMapping(mapping).withStation("West");
        RawWeather raw = WeatherReaders.read(file(folder, text), west);
        assertThat(raw.column(RawVariable.TMAX)).containsExactly(30.0, 31.0);
        assertThat(raw.site().name()).isEqualTo("West");
    }

    @Test
    void partsOfTheDateAndTablesWithoutHeader() {
        RawWeather parts = read(
                "y m d t\n2012 2 29 1.5\n",
                mapping(
                        ' ',
                        false,
                        column("y", "year", null),
                        column("m", "month", null),
                        column("d", "day", null),
                        column("t", "tmin", "K")));
        assertThat(parts.start()).isEqualTo(LocalDate.of(2012, 2, 29));
        RawWeather numbered = read(
                "2012,60,1.5,x\n2012,61,2.5,x\n",
                mapping(
                        null,
                        false,
                        column("1", "year", null),
                        column("2", "day_of_year", null),
                        column("3", "tmin", "°C")));
        assertThat(numbered.days()).isEqualTo(2);
        assertThat(numbered.value(RawVariable.TMIN, 1)).isEqualTo(2.5);
    }

    /** By definition or international agreement: thermochemical calorie 4.184 J, mile 1609.344 m, nautical mile 1852 m, inch 25.4 mm. */
    @ParameterizedTest
    @CsvSource({
        "tmax, °F, 50, 10",
        "tmax, K, 300.15, 27",
        "tmax, 0.1 °C, 123, 12.3",
        "rain, inch, 0.5, 12.7",
        "rain, cm, 1.2, 12",
        "solar, W/m², 100, 8.64",
        "solar, langley, 500, 20.92",
        "solar, kWh/m2, 5, 18",
        "solar, J/cm2, 2000, 20",
        "wind, mph, 10, 4.4704",
        "wind, knots, 18, 9.26",
        "wind, km/h, 36, 10",
        "wind, km/d, 172.8, 2",
        "wind, km/day, 172.8, 2",
        "vapour_pressure, hPa, 12, 1.2",
        "sunshine, min, 90, 1.5",
        "rh_mean, fraction, 0.5, 50",
        "specific_humidity, g/kg, 8, 0.008",
    })
    void units(String gives, String unit, double found, double ours) {
        RawWeather raw = read(
                "day,x\n2012-07-01," + found + "\n",
                mapping(null, false, column("day", "date", null), column("x", gives, unit)));
        for (RawVariable variable : RawVariable.values()) {
            if (variable.shortName().equals(gives)) {
                assertThat(raw.value(variable, 0)).isCloseTo(ours, within(1e-9));
            }
        }
    }

    @Test
    void whatCannotBeMeantIsRefused() {
        MappedColumn date = column("day", "date", null);
        refused(InputError.UNIT_NOT_UNDERSTOOD, () -> column("x", "tmax", "mm"));
        refused(InputError.UNIT_NOT_UNDERSTOOD, () -> column("x", "tmax", null));
        refused(InputError.LINE_MALFORMED, () -> column("x", "sunniness", "h"));
        refused(InputError.COLUMN_MISSING, () -> mapping(null, false, column("x", "tmax", "K")));
        refused(
                InputError.COLUMN_TWICE,
                () -> mapping(null, false, date, column("x", "tmax", "K"), column("y", "tmax", "K")));
        TableMapping simple = mapping(null, false, date, column("tmaxx", "tmax", "K"));
        assertThat(refused(InputError.COLUMN_MISSING, () -> read("day,tmax\n2012-07-01,1\n", simple)))
                .hasMessageContaining("Is 'tmax' meant");
        TableMapping comma = mapping(null, true, date, column("t", "tmax", "°C"));
        refused(InputError.NOT_A_NUMBER, () -> read("day;t\n2012-07-01;1.234\n", comma));
        MappedColumn strict = new MappedColumn("day", "date", null, "dd/MM/yyyy", null);
        TableMapping strictly = mapping(null, false, strict, column("t", "tmax", "°C"));
        refused(InputError.BAD_DATE, () -> read("day,t\n31/02/2012,1\n", strictly));
        MappedColumn nonsense = new MappedColumn("day", "date", null, "bb{", null);
        TableMapping pattern = mapping(null, false, nonsense, column("t", "tmax", "°C"));
        refused(InputError.LINE_MALFORMED, () -> read("day,t\n31/02/2012,1\n", pattern));
    }
}
