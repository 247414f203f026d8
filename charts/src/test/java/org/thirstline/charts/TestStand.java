package org.thirstline.charts;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.model.climate.RainfallDeficit;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.climate.Terciles;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** An invented stand in invented weather, for charts to draw. */
final class TestStand {

    static final Site SITE = new Site("Larkmoor field station (invented)", 43.0, 150.0);
    private static final int ALLOWED_GAPS = 10;

    final StandResult result;
    final SoilProfile soil;
    final DailyDrivers drivers;
    final RainfallDeficit deficit;

    private TestStand(Site site, int firstYear, int years, long seed) {
        boolean south = site.latitudeDeg() < 0.0;
        soil = new SoilProfile(
                List.of(new SoilLayer(0.3, 0.12, 0.27, 0.45, 0.5), new SoilLayer(1.5, 0.13, 0.27, 0.43, 0.4)),
                8.0,
                70.0,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
        drivers = DailyDrivers.of(site, weather(firstYear, years, seed, south));
        GrowingSeason season = GrowingSeason.defaultFor(site);
        FieldConditions field = new FieldConditions(
                CropFiles.bundled("giant miscanthus").parameters(),
                Stand.spaced(LocalDate.of(firstYear, south ? 10 : 4, 10), 0.75, 0.70),
                soil,
                new HarvestRule.InWindow(MonthDay.of(south ? 7 : 1, 15), MonthDay.of(south ? 10 : 4, 1), 20.0, 1.05),
                0.10,
                0.9,
                new Irrigation.None(),
                season,
                400.0);
        result = PairedRuns.simulate(drivers, field, ALLOWED_GAPS);
        deficit = RainfallDeficit.ofWholeRecord(drivers.weather(), site, season);
    }

    static TestStand of(int firstYear, int years) {
        return new TestStand(SITE, firstYear, years, 42L);
    }

    /** The same on the other half of the globe: summer in January. */
    static TestStand southern(int firstYear, int years) {
        return new TestStand(new Site("Larkmoor south (invented)", -38.0, 150.0), firstYear, years, 42L);
    }

    Map<Integer, SeasonClass> classes() {
        double[] rain = result.seasons().stream()
                .mapToDouble(season -> season.value(SeasonVariable.SEASON_RAIN))
                .filter(Double::isFinite)
                .toArray();
        Map<Integer, SeasonClass> classes = new HashMap<>();
        if (rain.length < Terciles.MINIMUM_SEASONS) {
            return classes;
        }
        Terciles terciles = Terciles.of(rain);
        for (SeasonRecord season : result.seasons()) {
            double mm = season.value(SeasonVariable.SEASON_RAIN);
            if (Double.isFinite(mm)) {
                classes.put(season.growthYear(), terciles.classOf(mm));
            }
        }
        return classes;
    }

    private static WeatherSeries weather(int firstYear, int years, long seed, boolean south) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        LocalDate start = LocalDate.of(firstYear, 1, 1);
        int days = (int) (LocalDate.of(firstYear + years, 1, 1).toEpochDay() - start.toEpochDay());
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            columns.put(variable, new double[days]);
        }
        double wetness = 1.0;
        boolean wet = false;
        double anomaly = 0.0;
        for (int day = 0; day < days; day++) {
            LocalDate date = start.plusDays(day);
            if (date.getDayOfYear() == 1) {
                wetness = Math.max(0.3, Math.min(1.7, 1.0 + 0.4 * random.nextGaussian()));
            }
            double season = Math.cos(2.0 * Math.PI * (date.getDayOfYear() - (south ? 17 : 200)) / 365.25);
            anomaly = 0.75 * anomaly + 2.2 * random.nextGaussian();
            wet = random.nextDouble() < (wet ? 0.5 : 0.2) * Math.sqrt(wetness);
            double mean = 10.5 + 13.5 * season + anomaly;
            columns.get(WeatherVariable.TMIN)[day] = mean - (wet ? 4.0 : 6.0);
            columns.get(WeatherVariable.TMAX)[day] = mean + (wet ? 4.0 : 6.5);
            columns.get(WeatherVariable.RAIN)[day] = wet ? 9.0 * wetness * random.nextExponential() : 0.0;
            columns.get(WeatherVariable.SOLAR)[day] =
                    (13.5 + 9.5 * season) * (wet ? 0.55 : 1.0) * (0.85 + 0.15 * random.nextDouble());
            columns.get(WeatherVariable.WIND)[day] = 1.5 + random.nextDouble();
            columns.get(WeatherVariable.VAPOUR_PRESSURE)[day] =
                    0.6108 * Math.exp(17.27 * (mean - 6.0) / (mean - 6.0 + 237.3));
        }
        return WeatherSeries.measured(start, columns);
    }
}
