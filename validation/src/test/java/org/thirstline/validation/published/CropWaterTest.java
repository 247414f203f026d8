package org.thirstline.validation.published;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;
import org.thirstline.model.evapotranspiration.CropCoefficient;
import org.thirstline.model.soil.RootUptake;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SurfaceEvaporation;
import org.thirstline.validation.published.EvaporationTable.Day;
import org.thirstline.validation.published.EvaporationTable.RootDay;

/** Dual crop coefficient and root-zone balance against the worked examples of FAO-56 (Allen et al. 1998), chapters 6 to 10. */
@ExtendWith(PublishedTally.class)
class CropWaterTest {

    static final Map<String, ToDoubleFunction<Inputs>> COEFFICIENTS = Map.ofEntries(
            Map.entry(
                    "between",
                    in -> CropCoefficient.between(
                            in.get("previous"), in.get("next"), in.get("day_in_stage"), in.get("stage_days"))),
            Map.entry(
                    "in_climate",
                    in -> CropCoefficient.inClimate(in.get("table_value"), climate(in), in.get("height_m"))),
            Map.entry(
                    "full_cover_in_climate",
                    in -> CropCoefficient.inClimate(
                            CropCoefficient.fullCoverByHeight(in.get("height_m")), climate(in), in.get("height_m"))),
            Map.entry("maximum", CropWaterTest::maximum),
            Map.entry("cover", CropWaterTest::cover),
            Map.entry("exposed_wetted", CropWaterTest::exposedWetted),
            Map.entry("evaporation_coefficient", CropWaterTest::evaporationCoefficient),
            Map.entry("crop_coefficient", in -> in.get("basal") + evaporationCoefficient(in)),
            Map.entry(
                    "total_evaporable",
                    in -> SurfaceEvaporation.totalEvaporable(
                            in.get("field_capacity"), in.get("wilting_point"), in.get("depth_m"))),
            Map.entry(
                    "stress",
                    in -> RootUptake.waterStressCoefficient(
                            in.get("depletion_mm"), in.get("available_mm"), in.get("fraction"))),
            Map.entry("available", CropWaterTest::available),
            Map.entry("readily_available", CropWaterTest::depletionWhereStressBegins));

    private static final Map<String, ToDoubleFunction<Day>> SURFACE = Map.ofEntries(
            Map.entry("depletion_start", Day::depletionStart),
            Map.entry("reduction", Day::reduction),
            Map.entry("evaporation_coefficient", Day::evaporationCoefficient),
            Map.entry("evaporation_per_exposed", day -> day.evaporation() / day.exposedWetted()),
            Map.entry("percolation", Day::percolation),
            Map.entry("depletion_end", Day::depletionEnd),
            Map.entry("evaporation", Day::evaporation),
            Map.entry("crop_coefficient", Day::cropCoefficient),
            Map.entry("crop_et", Day::cropEt));

    private static final Map<String, ToDoubleFunction<RootDay>> ROOT_ZONE = Map.ofEntries(
            Map.entry("readily_available", RootDay::readilyAvailable),
            Map.entry("depletion_start", RootDay::depletionStart),
            Map.entry("stress", RootDay::stress),
            Map.entry("evaporation_coefficient", day -> day.surface().evaporationCoefficient()),
            Map.entry("crop_coefficient", day -> day.surface().cropCoefficient()),
            Map.entry("crop_et", day -> day.surface().cropEt()),
            Map.entry("percolation", RootDay::percolation),
            Map.entry("depletion_end", RootDay::depletionEnd));

    @TestFactory
    Stream<DynamicTest> fao56ExamplesTwentyEightToFortyFour() {
        return Catalogue.read("fao56-examples-28-44.csv").tests(COEFFICIENTS);
    }

    @TestFactory
    Stream<DynamicTest> fao56Example36AvailableWater() {
        return Catalogue.read("fao56-example-36.csv").tests(COEFFICIENTS);
    }

    @TestFactory
    Stream<DynamicTest> fao56Example35EvaporationAfterWetting() {
        return Catalogue.read("fao56-example-35.csv").tests(surfaceQuantities());
    }

    static Map<String, ToDoubleFunction<Inputs>> surfaceQuantities() {
        return byDay(SURFACE, List.of(EvaporationTable.surface(false)));
    }

    @TestFactory
    Stream<DynamicTest> fao56Example38RootZoneBalance() {
        return Catalogue.read("fao56-example-38.csv").tests(rootZoneQuantities());
    }

    static Map<String, ToDoubleFunction<Inputs>> rootZoneQuantities() {
        return byDay(ROOT_ZONE, List.of(EvaporationTable.rootZone()));
    }

    private static <D> Map<String, ToDoubleFunction<Inputs>> byDay(
            Map<String, ToDoubleFunction<D>> columns, List<D> days) {
        return columns.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        column -> in -> column.getValue().applyAsDouble(days.get(in.whole("day") - 1))));
    }

    private static double climate(Inputs in) {
        return CropCoefficient.climateTerm(in.get("wind_m_s"), in.get("humidity_min_pct"));
    }

    private static double maximum(Inputs in) {
        return SurfaceEvaporation.maximumCoefficient(in.get("basal"), climate(in), in.get("height_m"));
    }

    private static double cover(Inputs in) {
        return CropCoefficient.coverFraction(in.get("basal"), in.get("minimum"), maximum(in), in.get("height_m"));
    }

    /** Eq. 75; under drip irrigation the wetted part shrinks with cover (FAO-56 p. 149). */
    private static double exposedWetted(Inputs in) {
        double wetted = in.has("drip_wetted") ? in.get("drip_wetted") * (1.0 - 0.67 * cover(in)) : in.get("wetted");
        return Math.min(1.0 - cover(in), wetted);
    }

    private static double evaporationCoefficient(Inputs in) {
        return SurfaceEvaporation.coefficient(1.0, maximum(in), in.get("basal"), exposedWetted(in));
    }

    private static double available(Inputs in) {
        double fieldCapacity = in.get("field_capacity");
        return new SoilLayer(in.get("depth_m"), in.get("wilting_point"), fieldCapacity, fieldCapacity + 0.1, 0.5)
                .availableWaterMm();
    }

    private static double depletionWhereStressBegins(Inputs in) {
        double available = available(in);
        double unstressed = 0.0;
        double stressed = available;
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (unstressed + stressed);
            if (RootUptake.waterStressCoefficient(middle, available, in.get("fraction")) >= 1.0) {
                unstressed = middle;
            } else {
                stressed = middle;
            }
        }
        return unstressed;
    }
}
