package org.thirstline.validation.published;

import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;
import org.thirstline.model.soil.TextureEstimate;

/** Soil water from texture against Table 3 of Saxton and Rawls (2006). */
@ExtendWith(PublishedTally.class)
class SoilTextureTest {

    static final Map<String, ToDoubleFunction<Inputs>> QUANTITIES = Map.of(
            "wilting_point", of(soil -> 100.0 * soil.wiltingPoint()),
            "field_capacity", of(soil -> 100.0 * soil.fieldCapacity()),
            "saturation", of(soil -> 100.0 * soil.saturation()),
            "conductivity", of(TextureEstimate::saturatedConductivityMmH),
            "density", of(TextureEstimate::bulkDensityGCm3));

    private static ToDoubleFunction<Inputs> of(Function<TextureEstimate, Double> quantity) {
        return in -> quantity.apply(TextureEstimate.of(in.get("sand"), in.get("clay"), in.get("organic_matter")));
    }

    @TestFactory
    Stream<DynamicTest> saxtonRawlsTable3() {
        return Catalogue.read("saxton-rawls-table-3.csv").tests(QUANTITIES);
    }
}
