package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.io.weather.WeatherSamples;
import org.thirstline.io.weather.WeatherTable;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherVariable;

/** Laws: what was written reads back as the same weather, and writes the same bytes. */
class WeatherRoundTripTest {

    private static final Site SITE = new Site("Larkmoor field station", 52.1, 12.0);
    private static final AssemblySettings SETTINGS = AssemblySettings.DEFAULT.withRainRequired(false);

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void tableReadsBackToTheSameBytes(long seed) throws IOException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        WeatherRecord first = assemble(randomTable(random));
        String written = table(first);
        WeatherRecord second = assemble(written);
        assertThat(table(second)).isEqualTo(written);
        for (WeatherVariable variable : WeatherVariable.values()) {
            if (variable != WeatherVariable.RAIN || first.rainKnown()) {
                assertThat(second.series().column(variable))
                        .isEqualTo(first.series().column(variable));
                for (Origin origin : Origin.values()) {
                    assertThat(second.count(variable, origin)).isEqualTo(first.count(variable, origin));
                }
            }
        }
        assertThat(second.rainKnown()).isEqualTo(first.rainKnown());
    }

    @Test
    void columnsAreThosePromised() throws IOException {
        String written = table(assemble("date,tmin_c,tmax_c,rain_mm\n2012-07-01,10,25.5,0\n"));
        assertThat(written)
                .startsWith("date,tmin_c,tmax_c,rain_mm,solar_mj_m2,wind_2m_m_s,vapour_pressure_kpa,day_length_h,"
                        + "extraterrestrial_mj_m2,et0_mm,flags\n2012-07-01,10.00,25.50,0.00,")
                .endsWith(",solar:estimated wind:estimated vapour_pressure:estimated\n")
                .doesNotContain("\r");
    }

    @Test
    void rainThatIsNotKnownIsNotWrittenAsZero() throws IOException {
        String written = table(assemble("date,tmin_c,tmax_c\n2012-07-01,10,25.5\n"));
        assertThat(written.lines().skip(1)).singleElement().satisfies(line -> {
            assertThat(line).startsWith("2012-07-01,10.00,25.50,,").doesNotContain("rain:");
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24})
    void validValuesAreReadAsTheyStand(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        int days = 400;
        double[][] expected = new double[4][days];
        StringBuilder text = new StringBuilder("rain_mm,date,tmax_c,wind_2m_m_s,tmin_c\n");
        LocalDate start = LocalDate.of(1899, 11, 3);
        for (int day = 0; day < days; day++) {
            for (int i = 0; i < 4; i++) {
                expected[i][day] = random.nextInt(5) == 0
                        ? Double.NaN
                        : (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(5));
            }
            text.append(String.format(
                    "%s,%s,%s,%s,%s%n",
                    field(expected[0][day]),
                    start.plusDays(day),
                    field(expected[1][day]),
                    field(expected[2][day]),
                    field(expected[3][day])));
        }
        RawWeather raw = WeatherSamples.read(folder, text.toString());
        assertThat(raw.start()).isEqualTo(start);
        assertThat(raw.column(RawVariable.RAIN)).isEqualTo(expected[0]);
        assertThat(raw.column(RawVariable.TMAX)).isEqualTo(expected[1]);
        assertThat(raw.column(RawVariable.WIND)).isEqualTo(expected[2]);
        assertThat(raw.column(RawVariable.TMIN)).isEqualTo(expected[3]);
    }

    private static String field(double value) {
        return Double.isNaN(value) ? "" : Double.toString(value);
    }

    /** A table with gaps, absent dates, bad values and units of any kind. */
    private static String randomTable(RandomGenerator random) {
        boolean rain = random.nextInt(4) > 0;
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_f,wind_10m_mph,rh_mean_pct,solar_w_m2");
        text.append(rain ? ",rain_in\n" : "\n");
        LocalDate date = LocalDate.of(1999, 1, 1).plusDays(random.nextInt(4000));
        int gap = 0;
        for (int day = 0; day < 900; day++, date = date.plusDays(1)) {
            gap = gap > 0 ? gap - 1 : random.nextInt(60) == 0 ? random.nextInt(25) : 0;
            if (random.nextInt(50) == 0) {
                continue;
            }
            double tmin = random.nextGaussian() * 8.0;
            double tmaxF = 32.0 + 1.8 * (tmin + 12.0 * random.nextDouble() - (random.nextInt(30) == 0 ? 5.0 : 0.0));
            text.append(date);
            append(text, gap > 0 ? Double.NaN : tmin, random);
            append(text, gap > 3 ? Double.NaN : tmaxF, random);
            append(text, 12.0 * random.nextDouble(), random);
            append(text, 105.0 * random.nextDouble(), random);
            append(text, random.nextInt(20) == 0 ? 0.0 : 400.0 * random.nextDouble(), random);
            if (rain) {
                append(text, random.nextInt(3) == 0 ? random.nextDouble() : 0.0, random);
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static void append(StringBuilder text, double value, RandomGenerator random) {
        text.append(',');
        if (!Double.isNaN(value) && random.nextInt(15) > 0) {
            text.append(String.format(Locale.ROOT, "%.5f", value));
        }
    }

    private WeatherRecord assemble(String text) {
        return WeatherAssembly.assemble(WeatherSamples.read(folder, text), SITE, SETTINGS);
    }

    private static String table(WeatherRecord record) throws IOException {
        StringBuilder text = new StringBuilder();
        WeatherTable.write(record, text);
        return text.toString();
    }
}
