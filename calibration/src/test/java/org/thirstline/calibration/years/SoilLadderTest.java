package org.thirstline.calibration.years;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;

class SoilLadderTest {

    /** A layer thinner than 6 mm is left out, which holds at most 6 mm times the available share. */
    private static final double SLIVER_MM = 1.5;

    private final SoilProfile soil = new SoilProfile(
            List.of(new SoilLayer(0.4, 0.12, 0.32, 0.46, 0.6), new SoilLayer(0.8, 0.10, 0.20, 0.42, 0.6)),
            9.0,
            65.0,
            4.0,
            Double.POSITIVE_INFINITY);

    @ParameterizedTest
    @ValueSource(doubles = {40, 60, 79, 80, 81, 120, 160, 240, 300})
    void holdsWhatIsAsked(double waterMm) {
        assertThat(SoilLadder.holding(soil, waterMm).availableWaterMm()).isCloseTo(waterMm, within(SLIVER_MM));
    }

    @Test
    void isTheSoilItselfAtItsOwnCapacity() {
        SoilProfile same = SoilLadder.holding(soil, soil.availableWaterMm());

        assertThat(same.depthM()).isCloseTo(soil.depthM(), within(1e-9));
        assertThat(same.curveNumber()).isEqualTo(65.0);
        assertThat(same.maxDrainageMmPerDay()).isEqualTo(4.0);
    }

    @Test
    void goesOnWithTheLowestLayer() {
        SoilProfile deeper = SoilLadder.holding(soil, 200.0);

        assertThat(deeper.depthM()).isCloseTo(1.6, within(1e-9));
        assertThat(deeper.layers().get(deeper.layers().size() - 1).fieldCapacity())
                .isEqualTo(0.20);
    }
}
