package org.thirstline.calibration.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.calibration.study.StudyWeather;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.StudyReader;
import org.thirstline.model.weather.DailyDrivers;

/** First winters under made-up weather: dry frost of a chosen depth in one winter, mild ones else. */
class FirstWinterTest {

    private static final int FIRST = 2001;

    private static final int LAST = 2006;

    private static final int HARD = 2003;

    @TempDir
    private Path folder;

    /** Mean temperature from -6 to +20 °C in ordinary years; the frost of the winter that begins in HARD is multiplied. */
    private FirstWinter winters(double latitude, double frostTimes) throws IOException {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        int shift = latitude < 0 ? 182 : 0;
        for (LocalDate date = LocalDate.of(FIRST, 1, 1);
                date.isBefore(LocalDate.of(LAST + 1, 1, 1));
                date = date.plusDays(1)) {
            double mean = 7.0 - 13.0 * Math.cos(2.0 * Math.PI * (date.getDayOfYear() + shift) / 365.0);
            LocalDate midsummer = LocalDate.of(HARD, 7, 1);
            boolean hard = !date.isBefore(midsummer) && date.isBefore(midsummer.plusYears(1));
            double felt = mean < 0.0 && hard ? frostTimes * mean : mean;
            double rain = mean > 4.0 && date.getDayOfYear() % 4 == 0 ? 10.0 : 0.0;
            text.append(String.format(Locale.ROOT, "%s,%.1f,%.1f,%.1f%n", date, felt - 4.0, felt + 4.0, rain));
        }
        Files.writeString(folder.resolve("weather.csv"), text.toString());
        Files.writeString(folder.resolve("study.yaml"), """
                title: test
                invented: true
                site: {name: nowhere, latitude_deg: %s, elevation_m: 100}
                weather: {file: weather.csv}
                crop: giant miscanthus
                stand: {planted: 2001-04-20, spacing: 75 cm x 75 cm}
                soil: {available_water: 150 mm/m, depth: 1 m}
                harvest: {date: 03-01}
                """.formatted(latitude));
        Study study = StudyReader.read(folder.resolve("study.yaml"));
        DailyDrivers drivers =
                DailyDrivers.of(study.site(), StudyWeather.read(study).series());
        return FirstWinter.of(study, study.zones().get(0), drivers);
    }

    @Test
    void mildWintersKillFewAndAHardOneMost() throws IOException {
        FirstWinter mild = winters(45, 1.0);
        FirstWinter hard = winters(45, 6.0);
        assertThat(mild.winters()).hasSize(LAST - FIRST);
        assertThat(mild.failedShare()).isZero();
        assertThat(hard.failedShare()).isCloseTo(1.0 / (LAST - FIRST), within(1e-12));
        FirstWinter.Winter killing = hard.winters().get(HARD - FIRST);
        assertThat(killing.plantingYear()).isEqualTo(HARD);
        assertThat(killing.coldestC()).isLessThan(hard.halfLethalC());
        assertThat(killing.survival()).isLessThan(FirstWinter.FAILED);
        assertThat(hard.dates()).allSatisfy(date -> {
            assertThat(date.failedShare()).isCloseTo(1.0 / (LAST - FIRST), within(1e-12));
            assertThat(date.lowestSurvival()).isLessThan(FirstWinter.FAILED);
        });
    }

    @Test
    void moreFrostNeverLeavesMorePlants() throws IOException {
        double before = 1.0;
        for (double times : new double[] {1.0, 2.0, 3.0, 4.0, 6.0}) {
            FirstWinter winter = winters(45, times);
            assertThat(winter.meanSurvival()).isLessThanOrEqualTo(before);
            before = winter.meanSurvival();
        }
    }

    /** The runs and the survival curve tell of the same winters; the engine gives up a stand of which less than 2 % lives. */
    @Test
    void simulatedSurvivalIsThatOfTheColdestSoil() throws IOException {
        FirstWinter winter = winters(45, 4.0);
        FirstWinter.Date april = winter.dates().stream()
                .filter(date -> date.day().equals(MonthDay.of(4, 15)))
                .findFirst()
                .orElseThrow();
        double expected = winter.winters().stream()
                .mapToDouble(one -> one.survival() < 0.02 ? 0.0 : one.survival())
                .average()
                .orElseThrow();
        assertThat(april.years()).isEqualTo(winter.winters().size());
        // Each run starts its soil temperature anew on 1 January of its planting year; a year later nothing is left of that.
        assertThat(april.meanSurvival()).isCloseTo(expected, within(1e-9));
    }

    @Test
    void laterPlantingMeansWarmerSoilAndASmallerReserve() throws IOException {
        FirstWinter winter = winters(45, 1.0);
        FirstWinter.Date first = winter.dates().get(0);
        FirstWinter.Date last = winter.dates().get(winter.dates().size() - 1);
        assertThat(last.soilTemperatureC()).isGreaterThan(first.soilTemperatureC());
        assertThat(last.reserveGM2()).isLessThan(first.reserveGM2());
        assertThat(last.shootsM2()).isLessThanOrEqualTo(first.shootsM2());
    }

    @Test
    void plantingDatesOfTheSouthAreHalfAYearLater() throws IOException {
        FirstWinter winter = winters(-40, 1.0);
        assertThat(winter.dates().get(0).day()).isEqualTo(MonthDay.of(9, 1));
        assertThat(winter.dates()).isNotEmpty().allSatisfy(date -> assertThat(date.meanSurvival())
                .isGreaterThan(0.9));
    }
}
