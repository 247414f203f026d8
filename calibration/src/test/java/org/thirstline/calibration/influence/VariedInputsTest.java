package org.thirstline.calibration.influence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.io.crop.CropFile;
import org.thirstline.io.crop.CropFiles;
import org.thirstline.io.crop.Evidence;
import org.thirstline.io.crop.ParameterNote;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.error.ErrorCode;
import org.thirstline.model.error.InputException;

class VariedInputsTest {

    private static final CropFile MISCANTHUS = CropFiles.bundled("giant miscanthus");

    private static InfluenceOptions options(double soilPct, double othersPct) {
        return new InfluenceOptions(4, 16, 8, 100, soilPct, othersPct, 1L, 1);
    }

    /** The crop without ranges but these, each given as parameter, low, high. */
    private static CropFile withRanges(Object... ranges) {
        Map<CropParameter, ParameterNote> notes = new EnumMap<>(CropParameter.class);
        for (CropParameter parameter : CropParameter.values()) {
            notes.put(parameter, new ParameterNote(Double.NaN, Double.NaN, "none", "invented", "", Evidence.JUDGEMENT));
        }
        for (int i = 0; i < ranges.length; i += 3) {
            double low = ((Number) ranges[i + 1]).doubleValue();
            double high = ((Number) ranges[i + 2]).doubleValue();
            notes.put(
                    (CropParameter) ranges[i], new ParameterNote(low, high, null, "invented", "", Evidence.JUDGEMENT));
        }
        return new CropFile(
                MISCANTHUS.name(),
                MISCANTHUS.species(),
                MISCANTHUS.parameters(),
                notes,
                MISCANTHUS.cautions(),
                MISCANTHUS.calibration());
    }

    private static VariedInput input(VariedInputs inputs, CropParameter parameter) {
        return inputs.inputs().stream()
                .filter(input -> input.parameter().equals(Optional.of(parameter)))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(strings = {"giant miscanthus", "switchgrass"})
    void publishedRangesAreTakenAsTheyStand(String name) {
        CropFile crop = CropFiles.bundled(name);
        VariedInputs inputs = VariedInputs.of(crop, options(20.0, 0.0));

        assertThat(inputs.notices()).isEmpty();
        for (VariedInput input : inputs.inputs()) {
            input.parameter().ifPresent(parameter -> {
                assertThat(input.published()).isTrue();
                assertThat(input.low()).isEqualTo(crop.note(parameter).low());
                assertThat(input.high()).isEqualTo(crop.note(parameter).high());
            });
        }
        VariedInput soil = inputs.inputs().get(inputs.inputs().size() - 1);
        assertThat(soil.key()).isEqualTo(VariedInput.SOIL_WATER);
        assertThat(soil.low()).isCloseTo(0.8, within(1e-12));
        assertThat(soil.high()).isCloseTo(1.2, within(1e-12));
        assertThat(VariedInputs.of(crop, options(0.0, 0.0)).inputs())
                .noneMatch(input -> input.key().equals(VariedInput.SOIL_WATER));
    }

    @Test
    void overlappingRangesOfOrderedParametersAreCutBetweenTheirValues() {
        CropFile crop = withRanges(CropParameter.GROWTH_OPTIMUM_LOW, 5, 40, CropParameter.GROWTH_OPTIMUM_HIGH, 12, 45);
        VariedInputs inputs = VariedInputs.of(crop, options(0.0, 0.0));
        double middle = 0.5
                * (crop.parameters().get(CropParameter.GROWTH_OPTIMUM_LOW)
                        + crop.parameters().get(CropParameter.GROWTH_OPTIMUM_HIGH));

        VariedInput low = input(inputs, CropParameter.GROWTH_OPTIMUM_LOW);
        VariedInput high = input(inputs, CropParameter.GROWTH_OPTIMUM_HIGH);
        assertThat(low.high()).isLessThan(middle).isCloseTo(middle, within(1e-3));
        assertThat(high.low()).isGreaterThan(middle).isCloseTo(middle, within(1e-3));
        assertThat(inputs.notices()).anySatisfy(notice -> assertThat(notice)
                .contains("growth_optimum_low_c must stay below growth_optimum_high_c"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {5.0, 30.0, 90.0})
    void everyCombinationIsACropThatTheEngineTakes(double othersPct) {
        List<VariedInput> inputs =
                VariedInputs.of(MISCANTHUS, options(0.0, othersPct)).inputs();
        assertThat(inputs).hasSizeGreaterThan(40);
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(3L);
        for (int trial = 0; trial < 300; trial++) {
            Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
            for (CropParameter parameter : CropParameter.values()) {
                values.put(parameter, MISCANTHUS.parameters().get(parameter));
            }
            for (VariedInput input : inputs) {
                double share = trial % 2 == 0 ? random.nextInt(2) : random.nextDouble();
                values.put(input.parameter().orElseThrow(), input.low() + share * (input.high() - input.low()));
            }
            CropParameters.of("tried", values);
        }
    }

    @Test
    void aValueOutsideItsRangeIsSaid() {
        CropFile crop = withRanges(CropParameter.RADIATION_USE_EFFICIENCY, 4.0, 5.0);

        assertThat(VariedInputs.of(crop, options(0.0, 0.0)).notices())
                .singleElement()
                .asString()
                .contains("radiation_use_efficiency_g_mj")
                .contains("outside its published range");
    }

    @Test
    void aCropWithoutRangesIsRefused() {
        assertThatThrownBy(() -> VariedInputs.of(withRanges(), options(20.0, 0.0)))
                .isInstanceOf(InputException.class)
                .extracting(failure -> ((InputException) failure).code())
                .isEqualTo((ErrorCode) CalibrationError.NOTHING_TO_VARY);
        assertThat(VariedInputs.of(withRanges(), options(20.0, 10.0)).inputs())
                .hasSizeGreaterThan(40)
                .noneMatch(VariedInput::published);
    }
}
