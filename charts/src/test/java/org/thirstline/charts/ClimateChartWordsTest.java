package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;

/** Titles of climate charts say what the numbers say, and no more than the years can tell. */
class ClimateChartWordsTest {

    private static final ChartStyle STYLE = ChartStyle.of(ChartTheme.LIGHT, ChartSize.SLIDE);

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "climate-normals-wet         | Rain covers the evaporative demand in every month",
                "climate-normals-warm        | Rain falls short of the evaporative demand in every month, by 959 mm a year",
                "climate-normals-no-rain     | July is the warmest month: 16.8 °C to 27.8 °C",
                "climate-normals-week        | No calendar month of the record is known well enough for a normal",
                "frost-dates-warm            | No frost in 20 years",
                "frost-dates-rare            | Frost in spring in 6 and in autumn in 0 of 20 years",
                "frost-dates-one             | Last frost on 30 Apr, first frost on 21 Oct in 1 year",
                "frost-dates-south           | Frost after 8 Oct in one year of ten, and by 25 Apr in one of ten",
                "growing-season-south        | 232 days without frost in an average year, 192 in 1999/00 and 261 in 2001/02",
                "growing-season-month        | No whole year to tell the length of the season from",
                "precipitation-index-no-rain | Too few years of rain for a precipitation index",
                "precipitation-index-one     | Too few years of rain for a precipitation index",
            })
    void titles(String chart, String title) {
        assertThat(ClimateSamples.all().get(chart).apply(STYLE).words().title()).isEqualTo(title);
    }

    @Test
    void unitsAreTheReaders() {
        ChartDocument chart = ClimateSamples.all().get("climate-normals-cold").apply(STYLE.withUnits(UnitSystem.US));
        assertThat(chart.words().title())
                .isEqualTo("From May to September rain falls 5.2 in short of the evaporative demand");
        assertThat(chart.words().description()).contains("°F");
        assertThat(chart.data().columns()).contains("tmin_c", "rain_mm");
    }

    @Test
    void fewYearsAreSaid() {
        ChartDocument chart =
                ClimateSamples.all().get("precipitation-index-wet").apply(STYLE);
        assertThat(chart.caption()).contains("WMO-No. 1090 asks for 30");
    }
}
