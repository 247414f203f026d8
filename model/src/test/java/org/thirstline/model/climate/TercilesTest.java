package org.thirstline.model.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

class TercilesTest {

    @ParameterizedTest
    @ValueSource(ints = {3, 6, 9, 12, 30})
    void differentSeasonsPartInEqualThirds(int seasons) {
        double[] rain = IntStream.range(0, seasons)
                .mapToDouble(i -> 300.0 + 17.0 * ((7 * i) % 31))
                .toArray();
        Terciles terciles = Terciles.of(rain);

        for (SeasonClass seasonClass : SeasonClass.values()) {
            assertThat(Arrays.stream(rain).filter(mm -> terciles.classOf(mm) == seasonClass))
                    .as(seasonClass.word())
                    .hasSize(seasons / 3);
        }
    }

    @Test
    void wetterIsNeverADrierClass() {
        Terciles terciles = Terciles.of(new double[] {410, 250, 600, 333, 512, 470, 298});

        for (int mm = 200; mm < 700; mm++) {
            assertThat(terciles.classOf(mm + 1.0)).isGreaterThanOrEqualTo(terciles.classOf(mm));
        }
        assertThat(terciles.classOf(0.0)).isEqualTo(SeasonClass.DRY);
        assertThat(terciles.classOf(1000.0)).isEqualTo(SeasonClass.WET);
    }

    @Test
    void equalSeasonsAreAllMiddle() {
        Terciles terciles = Terciles.of(new double[] {400, 400, 400, 400});

        assertThat(terciles.classOf(400.0)).isEqualTo(SeasonClass.MIDDLE);
    }

    @Test
    void twoSeasonsAreRefused() {
        assertThatThrownBy(() -> Terciles.of(new double[] {400, 500}))
                .isInstanceOfSatisfying(InputException.class, error -> assertThat(error.code())
                        .isEqualTo(ModelError.VALUE_OUT_OF_RANGE));
    }
}
