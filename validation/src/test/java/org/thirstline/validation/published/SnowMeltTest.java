package org.thirstline.validation.published;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;
import org.thirstline.model.soil.Snowpack;

/** Snow melt against NEH 630 chapter 11: the default factor in both unit systems, and the published range it lies in. */
@ExtendWith(PublishedTally.class)
class SnowMeltTest {

    static final Map<String, ToDoubleFunction<Inputs>> QUANTITIES = Map.of(
            "melt", in -> Snowpack.melt(in.get("snow_mm"), in.get("mean_c")),
            "melt_in_per_f", in -> Snowpack.melt(1000.0, in.get("warm_f") / 1.8) / 25.4 / in.get("warm_f"));

    @TestFactory
    Stream<DynamicTest> neh630DegreeDayMelt() {
        return Catalogue.read("neh630-snow-melt.csv").tests(QUANTITIES);
    }
}
