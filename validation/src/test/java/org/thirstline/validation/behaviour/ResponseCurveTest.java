package org.thirstline.validation.behaviour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.evapotranspiration.Atmosphere;
import org.thirstline.model.evapotranspiration.NetRadiation;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.WeatherVariable;
import org.thirstline.validation.behaviour.ResponseCurves.Curve;

/** What a crop physiologist would ask of the curves: sign, monotony, limits; and that no season uses more energy or less water than it can. */
class ResponseCurveTest {

    /** Latent heat of vaporisation λ [MJ/kg], FAO-56. */
    private static final double LATENT_HEAT = 2.45;

    private static Map<String, Curve> curves = Map.of();

    @BeforeAll
    static void calculate() {
        curves = ResponseCurves.all().stream().collect(Collectors.toMap(Curve::slug, Function.identity()));
    }

    private static double[] yields(String slug) {
        Curve curve = curves.get(slug);
        assertThat(curve).as(slug).isNotNull();
        return curve.harvested();
    }

    private static void rises(double[] yields) {
        for (int i = 1; i < yields.length; i++) {
            assertThat(yields[i]).as("%s", Arrays.toString(yields)).isGreaterThanOrEqualTo(yields[i - 1] - 1.0e-9);
        }
    }

    @Test
    void moreRainGivesMoreUntilThereIsEnough() {
        double[] yields = yields("rain");
        rises(Arrays.copyOf(yields, 6));
        double first = yields[3] - yields[2];
        double last = Math.abs(yields[8] - yields[7]);
        assertThat(yields[0]).as("no rain").isLessThan(0.15 * yields[4]);
        assertThat(last).as("the curve levels off").isLessThan(0.25 * first);
    }

    @Test
    void moreAvailableWaterGivesMoreWithLessAndLessGain() {
        double[] yields = yields("available-water");
        rises(yields);
        assertThat(yields[8] - yields[6]).isLessThan(yields[2] - yields[0]);
    }

    /** In deep shade a canopy never closes and the reserve runs out; from there on yield follows light, never above RUE x PAR. */
    @Test
    void moreLightGivesMoreInProportionOnceTheCanopyCloses() {
        Curve curve = curves.get("radiation");
        double[] yields = yields("radiation");
        rises(yields);
        double lastStep = yields[5] - yields[4];
        assertThat(yields[4] - yields[3]).as("steps of equal light").isCloseTo(lastStep, within(0.1 * lastStep));
        DailyDrivers drivers = ResponseCurves.weather();
        double par = 0.0;
        for (int day = 0; day < drivers.days(); day++) {
            par += ResponseCurves.field().crop().get(CropParameter.PAR_FRACTION) * drivers.solar(day) / 30.0;
        }
        double efficiency = ResponseCurves.field().crop().get(CropParameter.RADIATION_USE_EFFICIENCY);
        for (int i = 0; i < yields.length; i++) {
            assertThat(100.0 * yields[i]).isLessThan(efficiency * par * curve.x()[i]);
        }
    }

    @Test
    void temperatureHasAnOptimumAndTwoLimits() {
        double[] yields = yields("temperature");
        double best = Arrays.stream(yields).max().orElseThrow();
        assertThat(yields[0]).as("14 °C colder").isLessThan(0.1 * best);
        assertThat(yields[yields.length - 1]).as("18 °C warmer").isLessThan(0.9 * best);
        int top = 0;
        while (yields[top] < best) {
            top++;
        }
        rises(Arrays.copyOf(yields, top + 1));
    }

    /** Growth rises with the factor, and the leaf that growth pays for rises with it: more than nothing, less than the factor's square. */
    @Test
    void carbonDioxideHelpsWhenAsked() {
        double[] yields = yields("carbon-dioxide");
        rises(yields);
        double factor = (1.0 + 0.06 * 3.0) / (1.0 - 0.06);
        assertThat(yields[4] / yields[0]).isBetween(Math.sqrt(factor), factor * factor);
    }

    @Test
    void denserYoungStandsYieldMoreUpToASaturation() {
        double[] yields = yields("density");
        rises(yields);
        assertThat(yields[5] - yields[4]).isLessThan(yields[2] - yields[1]);
    }

    @Test
    void youngStandsBuildUpAndStayWithoutADeclineSet() {
        double[] yields = yields("age");
        assertThat(yields[0]).isLessThan(0.25 * yields[3]);
        assertThat(yields[1]).isBetween(0.25 * yields[3], 0.9 * yields[3]);
        assertThat(yields[7]).isGreaterThan(0.7 * yields[3]);
    }

    @Test
    void aLateCutBringsLess() {
        double[] yields = yields("harvest");
        for (int i = 2; i < yields.length; i++) {
            assertThat(yields[i]).isLessThan(yields[i - 1]);
        }
        assertThat(yields[6] / yields[1]).isBetween(0.6, 0.9);
    }

    /** Evapotranspiration cannot use more than net radiation and, in dry wind, some heat of the air (Pereira and Allen: up to a quarter). */
    @Test
    void noSeasonEvaporatesMoreThanItsEnergy() {
        DailyDrivers drivers = ResponseCurves.rain(2.0);
        for (SeasonRecord season : ResponseCurves.run(drivers, ResponseCurves.field())) {
            double used = season.value(SeasonVariable.TRANSPIRATION)
                    + season.value(SeasonVariable.SOIL_EVAPORATION)
                    + season.value(SeasonVariable.INTERCEPTION);
            if (Double.isFinite(used)) {
                assertThat(used).isLessThan(1.25 * energyMm(drivers, season.growthYear()));
                assertThat(used).isLessThan(1.25 * season.value(SeasonVariable.SEASON_ET0));
            }
        }
    }

    private static double energyMm(DailyDrivers drivers, int year) {
        double sum = 0.0;
        for (int day = 0; day < drivers.days(); day++) {
            var date = drivers.weather().date(day);
            if (date.getYear() == year && date.getMonthValue() >= 3 && date.getMonthValue() <= 11) {
                double clearSky = NetRadiation.clearSky(
                        drivers.extraterrestrial(day), drivers.site().elevationM());
                double longwave = NetRadiation.netLongwave(
                        drivers.tmin(day),
                        drivers.tmax(day),
                        Math.min(
                                drivers.weather().value(WeatherVariable.VAPOUR_PRESSURE, day),
                                Atmosphere.meanSaturationVapourPressure(drivers.tmin(day), drivers.tmax(day))),
                        drivers.solar(day),
                        clearSky);
                sum += Math.max(0.0, NetRadiation.netShortwave(drivers.solar(day)) - longwave) / LATENT_HEAT;
            }
        }
        return sum;
    }

    /** Nor more water than rain and soil can give. */
    @Test
    void noSeasonUsesMoreWaterThanThereIs() {
        double stored = ResponseCurves.field().soil().availableWaterMm();
        for (SeasonRecord season : ResponseCurves.run(ResponseCurves.rain(0.6), ResponseCurves.field())) {
            double used = season.value(SeasonVariable.TRANSPIRATION) + season.value(SeasonVariable.SOIL_EVAPORATION);
            if (Double.isFinite(used)) {
                assertThat(used).isLessThan(season.value(SeasonVariable.SEASON_RAIN) + stored + 100.0);
            }
        }
    }

    /** 3 to 10 g of above-ground dry matter for a kilogram of water: the published 4.2 to 9.5 and a little more on either side. */
    @Test
    void waterUseEfficiencyOfFullGrownStandsIsOfThePublishedOrder() {
        List<SeasonRecord> grown = ResponseCurves.run(ResponseCurves.weather(), ResponseCurves.field()).stream()
                .filter(season -> season.isComplete() && season.standAge() >= 3)
                .toList();
        double mean = grown.stream()
                .mapToDouble(season -> 100.0
                        * season.value(SeasonVariable.PEAK_BIOMASS)
                        / (season.value(SeasonVariable.TRANSPIRATION)
                                + season.value(SeasonVariable.SOIL_EVAPORATION)
                                + season.value(SeasonVariable.INTERCEPTION)))
                .average()
                .orElse(0.0);
        assertThat(mean).isBetween(3.0, 10.0);
    }

    @Test
    void theSameInputGivesTheSameCurve() {
        assertThat(ResponseCurves.meanOf(ResponseCurves.run(ResponseCurves.weather(), ResponseCurves.field()), 3, 99))
                .isCloseTo(yields("rain")[4], within(1.0e-12));
    }
}
