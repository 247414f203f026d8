package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.read;
import static org.thirstline.io.weather.WeatherSamples.refused;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.error.InputError;
import org.thirstline.io.weather.IssueKind;
import org.thirstline.io.weather.LayeredWeather;
import org.thirstline.io.weather.RadiationSkill;
import org.thirstline.io.weather.RawVariable;
import org.thirstline.io.weather.RawWeather;
import org.thirstline.io.weather.ReadOptions;
import org.thirstline.io.weather.SiteInfo;
import org.thirstline.io.weather.SourceShare;
import org.thirstline.io.weather.WeatherIssue;
import org.thirstline.io.weather.WeatherLayer;
import org.thirstline.io.weather.WeatherReaders;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.solar.SolarGeometry;
import org.thirstline.model.weather.Origin;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherVariable;

/** Made-up years with one thing wrong: it is found, and nothing else is. */
class SeriesChecksTest {

    private static final Site SITE = new Site("Larkmoor field station", 50.0, 12.0);
    private static final LocalDate START = LocalDate.of(2001, 1, 1);
    private static final int DAYS = 8 * 365 + 2;

    @TempDir
    Path folder;

    private final double[] tmin = new double[DAYS];
    private final double[] tmax = new double[DAYS];
    private final double[] rain = new double[DAYS];

    SeriesChecksTest() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(2012L);
        for (int day = 0; day < DAYS; day++) {
            double season = 10.0 - 9.0 * Math.cos(2.0 * Math.PI * day / 365.25);
            boolean wet = random.nextDouble() < 0.3;
            double range = (wet ? 5.0 : 11.0) + random.nextDouble();
            double mean = season + 2.0 * Math.max(-3.0, Math.min(3.0, random.nextGaussian()));
            tmin[day] = Math.rint(10.0 * (mean - range / 2.0)) / 10.0;
            tmax[day] = Math.rint(10.0 * (mean + range / 2.0)) / 10.0;
            rain[day] = wet ? Math.rint(10.0 * (0.2 + 12.0 * random.nextDouble())) / 10.0 : 0.0;
        }
        // days from midnight to midnight share an instant, so their ranges overlap
        for (int day = 1; day < DAYS; day++) {
            tmax[day] = Math.max(tmax[day], tmin[day - 1] + 0.1);
            tmin[day] = Math.min(tmin[day], tmax[day - 1] - 0.1);
        }
    }

    private String text() {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        for (int day = 0; day < DAYS; day++) {
            text.append(START.plusDays(day)).append(',').append(value(tmin[day]));
            text.append(',')
                    .append(value(tmax[day]))
                    .append(',')
                    .append(value(rain[day]))
                    .append('\n');
        }
        return text.toString();
    }

    private static String value(double value) {
        return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.2f", value);
    }

    private WeatherRecord assemble(SuspectRule rule) {
        return WeatherAssembly.assemble(read(folder, text()), SITE, AssemblySettings.DEFAULT.withSuspectRule(rule));
    }

    private List<WeatherIssue> suspects() {
        return assemble(SuspectRule.KEEP).issues().stream()
                .filter(issue -> issue.kind() == IssueKind.SUSPECT)
                .toList();
    }

    private void found(RawVariable variable, int from, int days, String words) {
        assertThat(suspects()).anySatisfy(issue -> {
            assertThat(issue.variable()).isEqualTo(variable);
            assertThat(issue.first()).isEqualTo(START.plusDays(from));
            assertThat(issue.days()).isEqualTo(days);
            assertThat(issue.action()).contains(words);
        });
    }

    @Test
    void goodYearsRaiseNothing() {
        assertThat(suspects()).isEmpty();
    }

    @Test
    void spikesDipsAndDaysThatDoNotMeetTheirNeighbours() {
        tmax[500] += 40.0;
        tmin[900] -= 40.0;
        found(RawVariable.TMAX, 500, 1, "25 °C from the days before and after");
        found(RawVariable.TMIN, 900, 1, "25 °C from the days before and after");
        tmin[700] = tmax[699] + 4.0;
        tmax[700] = tmin[700] + 1.0;
        found(RawVariable.TMAX, 699, 1, "below the minimum of a day beside it");
        tmin[1000] = tmax[1000];
        found(RawVariable.TMAX, 1000, 1, "maximum equals minimum");
    }

    @Test
    void flatLinesAndRepeatedMonths() {
        for (int day = 400; day < 421; day++) {
            tmax[day] = 20.25;
        }
        found(RawVariable.TMAX, 400, 21, "20 days running");
        System.arraycopy(rain, 0, rain, 365, 31);
        found(RawVariable.RAIN, 365, 31, "as in 2001-01");
    }

    /** 10 °C above the warmest July, which is less than five deviations in so even a month; rain beyond a gap of 300 mm. */
    @Test
    void valuesThatStandApartFromTheirMonth() {
        double warmest = 0.0;
        for (int day = 0; day < DAYS; day++) {
            warmest = START.plusDays(day).getMonthValue() == 7 ? Math.max(warmest, tmax[day]) : warmest;
        }
        tmax[200 + 365] = warmest + 9.9;
        assertThat(suspects()).noneSatisfy(issue -> assertThat(issue.action()).contains("away from all others"));
        tmax[200 + 365] = warmest + 10.1;
        found(RawVariable.TMAX, 200 + 365, 1, "10 °C away from all others of that month");
        rain[1200] = 320.0;
        found(RawVariable.RAIN, 1200, 1, "300 mm away from all others of that month");
    }

    /** The wettest days here bring 12.2 mm at most; drizzle may repeat itself, downpours may not. */
    @Test
    void amountsThatComeTooOften() {
        int set = 0;
        for (int day = 800; set < 9; day++) {
            if (rain[day] > 0.0) {
                rain[day] = 0.5;
                set++;
            }
        }
        assertThat(suspects()).isEmpty();
        set = 0;
        for (int day = 1500; set < 5; day++) {
            if (rain[day] > 0.0) {
                rain[day] = 12.1;
                set++;
            }
        }
        assertThat(suspects()).hasSize(5).allSatisfy(issue -> {
            assertThat(issue.variable()).isEqualTo(RawVariable.RAIN);
            assertThat(issue.action()).contains("five or more of ten rainy days");
        });
    }

    @Test
    void outliersOfTheTimeOfYear() {
        tmax[180 + 365] = 47.0;
        rain[1200] = 300.0;
        found(RawVariable.TMAX, 180 + 365, 1, "5 deviations");
        found(RawVariable.RAIN, 1200, 1, "many times");
    }

    @Test
    void rainDatedOneDayOff() {
        System.arraycopy(rain, 0, rain, 1, DAYS - 1);
        assertThat(suspects()).singleElement().satisfies(issue -> {
            assertThat(issue.variable()).isEqualTo(RawVariable.RAIN);
            assertThat(issue.action()).contains("a day late");
        });
    }

    @Test
    void aYearInTenthsAndColumnsInFahrenheit() {
        for (int day = 365; day < 730; day++) {
            rain[day] *= 10.0;
        }
        assertThat(suspects()).anyMatch(issue -> issue.action().contains("another unit") && issue.days() == 365);
        for (int day = 0; day < DAYS; day++) {
            tmax[day] = 32.0 + 1.8 * tmax[day];
        }
        refused(InputError.UNIT_IMPLAUSIBLE, () -> assemble(SuspectRule.KEEP));
    }

    @Test
    void theRuleSaysWhatHappens() {
        tmax[500] += 30.0;
        WeatherRecord kept = assemble(SuspectRule.KEEP);
        assertThat(kept.series().origin(WeatherVariable.TMAX, 500)).isEqualTo(Origin.MEASURED);
        WeatherRecord blanked = assemble(SuspectRule.BLANK);
        assertThat(blanked.series().origin(WeatherVariable.TMAX, 500)).isEqualTo(Origin.INTERPOLATED);
        assertThat(refused(InputError.SUSPECT_VALUES, () -> assemble(SuspectRule.STOP)))
                .hasMessageContaining("maximum temperature on 2002-05-16");
    }

    /** The second station is 2 °C warmer and twice as wet; corrected, it gives back what was taken away. */
    @Test
    void secondStationFillsGapsAtTheLevelOfThisOne() throws Exception {
        double[] whole = tmax.clone();
        double[] wholeRain = rain.clone();
        for (int day = 0; day < DAYS; day++) {
            tmax[day] += 2.0;
            rain[day] *= 2.0;
        }
        Path neighbour = Files.writeString(folder.resolve("neighbour"), text());
        System.arraycopy(whole, 0, tmax, 0, DAYS);
        System.arraycopy(wholeRain, 0, rain, 0, DAYS);
        java.util.Arrays.fill(tmax, 600, 640, Double.NaN);
        java.util.Arrays.fill(rain, 600, 640, Double.NaN);
        WeatherRecord record = WeatherAssembly.assemble(
                new LayeredWeather(read(folder, text()), List.of()),
                WeatherReaders.read(neighbour, ReadOptions.DEFAULT),
                SiteInfo.of(SITE),
                AssemblySettings.DEFAULT);
        assertThat(record.count(WeatherVariable.TMAX, Origin.SECOND_STATION)).isEqualTo(40);
        for (int day = 600; day < 640; day++) {
            assertThat(record.series().value(WeatherVariable.TMAX, day)).isCloseTo(whole[day], within(0.011));
            assertThat(record.series().value(WeatherVariable.RAIN, day)).isCloseTo(wholeRain[day], within(0.011));
        }
        assertThat(record.issues()).anyMatch(issue -> issue.kind() == IssueKind.SECOND_STATION);
    }

    /** Radiation made with a coefficient is fitted with it, and then estimated without error. */
    @Test
    void radiationCoefficientIsFittedToMeasuredYears() {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm,solar_mj_m2\n");
        for (int day = 0; day < DAYS; day++) {
            LocalDate date = START.plusDays(day);
            double top = SolarGeometry.extraterrestrialRadiation(SITE.latitudeRad(), date.getDayOfYear());
            double solar = NetRadiation.solarFromTemperatureRange(tmin[day], tmax[day], top, 0.14, 12.0);
            text.append(date).append(',').append(value(tmin[day])).append(',').append(value(tmax[day]));
            text.append(",0,").append(day < 500 ? value(solar) : "").append('\n');
        }
        RawWeather raw = read(folder, text.toString());
        RadiationSkill skill =
                WeatherAssembly.assemble(raw, SITE, AssemblySettings.DEFAULT).radiation();
        assertThat(skill).isNotNull();
        assertThat(skill.fitted()).isTrue();
        assertThat(skill.coefficient()).isCloseTo(0.14, within(1e-4));
        assertThat(skill.rootMeanSquareError()).isLessThan(0.02);
        AssemblySettings stated = AssemblySettings.DEFAULT.withSolarTemperatureCoefficient(0.19);
        WeatherRecord record = WeatherAssembly.assemble(raw, SITE, stated);
        assertThat(record.radiation()).isNotNull();
        assertThat(record.radiation().coefficient()).isEqualTo(0.19);
        assertThat(record.radiation().bias()).isGreaterThan(1.0);
        assertThat(WeatherReport.rows(record)).anyMatch(row -> row.action().contains("root mean square"));
    }

    /** GHCN-Daily: 12.0 mm on three days up to the 4th; the gap of the 6th and 7th has a sum whose days are not told. */
    @Test
    void rainOfSeveralDaysIsSpreadWhenAsked() {
        StringBuilder text = new StringBuilder();
        for (int day = 1; day <= 9; day++) {
            String date = "USW00003870,2007010" + day;
            text.append(date).append(",TMAX,189,,,0,\n").append(date).append(",TMIN,50,,,0,\n");
            if (day == 1 || day == 5 || day >= 8) {
                text.append(date).append(",PRCP,0,,,0,\n");
            }
        }
        text.append("USW00003870,20070104,MDPR,120,,,0,\nUSW00003870,20070104,DAPR,3,,,0,\n");
        text.append("USW00003870,20070107,MDPR,90,,,0,\n");
        RawWeather raw = read(folder, text.toString());
        AssemblySettings spread = AssemblySettings.DEFAULT.withRainSumsSpread(true);
        WeatherRecord record = WeatherAssembly.assemble(raw, SITE, spread);
        assertThat(record.series().column(WeatherVariable.RAIN))
                .containsExactly(0.0, 4.0, 4.0, 4.0, 0.0, 4.5, 4.5, 0.0, 0.0);
        assertThat(record.count(WeatherVariable.RAIN, Origin.ESTIMATED)).isEqualTo(5);
        WeatherRecord filled = WeatherAssembly.assemble(raw, SITE, AssemblySettings.DEFAULT);
        assertThat(filled.count(WeatherVariable.RAIN, Origin.CLIMATOLOGY)).isEqualTo(5);
        RawWeather layered = LayeredWeather.of(List.of(
                        new WeatherLayer("a", raw, List.of(RawVariable.RAIN)), new WeatherLayer("b", raw, List.of())))
                .weather();
        assertThat(layered.rainSums()).isEqualTo(raw.rainSums()).hasSize(2);
    }

    @Test
    void eachValueComesFromTheFirstSourceThatHasIt() {
        String head = "date,tmin_c,tmax_c,rain_mm,";
        RawWeather gauge = read(folder, "date,tmin_c,tmax_c,rain_mm\n2012-07-01,0,1,5.5\n2012-07-02,0,1,\n");
        RawWeather station =
                read(folder, head + "wind_10m_m_s,rh_mean_pct\n2012-07-01,10,20,9,4,70\n2012-07-02,11,21,8,,70\n");
        RawWeather grid = read(
                folder,
                head
                        + "wind_2m_m_s,vapour_pressure_kpa\n2012-07-01,1,2,3,3,1.1\n2012-07-02,1,2,3,3,1.1\n2012-07-03,12,22,3,3,1.1\n");
        LayeredWeather layered = LayeredWeather.of(List.of(
                new WeatherLayer("gauge", gauge, List.of(RawVariable.RAIN)),
                new WeatherLayer("station", station, List.of()),
                new WeatherLayer("grid", grid, List.of())));
        RawWeather raw = layered.weather();
        assertThat(raw.column(RawVariable.RAIN)).containsExactly(5.5, 8.0, 3.0);
        assertThat(raw.column(RawVariable.TMAX)).containsExactly(20.0, 21.0, 22.0);
        // 4 m/s at 10 m are 2.99 at 2 m (FAO-56 eq. 47: 0.748)
        assertThat(raw.value(RawVariable.WIND, 0)).isCloseTo(4.0 * 0.748, within(0.002));
        assertThat(raw.value(RawVariable.WIND, 1)).isEqualTo(3.0);
        assertThat(raw.windHeightM()).isEqualTo(2.0);
        assertThat(raw.value(RawVariable.VAPOUR_PRESSURE, 0))
                .as("the station's humidity comes first")
                .isNaN();
        assertThat(raw.value(RawVariable.VAPOUR_PRESSURE, 2)).isEqualTo(1.1);
        assertThat(layered.shares().stream()
                        .filter(share -> share.variable() == RawVariable.RAIN)
                        .map(SourceShare::source))
                .containsExactly("gauge", "station", "grid");
        assertThat(layered.shares().stream()
                        .filter(share -> share.source().equals("grid") && share.variable() == RawVariable.WIND)
                        .mapToInt(SourceShare::days)
                        .sum())
                .isEqualTo(2);
    }
}
