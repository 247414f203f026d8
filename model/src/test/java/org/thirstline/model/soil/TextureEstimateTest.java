package org.thirstline.model.soil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/** Saxton &amp; Rawls (2006) against the values their paper prints. */
class TextureEstimateTest {

    private static final Offset<Double> HALF_A_PERCENT = within(0.5);
    private static final Offset<Double> HALF_A_TENTH = within(0.05);
    private static final Offset<Double> HALF_A_HUNDREDTH = within(0.005);

    @ParameterizedTest
    @CsvFileSource(resources = "saxton-rawls-table3.csv", useHeadersInDisplayName = true)
    void reproducesTable3(
            String texture,
            double sand,
            double clay,
            double wiltingPoint,
            double fieldCapacity,
            double saturation,
            double conductivity,
            double density) {
        TextureEstimate soil = TextureEstimate.of(sand, clay, 2.5);

        assertThat(100 * soil.wiltingPoint()).as(texture).isCloseTo(wiltingPoint, HALF_A_PERCENT);
        assertThat(100 * soil.fieldCapacity()).as(texture).isCloseTo(fieldCapacity, HALF_A_PERCENT);
        assertThat(100 * soil.saturation()).as(texture).isCloseTo(saturation, HALF_A_PERCENT);
        assertThat(soil.saturatedConductivityMmH()).as(texture).isCloseTo(conductivity, HALF_A_TENTH);
        assertThat(soil.bulkDensityGCm3()).as(texture).isCloseTo(density, HALF_A_HUNDREDTH);
    }

    /** A library page prints .1365448, .3208775, .482125 for 20 % sand, 20 % clay, 2.5 % organic matter. */
    @Test
    void reproducesAPrintedPointToItsLastDigit() {
        TextureEstimate soil = TextureEstimate.of(20, 20, 2.5);

        assertThat(soil.wiltingPoint()).isCloseTo(0.1365448, within(0.5e-7));
        assertThat(soil.fieldCapacity()).isCloseTo(0.3208775, within(0.5e-7));
        assertThat(soil.saturation()).isCloseTo(0.482125, within(0.5e-6));
    }

    /** Linear reservoir by hand for the loam of Table 3, 0.3 m: 15.48 mm/h * 24 h over 180 mm/m * 0.3 m. */
    @Test
    void drainsAsALinearReservoir() {
        TextureEstimate loam = TextureEstimate.of(40, 20, 2.5);
        assertThat(loam.drainageRatePerDay(0.3)).isCloseTo(1 - Math.exp(-15.48 * 24 / (0.1799 * 300)), within(1e-4));

        TextureEstimate clay = TextureEstimate.of(25, 50, 2.5);
        assertThat(clay.drainageRatePerDay(0.3)).isLessThan(loam.drainageRatePerDay(0.3));
        assertThat(clay.drainageRatePerDay(1.0)).isLessThan(clay.drainageRatePerDay(0.1));
        assertThat(clay.layer(0.3).drainageRate()).isEqualTo(clay.drainageRatePerDay(0.3));
    }

    @ParameterizedTest
    @CsvSource({
        "50, 60.1, 2, VALUE_OUT_OF_RANGE",
        "50, 10, 8.1, VALUE_OUT_OF_RANGE",
        "-1, 10, 2, VALUE_OUT_OF_RANGE",
        "NaN, 10, 2, VALUE_OUT_OF_RANGE",
        "60, 45, 2, INCONSISTENT",
    })
    void refusesTexturesOutsideTheRegressions(double sand, double clay, double organicMatter, ModelError expected) {
        InputException refused =
                catchThrowableOfType(InputException.class, () -> TextureEstimate.of(sand, clay, organicMatter));
        assertThat(refused.code()).isEqualTo((ErrorCode) expected);
    }

    @Test
    void everyTextureIsEitherAUsableLayerOrRefused() {
        Random random = new Random(2006);
        int usable = 0;
        for (int trial = 0; trial < 2000; trial++) {
            double clay = 60 * random.nextDouble();
            double sand = (100 - clay) * random.nextDouble();
            try {
                SoilLayer layer =
                        TextureEstimate.of(sand, clay, 8 * random.nextDouble()).layer(0.3);
                assertThat(layer.availableWaterMm()).isPositive();
                usable++;
            } catch (InputException refused) {
                assertThat(refused.code()).isInstanceOf(ModelError.class);
            }
        }
        assertThat(usable).isGreaterThan(1900);
    }
}
