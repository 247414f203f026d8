package org.thirstline.validation.benchmark;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.evapotranspiration.ReferenceEvapotranspiration;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Time to derive the drivers of thirty years, reference evapotranspiration above all, per day of the series. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(2)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DriversBenchmark {

    private static final int DAYS = 10_957;

    private final Site site = new Site("Larkmoor field station (invented)", 52.0, 20.0);
    private WeatherSeries weather;

    /** Invents thirty years with a season and seeded noise. */
    @Setup
    public void inventWeather() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(1991L);
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            columns.put(variable, new double[DAYS]);
        }
        for (int day = 0; day < DAYS; day++) {
            double season = Math.sin(2.0 * Math.PI * (day - 105.0) / 365.25);
            double tmin = 5.0 + 7.0 * season + 3.0 * random.nextGaussian();
            columns.get(WeatherVariable.TMIN)[day] = tmin;
            columns.get(WeatherVariable.TMAX)[day] = tmin + 2.0 + 12.0 * random.nextDouble();
            columns.get(WeatherVariable.RAIN)[day] = Math.max(0.0, 6.0 * random.nextExponential() - 6.0);
            columns.get(WeatherVariable.SOLAR)[day] = (11.0 + 8.0 * season) * (0.4 + 0.6 * random.nextDouble());
            columns.get(WeatherVariable.WIND)[day] = 1.0 + 3.0 * random.nextDouble();
            columns.get(WeatherVariable.VAPOUR_PRESSURE)[day] = 0.6108 * Math.exp(17.27 * tmin / (tmin + 237.3));
        }
        weather = WeatherSeries.measured(LocalDate.of(1991, 1, 1), columns);
    }

    /** Derives the drivers. */
    @Benchmark
    @OperationsPerInvocation(DAYS)
    public DailyDrivers drivers() {
        return DailyDrivers.of(site, weather);
    }

    /** Reference evapotranspiration alone. */
    @Benchmark
    @OperationsPerInvocation(DAYS)
    public double referenceEvapotranspiration() {
        double gamma = Atmosphere.psychrometricConstant(Atmosphere.pressure(site.elevationM()));
        double sum = 0.0;
        for (int day = 0; day < DAYS; day++) {
            double solar = weather.value(WeatherVariable.SOLAR, day);
            sum += ReferenceEvapotranspiration.penmanMonteith(
                    weather.value(WeatherVariable.TMIN, day),
                    weather.value(WeatherVariable.TMAX, day),
                    solar,
                    1.3 * solar,
                    weather.value(WeatherVariable.WIND, day),
                    weather.value(WeatherVariable.VAPOUR_PRESSURE, day),
                    gamma);
        }
        return sum;
    }
}
