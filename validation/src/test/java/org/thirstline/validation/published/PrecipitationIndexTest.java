package org.thirstline.validation.published;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;
import org.thirstline.model.climate.GammaFit;
import org.thirstline.model.climate.GammaFit.Method;
import org.thirstline.model.climate.PrecipitationClass;
import org.thirstline.model.climate.StandardizedPrecipitation;

/**
 * The Standardized Precipitation Index in its parts: gamma fit, normal quantile, classes. No publication with rain and the final index
 * could be read.
 */
@ExtendWith(PublishedTally.class)
class PrecipitationIndexTest {

    static final Map<String, ToDoubleFunction<Inputs>> QUANTITIES = Map.of(
            "index", in -> StandardizedPrecipitation.index(in.get("probability")),
            "thom_shape", in -> fit(in, Method.THOM).shape(),
            "thom_scale", in -> fit(in, Method.THOM).scale(),
            "likelihood_shape", in -> fit(in, Method.MAXIMUM_LIKELIHOOD).shape(),
            "likelihood_rate", in -> 1.0 / fit(in, Method.MAXIMUM_LIKELIHOOD).scale(),
            "thom_scale_of_means",
                    in -> GammaFit.ofMeans(in.get("mean"), in.get("gap"), Method.THOM)
                            .scale());

    @TestFactory
    Stream<DynamicTest> publishedGammaFitsAndQuantiles() {
        return Catalogue.read("spi.csv").tests(QUANTITIES);
    }

    private static GammaFit fit(Inputs in, Method method) {
        return GammaFit.of(sample(in.text("sample")), method);
    }

    private static double[] sample(String name) {
        return Catalogue.lines("/samples/" + name + ".csv").stream()
                .filter(line -> !line.startsWith("#"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    @TestFactory
    Stream<DynamicTest> wmo1090Table1Classes() {
        return classes().stream()
                .map(cells -> DynamicTest.dynamicTest(cells[0] + " is " + cells[1], () -> {
                    PublishedTally.tried("WMO-No. 1090 Table 1: classes of the index");
                    assertThat(classOf(cells[0])).isEqualTo(cells[1]);
                    PublishedTally.passed("WMO-No. 1090 Table 1: classes of the index");
                }));
    }

    static List<String[]> classes() {
        return Catalogue.lines("/samples/spi-classes.csv").stream()
                .filter(line -> !line.startsWith("#"))
                .map(line -> line.split(","))
                .toList();
    }

    static String classOf(String index) {
        return PrecipitationClass.of(Double.parseDouble(index)).words();
    }

    /** Abramowitz and Stegun 26.2.23, used in Edwards and McKee (1997): stated error below 4.5e-4 (coefficients from memory). */
    @Test
    void exactQuantileLiesWithinTheErrorOfTheUsualApproximation() {
        for (int i = 1; i < 1000; i++) {
            double probability = i / 1000.0;
            double tail = Math.min(probability, 1.0 - probability);
            double t = Math.sqrt(-2.0 * Math.log(tail));
            double size = t
                    - (2.515517 + 0.802853 * t + 0.010328 * t * t)
                            / (1.0 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
            double approximation = probability < 0.5 ? -size : size;
            assertThat(StandardizedPrecipitation.index(probability)).isCloseTo(approximation, within(4.5e-4));
        }
    }
}
