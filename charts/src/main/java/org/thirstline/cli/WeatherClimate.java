package org.thirstline.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.thirstline.charts.ChartStyle;
import org.thirstline.charts.ClimateNormalsChart;
import org.thirstline.charts.ClimateView;
import org.thirstline.charts.FrostDatesChart;
import org.thirstline.charts.GrowingSeasonChart;
import org.thirstline.charts.PrecipitationIndexChart;
import org.thirstline.charts.UnitSystem;
import org.thirstline.charts.theme.ChartSize;
import org.thirstline.charts.theme.ChartTheme;
import org.thirstline.io.climate.ClimateNormal;
import org.thirstline.io.climate.ClimateSummaries;
import org.thirstline.io.climate.ClimateSummary;
import org.thirstline.io.climate.ClimateVariable;
import org.thirstline.io.climate.YearSeason;
import org.thirstline.io.text.YearSpan;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.climate.StandardizedPrecipitation;

/**
 * The climate of a record and the charts it can carry. Immutable and thread-safe.
 *
 * @param summary the climate
 * @param slide how charts look
 * @param recipes the charts
 */
record WeatherClimate(ClimateSummary summary, ChartStyle slide, List<ZoneCharts.Recipe> recipes) {

    /** Copies the list. */
    WeatherClimate {
        recipes = List.copyOf(recipes);
    }

    static WeatherClimate of(WeatherRecord record, @Nullable YearSpan normal, UnitSystem units) {
        ClimateSummary summary = normal == null
                ? ClimateSummaries.of(record)
                : ClimateSummaries.of(record, normal.first(), normal.last());
        String source = "Weather: " + record.format().description() + ". Gaps and estimates are in weather-report.csv.";
        ChartStyle slide = new ChartStyle(ChartTheme.LIGHT, ChartSize.SLIDE, units, source, record.invented());
        ClimateView view = new ClimateView(record.site().name(), summary);
        return new WeatherClimate(summary, slide, recipes(view));
    }

    private static List<ZoneCharts.Recipe> recipes(ClimateView view) {
        ClimateSummary summary = view.summary();
        List<ZoneCharts.Recipe> recipes = new ArrayList<>();
        if (summary.months().stream().anyMatch(WeatherClimate::isKnown)) {
            recipes.add(new ZoneCharts.Recipe("climate-normals", style -> ClimateNormalsChart.of(view, style)));
        }
        if (summary.years().stream().anyMatch(WeatherClimate::hasFrost)) {
            recipes.add(new ZoneCharts.Recipe("frost-dates", style -> FrostDatesChart.of(view, style)));
        }
        if (!summary.years().isEmpty()) {
            recipes.add(new ZoneCharts.Recipe("growing-season", style -> GrowingSeasonChart.of(view, style)));
        }
        if (summary.indices().stream().anyMatch(WeatherClimate::isKnown)) {
            recipes.add(new ZoneCharts.Recipe("precipitation-index", style -> PrecipitationIndexChart.of(view, style)));
        }
        return recipes;
    }

    private static boolean isKnown(StandardizedPrecipitation index) {
        return Arrays.stream(index.values()).anyMatch(value -> !Double.isNaN(value));
    }

    private static boolean hasFrost(YearSeason year) {
        return !Double.isNaN(year.lastFrostDay()) || !Double.isNaN(year.firstFrostDay());
    }

    private static boolean isKnown(ClimateNormal month) {
        return month.years(ClimateVariable.TMAX) > 0 && month.years(ClimateVariable.TMIN) > 0;
    }

    /** Returns what the charts say, one sentence each. */
    List<String> findings() {
        return recipes.stream()
                .map(recipe -> recipe.recipe().apply(slide).words().title() + ".")
                .toList();
    }
}
