package org.thirstline.validation.opinion;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.opinion.DayLoopAgreement;
import org.thirstline.model.opinion.PlainDayLoop;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.validation.scenario.InventedWeather;

/** The engine against {@link PlainDayLoop}: thirty invented years on random soils, both grasses as they come and with every parameter moved. */
class PlainDayLoopTest {

    /** A field on which the comparison is known to have yields to compare. */
    private static final long WELL_GROWN = 1;

    /** Seeds up to this one take the crop files as they are. */
    private static final long AS_THEY_COME = 3;

    private static CropParameters crop(RandomGenerator random, boolean moved) {
        List<String> names = CropFiles.names();
        CropParameters crop =
                CropFiles.bundled(names.get(random.nextInt(names.size()))).parameters();
        for (CropParameter parameter : moved ? CropParameter.values() : new CropParameter[0]) {
            double value = crop.get(parameter) * (0.7 + 0.6 * random.nextDouble());
            try {
                crop = crop.with(parameter, value);
            } catch (InputException outsideTheLimits) {
                // The parameter keeps its value.
            }
        }
        return crop;
    }

    private static SoilProfile soil(RandomGenerator random) {
        List<SoilLayer> layers = new ArrayList<>();
        int count = random.nextInt(1, 5);
        for (int i = 0; i < count; i++) {
            double wilting = 0.03 + 0.2 * random.nextDouble();
            double capacity = wilting + 0.05 + 0.15 * random.nextDouble();
            double saturation = capacity + 0.03 + 0.2 * random.nextDouble();
            layers.add(new SoilLayer(
                    0.2 + 0.6 * random.nextDouble(), wilting, capacity, saturation, 0.1 + 0.9 * random.nextDouble()));
        }
        double limit = random.nextBoolean() ? Double.POSITIVE_INFINITY : 3.0 * random.nextDouble();
        double waterTable = random.nextInt(3) == 0 ? 0.5 + random.nextDouble() : Double.POSITIVE_INFINITY;
        return new SoilProfile(layers, 3.0, 45.0 + 50.0 * random.nextDouble(), limit, waterTable);
    }

    private static FieldConditions field(RandomGenerator random, boolean moved) {
        LocalDate planted = InventedWeather.start().plusDays(random.nextInt(-900, 900));
        MonthDay cut = random.nextBoolean() ? MonthDay.of(3, 1) : MonthDay.of(11, 20);
        return new FieldConditions(
                crop(random, moved),
                new Stand(planted, 1.0 + 2.0 * random.nextDouble()),
                soil(random),
                new HarvestRule.OnDate(cut),
                0.3 * random.nextDouble(),
                0.5 + 0.5 * random.nextDouble(),
                new Irrigation.None(),
                GrowingSeason.defaultFor(InventedWeather.SITE),
                350.0 + 200.0 * random.nextDouble());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void everyDayOfTheEngineIsThatOfThePlainLoop(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        DailyDrivers drivers = InventedWeather.drivers(seed);
        FieldConditions field = field(random, seed > AS_THEY_COME);

        StandResult engine = PairedRuns.simulate(drivers, field, 400);
        PlainDayLoop plain = PlainDayLoop.run(drivers, field);

        DayLoopAgreement.check(plain, engine);
        if (seed == WELL_GROWN) {
            assertThat(engine.completeSeasons()).hasSizeGreaterThan(20);
            assertThat(engine.completeSeasons().get(5).value(SeasonVariable.HARVESTED))
                    .isGreaterThan(1.0);
        }
    }
}
