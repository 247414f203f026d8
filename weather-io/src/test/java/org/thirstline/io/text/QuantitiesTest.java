package org.thirstline.io.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.thirstline.io.text.InputErrors.assertRefused;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantitiesTest {

    /** Exact factors of NIST SP 811, appendix B.8: 1 ft = 0.3048 m, 1 in = 25.4 mm, 1 acre (international) = 4046.8564224 m². */
    @ParameterizedTest
    @CsvSource({
        "LENGTH, 6 ft, 1.8288",
        "LENGTH, 75cm, 0.75",
        "LENGTH, 30 in, 0.762",
        "WATER_DEPTH, 1.5 in, 38.1",
        "AREA, 10 acres, 4.0468564224",
        "AVAILABLE_WATER, 2.0 in/ft, 166.66666666666666",
        "AVAILABLE_WATER, 170 mm/m, 170",
        "AVAILABLE_WATER, 0.17 m³/m³, 170",
        "WATER_CONTENT, 32 %, 0.32",
        "WATER_CONTENT, 32 % vol, 0.32",
        "PERCENT, 20%, 20",
        "WETNESS, 90 % of  field capacity, 90",
        "DAILY_RATE, 0.7 /d, 0.7",
        "WATER_FLUX, 0.5 mm/h, 12",
        "WATER_CONTENT, 35 %, 0.35",
        "PLANT_DENSITY, 12500 per ha, 1.25",
        "PLANT_DENSITY, 4046.8564224 per acre, 1",
        "ANGLE, -33.5 °, -33.5",
        "DURATION, 1e1 days, 10",
        "MIXING_RATIO, 420 ppm, 420",
    })
    void readsUnits(Dimension dimension, String text, double expected) {
        assertThat(Quantities.read("key", text, dimension)).isCloseTo(expected, within(1e-12 * Math.abs(expected)));
    }

    @Test
    void everyUnitReadsBackWhatItsFactorSays() {
        Random random = new Random(811);
        for (Dimension dimension : Dimension.values()) {
            assertThat(dimension.factors()).as("own unit of %s", dimension).containsEntry(dimension.unit(), 1.0);
            dimension.factors().forEach((unit, factor) -> {
                double value = random.nextInt(100000) / 1000.0;
                String text = String.format(Locale.ROOT, "%.3f %s", value, unit);
                assertThat(Quantities.read("key", text, dimension))
                        .as(text)
                        .isCloseTo(value * factor, within(1e-12 * value * factor));
            });
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"228", " 228 ", "2.5e2"})
    void refusesANumberWithoutUnit(String text) {
        assertRefused(
                () -> Quantities.read("elevation", text, Dimension.LENGTH),
                InputFileError.MISSING_UNIT,
                "elevation: " + text.strip() + " m",
                "elevation_m: " + text.strip());
    }

    @ParameterizedTest
    @ValueSource(strings = {"228 mm/m", "228 kg", "1,5 m", "228 M"})
    void refusesUnitsOfSomethingElse(String text) {
        assertRefused(
                () -> Quantities.read("elevation", text, Dimension.LENGTH),
                InputFileError.WRONG_UNIT,
                text,
                "ft",
                "cm");
    }

    @ParameterizedTest
    @ValueSource(strings = {"high", "m 228", "", "--3 m"})
    void refusesTextThatIsNoQuantity(String text) {
        assertRefused(
                () -> Quantities.read("elevation", text, Dimension.LENGTH),
                InputFileError.WRONG_KIND,
                "'" + text + "'");
    }
}
