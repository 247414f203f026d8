package org.thirstline.model.engine;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Random;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.error.InputException;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.Site;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;

/** Invented grasses, soils and weather for tests, seeded. */
final class TestFields {

    static final Site NORTH = new Site("invented north", 45.0, 150.0);
    static final Site SOUTH = new Site("invented south", -45.0, 150.0);

    private TestFields() {}

    static CropParameters grass() {
        Properties file = new Properties();
        try (InputStream in = TestFields.class.getResourceAsStream("test-grass.properties")) {
            file.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
        for (CropParameter parameter : CropParameter.values()) {
            values.put(parameter, Double.valueOf(file.getProperty(parameter.key())));
        }
        return CropParameters.of("test grass", values);
    }

    /** Every parameter moved by up to 40 %, where the limits and the order of the parameters allow it. */
    static CropParameters randomGrass(Random random) {
        CropParameters crop = grass();
        for (CropParameter parameter : CropParameter.values()) {
            double value = crop.get(parameter) * (0.6 + 0.8 * random.nextDouble());
            try {
                crop = crop.with(parameter, Math.max(parameter.lowest(), Math.min(parameter.highest(), value)));
            } catch (InputException outOfOrder) {
                // The parameter keeps its value.
            }
        }
        return crop;
    }

    static SoilProfile loam(double depthM) {
        return new SoilProfile(
                List.of(new SoilLayer(depthM, 0.14, 0.30, 0.45, 0.7)),
                9.0,
                60.0,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
    }

    static SoilProfile randomSoil(Random random) {
        List<SoilLayer> layers = new ArrayList<>();
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            double wilting = 0.03 + 0.2 * random.nextDouble();
            double capacity = wilting + 0.04 + 0.2 * random.nextDouble();
            double saturation = capacity + 0.03 + 0.2 * random.nextDouble();
            layers.add(new SoilLayer(
                    0.15 + 0.6 * random.nextDouble(), wilting, capacity, saturation, random.nextDouble()));
        }
        double limit = random.nextBoolean() ? Double.POSITIVE_INFINITY : 5.0 * random.nextDouble();
        double waterTable = random.nextInt(4) == 0 ? 0.3 + 1.5 * random.nextDouble() : Double.POSITIVE_INFINITY;
        return new SoilProfile(layers, 2.0, 40.0 + 55.0 * random.nextDouble(), limit, waterTable);
    }

    static Irrigation randomIrrigation(Random random, LocalDate start, int days) {
        return switch (random.nextInt(3)) {
            case 0 -> new Irrigation.OnDepletion(0.3 + 0.6 * random.nextDouble(), 5.0 + 40.0 * random.nextDouble());
            case 1 -> new Irrigation.OnDates(Map.of(start.plusDays(random.nextInt(days)), 30.0));
            default -> new Irrigation.None();
        };
    }

    static FieldConditions field(CropParameters crop, SoilProfile soil, LocalDate planted) {
        return new FieldConditions(
                crop,
                new Stand(planted, 1.7),
                soil,
                new HarvestRule.OnDate(MonthDay.of(3, 1)),
                0.1,
                0.85,
                new Irrigation.None(),
                GrowingSeason.defaultFor(NORTH),
                400.0);
    }

    static FieldConditions withIrrigation(FieldConditions field, Irrigation irrigation) {
        return field.withIrrigation(irrigation);
    }

    static FieldConditions withHarvest(FieldConditions field, HarvestRule harvest, GrowingSeason season) {
        return new FieldConditions(
                field.crop(),
                field.stand(),
                field.soil(),
                harvest,
                field.stubbleM(),
                field.pickUpShare(),
                field.irrigation(),
                season,
                field.co2Ppm());
    }

    /** Weather with seasons, wet and dry spells and the odd hard frost; the warm half lies around the middle of the growth year. */
    static Map<WeatherVariable, double[]> randomColumns(Site site, LocalDate start, int days, Random random) {
        Map<WeatherVariable, double[]> columns = new EnumMap<>(WeatherVariable.class);
        for (WeatherVariable variable : WeatherVariable.values()) {
            columns.put(variable, new double[days]);
        }
        double spell = 0.0;
        for (int day = 0; day < days; day++) {
            int dayOfYear = start.plusDays(day).getDayOfYear() + (site.isSouthern() ? 182 : 0);
            double season = -Math.cos(2.0 * Math.PI * (dayOfYear - 15) / 365.25);
            spell = 0.8 * spell + random.nextGaussian();
            double mean = 10.0 + 13.0 * season + 2.0 * spell;
            double half = 2.0 + 6.0 * random.nextDouble();
            boolean wet = random.nextDouble() < (spell > 0.0 ? 0.15 : 0.45);
            columns.get(WeatherVariable.TMIN)[day] = mean - half;
            columns.get(WeatherVariable.TMAX)[day] = mean + half;
            columns.get(WeatherVariable.RAIN)[day] = wet ? -8.0 * Math.log(1.0 - random.nextDouble()) : 0.0;
            columns.get(WeatherVariable.SOLAR)[day] = (13.0 + 9.0 * season) * (wet ? 0.5 : 1.0) + 0.5;
            columns.get(WeatherVariable.WIND)[day] = 0.5 + 4.0 * random.nextDouble();
            columns.get(WeatherVariable.VAPOUR_PRESSURE)[day] =
                    0.6108 * Math.exp(17.27 * (mean - half) / (mean - half + 237.3));
        }
        return columns;
    }

    static WeatherSeries randomWeather(Site site, LocalDate start, int days, Random random) {
        return WeatherSeries.measured(start, randomColumns(site, start, days, random));
    }
}
