package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.weather.WeatherSamples;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherVariable;

/** Windows that move from date to date hold what sorting each anew would give, ties, gaps and the turn of the year included. */
class DateWindowsTest {

    private static final LocalDate START = LocalDate.of(1999, 11, 20);
    private static final int DAYS = 2000;
    private static final int LEAP_YEAR = 2000;

    @Test
    void windowsHoldTheSortedValuesAroundEachDate(@TempDir Path folder) {
        double[] rain = new double[DAYS];
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(366L);
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        for (int day = 0; day < DAYS; day++) {
            rain[day] = random.nextInt(9) / 10.0;
            boolean gap = random.nextInt(20) == 0;
            rain[day] = gap ? Double.NaN : rain[day];
            text.append(START.plusDays(day)).append(",1,9,");
            text.append(gap ? "" : String.format(Locale.ROOT, "%.1f", rain[day]))
                    .append('\n');
        }
        Site site = new Site("Larkmoor field station", 50.0, 12.0);
        WorkingWeather weather =
                new WorkingWeather(WeatherSamples.read(folder, text.toString()), site, SuspectRule.KEEP);

        for (int half : new int[] {0, 7, 14}) {
            double[][] windows = new DateWindows(weather).windows(WeatherVariable.RAIN, half, 0.0);
            for (int date = 0; date < RecordCalendar.DATES; date++) {
                assertThat(windows[date]).as("date %d, half %d", date, half).isEqualTo(around(date, half, rain));
            }
        }
    }

    private static double[] around(int date, int half, double[] rain) {
        double[] found = new double[DAYS];
        int count = 0;
        for (int day = 0; day < DAYS; day++) {
            LocalDate inLeapYear = LocalDate.of(
                    LEAP_YEAR,
                    START.plusDays(day).getMonthValue(),
                    START.plusDays(day).getDayOfMonth());
            int away = Math.abs(inLeapYear.getDayOfYear() - 1 - date);
            if (Math.min(away, RecordCalendar.DATES - away) <= half && rain[day] > 0.0) {
                found[count++] = rain[day];
            }
        }
        double[] sorted = Arrays.copyOf(found, count);
        Arrays.sort(sorted);
        return sorted;
    }
}
