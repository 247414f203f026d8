package org.thirstline.charts;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.thirstline.io.climate.ClimateSummaries;
import org.thirstline.io.climate.ClimateSummary;
import org.thirstline.io.weather.WeatherFormat;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Charts of the climate on ordinary and on awkward invented weather. */
final class ClimateSamples {

    private ClimateSamples() {}

    /** Invented weather: a cosine of the year, half its days and its rain by chance. */
    private record Climate(
            double latitudeDeg, double meanC, double swingC, double scatterC, double wetShare, double wetMm) {

        WeatherRecord record(LocalDate start, int days, boolean rainKnown) {
            RandomGenerator random =
                    RandomGeneratorFactory.of("L64X128MixRandom").create(11L);
            Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
            for (WeatherVariable variable : WeatherVariable.values()) {
                columns.put(variable, new double[days]);
            }
            double sign = latitudeDeg < 0 ? -1.0 : 1.0;
            for (int day = 0; day < days; day++) {
                double season =
                        -sign * Math.cos(2.0 * Math.PI * (start.plusDays(day).getDayOfYear() - 20) / 365.25);
                double mean = meanC + swingC * season + scatterC * random.nextGaussian();
                columns.get(WeatherVariable.TMIN)[day] = mean - 5.0;
                columns.get(WeatherVariable.TMAX)[day] = mean + 6.0;
                columns.get(WeatherVariable.RAIN)[day] = rainKnown && random.nextDouble() < wetShare
                        ? -wetMm * Math.log(1.0 - random.nextDouble())
                        : 0.0;
                columns.get(WeatherVariable.SOLAR)[day] = 13.0 + 9.0 * season;
                columns.get(WeatherVariable.WIND)[day] = 2.5;
                columns.get(WeatherVariable.VAPOUR_PRESSURE)[day] = 0.9 + 0.5 * season;
            }
            return new WeatherRecord(
                    WeatherSeries.of(start, columns, Map.of()),
                    new Site("Larkmoor field station", latitudeDeg, 214),
                    List.of(),
                    WeatherFormat.PLAIN,
                    true,
                    rainKnown,
                    List.of(),
                    Map.of(),
                    List.of(),
                    null);
        }
    }

    private static final Climate ORDINARY = new Climate(44.6, 9.0, 13.0, 3.0, 0.3, 8.0);
    private static final Climate SOUTHERN = new Climate(-36.0, 12.0, 7.0, 2.5, 0.25, 6.0);
    private static final Climate WARM = new Climate(27.0, 24.0, 5.0, 1.5, 0.2, 15.0);
    private static final Climate RARE = new Climate(36.0, 15.5, 6.5, 1.7, 0.2, 9.0);
    private static final Climate COLD = new Climate(66.0, -6.0, 16.0, 4.0, 0.3, 3.0);
    private static final Climate WET = new Climate(52.0, 9.0, 6.0, 2.0, 0.7, 9.0);

    private static final String PLACE = "Larkmoor field station";

    private static ClimateView view(Climate climate, String place, String start, int days, boolean rain) {
        ClimateSummary summary = ClimateSummaries.of(climate.record(LocalDate.parse(start), days, rain));
        return new ClimateView(place, summary);
    }

    private static Map<String, ClimateView> views() {
        Map<String, ClimateView> views = new LinkedHashMap<>();
        views.put("ordinary", view(ORDINARY, PLACE, "1991-01-01", 10_958, true));
        views.put("long", view(ORDINARY, Samples.LONG_ZONE, "1901-05-11", 45_000, true));
        views.put("south", view(SOUTHERN, PLACE, "1991-01-01", 10_958, true));
        views.put("warm", view(WARM, PLACE, "2001-01-01", 7305, true));
        views.put("rare", view(RARE, "", "2001-01-01", 7305, true));
        views.put("cold", view(COLD, PLACE, "2001-01-01", 7305, true));
        views.put("wet", view(WET, PLACE, "2001-01-01", 7305, true));
        views.put("one", view(ORDINARY, PLACE, "2001-01-01", 365, true));
        views.put("no-rain", view(ORDINARY, PLACE, "2001-01-01", 3652, false));
        views.put("month", view(ORDINARY, PLACE, "2001-06-01", 30, true));
        views.put("week", view(ORDINARY, PLACE, "2001-06-01", 7, true));
        return views;
    }

    static Map<String, Function<ChartStyle, ChartDocument>> all() {
        Map<String, Function<ChartStyle, ChartDocument>> charts = new LinkedHashMap<>();
        views().forEach((name, view) -> {
            charts.put("climate-normals-" + name, style -> ClimateNormalsChart.of(view, style));
            charts.put("frost-dates-" + name, style -> FrostDatesChart.of(view, style));
            charts.put("growing-season-" + name, style -> GrowingSeasonChart.of(view, style));
            charts.put("precipitation-index-" + name, style -> PrecipitationIndexChart.of(view, style));
        });
        return charts;
    }
}
