package org.thirstline.io.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.weather.WeatherSamples.read;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.climate.ClimateSummary.FrostDate;
import org.thirstline.io.quality.AssemblySettings;
import org.thirstline.io.quality.WeatherAssembly;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Site;

/** Made-up years whose normals and frost dates can be told by hand. */
class ClimateSummariesTest {

    @TempDir
    Path folder;

    /** Frost up to 30 April less the last digit of the year, and from 1 October on; 3 mm on every day, 6 mm in July. */
    private WeatherRecord record(int firstYear, int lastYear) {
        StringBuilder text = new StringBuilder("date,tmin_c,tmax_c,rain_mm\n");
        LocalDate date = LocalDate.of(firstYear, 1, 1);
        for (; date.getYear() <= lastYear; date = date.plusDays(1)) {
            LocalDate last = LocalDate.of(date.getYear(), 4, 30).minusDays(date.getYear() % 10);
            boolean frost = !date.isAfter(last) || date.getMonthValue() >= 10;
            text.append(date).append(frost ? ",-2,8," : ",10,22,");
            text.append(date.getMonthValue() == 7 ? 6 : 3).append('\n');
        }
        return WeatherAssembly.assemble(
                read(folder, text.toString()), new Site("Larkmoor field station", 50, 10), AssemblySettings.DEFAULT);
    }

    @Test
    void normalsAndFrostDates() throws IOException {
        ClimateSummary summary = ClimateSummaries.of(record(2001, 2009));
        assertThat(summary.months().get(6).rainMm()).isCloseTo(186.0, within(1e-9));
        assertThat(summary.months().get(6).years()).isEqualTo(9);
        assertThat(summary.months().get(0).tminC()).isCloseTo(-2.0, within(1e-9));
        assertThat(summary.season().rainMm()).isCloseTo(3.0 * 183 + 3.0 * 31, within(1e-9));
        assertThat(summary.season().measuredRainPct()).isEqualTo(100.0);
        // 30 April is day 120, 121 in 2004 and 2008: 119 118 117 117 115 114 113 113 111
        assertThat(summary.lastSpringFrost()).contains(new FrostDate(50, 115.0));
        // 1 October is day 274, 275 in two of nine years
        assertThat(summary.firstAutumnFrost()).contains(new FrostDate(50, 274.0));
        assertThat(summary.frostYears()).isEqualTo(9);
        double last = (119 + 118 + 117 + 117 + 115 + 114 + 113 + 113 + 111) / 9.0;
        assertThat(summary.growingSeasonDays()).isCloseTo(274.0 + 2.0 / 9.0 - last - 1.0, within(1e-9));
        StringBuilder csv = new StringBuilder();
        ClimateTable.write(summary, csv);
        assertThat(csv.toString())
                .contains("rain,07,186.00,mm,9\n")
                .contains("last_spring_frost,50 pct,115.00,day,9\n");
    }

    @Test
    void monthsThatAreNotWholeAreLeftOut() {
        ClimateSummary summary = ClimateSummaries.of(record(2001, 2003), 2000, 2004);
        assertThat(summary.months().get(0).years()).isEqualTo(3);
        assertThat(summary.frostYears()).isEqualTo(3);
    }
}
