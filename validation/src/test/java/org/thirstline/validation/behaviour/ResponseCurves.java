package org.thirstline.validation.behaviour;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.crop.Stand;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowingSeason;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.Irrigation;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherSeries;
import org.thirstline.model.weather.WeatherVariable;
import org.thirstline.validation.scenario.InventedWeather;

/** Yield of giant miscanthus on one input at a time, the others as in thirty invented years on a loam. */
public final class ResponseCurves {

    private static final long SEED = 77L;
    private static final CropParameters CROP =
            CropFiles.bundled("giant miscanthus").parameters();
    private static final FieldConditions FIELD = field(CROP, 1.7, soil(1.5, 150.0), MonthDay.of(3, 1));

    private ResponseCurves() {}

    /**
     * One curve.
     *
     * @param slug short name
     * @param input what is varied, with its unit
     * @param x its values
     * @param harvested mean harvest of full-grown years [Mg/ha]
     */
    public record Curve(String slug, String input, double[] x, double[] harvested) {}

    /** Returns every curve, calculated once. */
    public static List<Curve> all() {
        return Once.CURVES;
    }

    /** Holds the curves; made when first asked for. */
    private static final class Once {
        private static final List<Curve> CURVES = calculate();
    }

    private static List<Curve> calculate() {
        List<Curve> curves = new ArrayList<>();
        curves.add(curve("rain", "rain, times as it was", steps(0.0, 2.0, 9), x -> harvest(rain(x), FIELD)));
        curves.add(curve(
                "available-water",
                "available water of 1 m [mm]",
                steps(40.0, 240.0, 9),
                x -> harvest(weather(), dry(x))));
        curves.add(curve(
                "radiation",
                "radiation, times as it was",
                steps(0.2, 1.2, 6),
                x -> wateredYield(changed(WeatherVariable.SOLAR, v -> v * x))));
        curves.add(curve("temperature", "warmer by [°C]", steps(-14.0, 18.0, 9), x -> wateredYield(warmer(x))));
        curves.add(curve(
                "carbon-dioxide",
                "CO₂ [ppm], response set to 6 % per 100 ppm",
                steps(300.0, 700.0, 5),
                x -> harvest(weather(), air(x))));
        curves.add(curve(
                "density",
                "plants set per m²",
                new double[] {0.25, 0.5, 1.0, 1.7, 3.0, 6.0},
                x -> meanOf(run(weather(), field(CROP, x, soil(1.5, 150.0), MonthDay.of(3, 1))), 2, 4)));
        curves.add(
                curve("age", "age of the stand [years]", steps(1.0, 8.0, 8), x -> wateredAtAge((int) Math.round(x))));
        curves.add(curve(
                "harvest",
                "cut, months after 1 October",
                steps(0.0, 6.0, 7),
                x -> harvest(weather(), cutAfter((int) x))));
        return curves;
    }

    private static Curve curve(String slug, String input, double[] x, DoubleUnaryOperator harvest) {
        return new Curve(slug, input, x, java.util.Arrays.stream(x).map(harvest).toArray());
    }

    private static double[] steps(double from, double to, int count) {
        double[] steps = new double[count];
        for (int i = 0; i < count; i++) {
            steps[i] = from + (to - from) * i / (count - 1);
        }
        return steps;
    }

    static SoilProfile soil(double depthM, double availableMmPerM) {
        SoilLayer layer =
                new SoilLayer(depthM, 0.12, 0.12 + availableMmPerM / 1000.0, 0.30 + availableMmPerM / 1000.0, 0.7);
        return new SoilProfile(List.of(layer), 5.0, 58.0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private static FieldConditions field(CropParameters crop, double plants, SoilProfile soil, MonthDay cut) {
        return new FieldConditions(
                crop,
                new Stand(LocalDate.of(InventedWeather.start().getYear(), 4, 20), plants),
                soil,
                new HarvestRule.OnDate(cut),
                0.1,
                0.85,
                new Irrigation.None(),
                new GrowingSeason(MonthDay.of(3, 1), MonthDay.of(11, 30)),
                400.0);
    }

    private static FieldConditions dry(double availableMm) {
        return field(CROP, 1.7, soil(1.0, availableMm), MonthDay.of(3, 1));
    }

    private static FieldConditions air(double co2Ppm) {
        CropParameters responding = CROP.with(CropParameter.CO2_RESPONSE, 0.06);
        FieldConditions plain = field(responding, 1.7, soil(1.5, 150.0), MonthDay.of(3, 1));
        return new FieldConditions(
                plain.crop(),
                plain.stand(),
                plain.soil(),
                plain.harvest(),
                plain.stubbleM(),
                plain.pickUpShare(),
                plain.irrigation(),
                plain.season(),
                co2Ppm);
    }

    private static FieldConditions cutAfter(int months) {
        LocalDate date = LocalDate.of(2001, 10, 1).plusMonths(months);
        return field(CROP, 1.7, soil(1.5, 150.0), MonthDay.from(date));
    }

    static DailyDrivers weather() {
        return InventedWeather.drivers(SEED);
    }

    static DailyDrivers rain(double factor) {
        return changed(WeatherVariable.RAIN, v -> v * factor);
    }

    static DailyDrivers changed(WeatherVariable variable, DoubleUnaryOperator change) {
        Map<WeatherVariable, double[]> columns = InventedWeather.columns(SEED);
        columns.replaceAll((key, column) ->
                key == variable ? java.util.Arrays.stream(column).map(change).toArray() : column);
        return drivers(columns);
    }

    static DailyDrivers warmer(double degrees) {
        Map<WeatherVariable, double[]> columns = InventedWeather.columns(SEED);
        for (WeatherVariable variable : List.of(WeatherVariable.TMIN, WeatherVariable.TMAX)) {
            columns.computeIfPresent(variable, (key, column) -> java.util.Arrays.stream(column)
                    .map(v -> v + degrees)
                    .toArray());
        }
        return drivers(columns);
    }

    private static DailyDrivers drivers(Map<WeatherVariable, double[]> columns) {
        return DailyDrivers.of(InventedWeather.SITE, WeatherSeries.measured(InventedWeather.start(), columns));
    }

    static List<SeasonRecord> run(DailyDrivers drivers, FieldConditions field) {
        return PairedRuns.simulateActual(drivers, field, 400);
    }

    static FieldConditions field() {
        return FIELD;
    }

    /** Mean harvest from the third year on; a year without a canopy harvests nothing. */
    private static double harvest(DailyDrivers drivers, FieldConditions field) {
        return meanOf(run(drivers, field), 3, 99);
    }

    static double meanOf(List<SeasonRecord> seasons, int fromAge, int toAge) {
        return seasons.stream()
                .filter(season -> season.standAge() >= fromAge && season.standAge() <= toAge)
                .filter(season -> season.growthYear() < InventedWeather.start().getYear() + 29)
                .mapToDouble(season -> season.isComplete() ? season.value(SeasonVariable.HARVESTED) : 0.0)
                .average()
                .orElse(0.0);
    }

    private static FieldConditions watered() {
        return FIELD.withIrrigation(new Irrigation.OnDepletion(0.3, 20.0));
    }

    private static double wateredYield(DailyDrivers drivers) {
        return meanOf(run(drivers, watered()), 3, 99);
    }

    private static double wateredAtAge(int age) {
        return meanOf(run(weather(), watered()), age, age);
    }
}
