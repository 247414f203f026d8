package org.thirstline.calibration.sensitivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class MorrisScreeningTest {

    private static final MorrisScreening.Options OPTIONS = new MorrisScreening.Options(2000, 4, 5, 2);

    private static List<ElementaryEffect> screen(OutputModel model, List<SensitivityInput> inputs) {
        return MorrisScreening.screen(model, inputs, OPTIONS, ProgressListener.NONE)
                .get(0);
    }

    @Test
    void aPlaneHasTheSameEffectEverywhere() {
        List<SensitivityInput> inputs =
                List.of(SensitivityInput.between("a", 2.0, 6.0), SensitivityInput.between("b", -1.0, 1.0));

        List<ElementaryEffect> effects = screen(x -> new double[] {3.0 * x[0] - 5.0 * x[1]}, inputs);

        assertThat(effects.get(0).mean()).isCloseTo(12.0, within(1.0e-9));
        assertThat(effects.get(1).mean()).isCloseTo(-10.0, within(1.0e-9));
        assertThat(effects.get(1).meanAbsolute()).isCloseTo(10.0, within(1.0e-9));
        assertThat(effects).allSatisfy(effect -> assertThat(effect.deviation()).isLessThan(1.0e-9));
    }

    /**
     * On four levels the step is 2/3. The effect of x in x y is y, uniform on 0, 1/3, 2/3, 1: mean 1/2, variance 5/36. The effect of x
     * in x² is the sum of both ends, 2/3 or 4/3: mean 1, variance 1/9. In 4 (x - 1/2)² these become -4/3 and 4/3 with mean 0.
     */
    @Test
    void effectsOfProductsAndSquaresAreTheirMeansOverTheGrid() {
        List<SensitivityInput> inputs = TestFunctions.inputs(2, 0.0, 1.0);
        ElementaryEffect product =
                screen(x -> new double[] {x[0] * x[1]}, inputs).get(0);
        ElementaryEffect square =
                screen(x -> new double[] {x[0] * x[0]}, inputs).get(0);
        ElementaryEffect valley = screen(x -> new double[] {4.0 * (x[0] - 0.5) * (x[0] - 0.5)}, inputs)
                .get(0);

        assertThat(product.mean()).isCloseTo(0.5, within(4.0 * product.meanAbsoluteError()));
        assertThat(product.deviation()).isCloseTo(Math.sqrt(5.0 / 36.0), within(0.01));
        assertThat(product.meanAbsoluteError()).isCloseTo(Math.sqrt(5.0 / 36.0 / 2000.0), within(2.0e-4));
        assertThat(square.mean()).isCloseTo(1.0, within(4.0 * square.meanAbsoluteError()));
        assertThat(square.deviation()).isCloseTo(1.0 / 3.0, within(0.001));
        assertThat(valley.meanAbsolute()).isCloseTo(4.0 / 3.0, within(1.0e-9));
        assertThat(valley.mean()).isCloseTo(0.0, within(0.12));
        assertThat(valley.deviation()).isCloseTo(4.0 / 3.0, within(0.01));
    }

    @Test
    void inputsOfTheGFunctionAreRankedByTheirCoefficients() {
        List<ElementaryEffect> effects =
                screen(x -> new double[] {TestFunctions.g(x)}, TestFunctions.inputs(8, 0.0, 1.0));

        assertThat(effects.subList(0, 4))
                .isSortedAccordingTo(Comparator.comparingDouble(ElementaryEffect::meanAbsolute)
                        .reversed());
        assertThat(effects.subList(4, 8)).allSatisfy(effect -> assertThat(effect.meanAbsolute())
                .isLessThan(0.05 * effects.get(0).meanAbsolute()));
    }

    @Test
    void runsAreTrajectoriesTimesInputsPlusOneInsideTheCube() {
        int[] last = {0};
        MorrisScreening.screen(
                x -> {
                    assertThat(IntStream.range(0, 5).allMatch(i -> x[i] >= 0.0 && x[i] <= 1.0))
                            .isTrue();
                    return x;
                },
                TestFunctions.inputs(5, 0.0, 1.0),
                new MorrisScreening.Options(20, 6, 1, 2),
                (done, total) -> last[0] = done);

        assertThat(last[0]).isEqualTo(20 * 6);
    }

    @Test
    void seedsDecideAndThreadsDoNot() {
        List<SensitivityInput> inputs = TestFunctions.ishigamiInputs();
        OutputModel model = x -> new double[] {TestFunctions.ishigami(x)};
        List<List<ElementaryEffect>> one =
                MorrisScreening.screen(model, inputs, new MorrisScreening.Options(30, 4, 8, 1), ProgressListener.NONE);
        List<List<ElementaryEffect>> four =
                MorrisScreening.screen(model, inputs, new MorrisScreening.Options(30, 4, 8, 4), ProgressListener.NONE);
        List<List<ElementaryEffect>> other =
                MorrisScreening.screen(model, inputs, new MorrisScreening.Options(30, 4, 9, 4), ProgressListener.NONE);

        assertThat(four).isEqualTo(one);
        assertThat(other).isNotEqualTo(one);
    }

    @Test
    void anOddGridIsRefused() {
        assertThatThrownBy(() -> new MorrisScreening.Options(10, 5, 1, 1))
                .isInstanceOfSatisfying(
                        InputException.class, e -> assertThat(e.code()).isEqualTo(ModelError.INCONSISTENT));
    }
}
