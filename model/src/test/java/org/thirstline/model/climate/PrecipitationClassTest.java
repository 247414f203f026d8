package org.thirstline.model.climate;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** WMO-No. 1090 (2012), Table 1. */
class PrecipitationClassTest {

    @ParameterizedTest
    @CsvSource({
        "2.0, extremely wet",
        "1.99, very wet",
        "1.5, very wet",
        "1.49, moderately wet",
        "1.0, moderately wet",
        "0.99, near normal",
        "-0.99, near normal",
        "-1.0, moderately dry",
        "-1.49, moderately dry",
        "-1.5, severely dry",
        "-1.99, severely dry",
        "-2.0, extremely dry"
    })
    void classes(double index, String words) {
        assertThat(PrecipitationClass.of(index).words()).isEqualTo(words);
    }
}
