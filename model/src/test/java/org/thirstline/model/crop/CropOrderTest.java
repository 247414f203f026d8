package org.thirstline.model.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/** Cardinal temperatures out of order are refused, each pair of them. */
class CropOrderTest {

    private static Map<CropParameter, Double> values() throws IOException {
        Properties file = new Properties();
        try (InputStream in =
                CropOrderTest.class.getResourceAsStream("/org/thirstline/model/engine/test-grass.properties")) {
            file.load(in);
        }
        Map<CropParameter, Double> values = new EnumMap<>(CropParameter.class);
        for (CropParameter parameter : CropParameter.values()) {
            values.put(parameter, Double.valueOf(file.getProperty(parameter.key())));
        }
        return values;
    }

    @ParameterizedTest
    @CsvSource({
        "LEAF_BASE, LEAF_UPPER, 18",
        "GROWTH_MIN, GROWTH_OPTIMUM_LOW, 15",
        "GROWTH_OPTIMUM_LOW, GROWTH_OPTIMUM_HIGH, 25",
        "GROWTH_OPTIMUM_HIGH, GROWTH_MAX, 35"
    })
    void temperaturesRise(CropParameter lower, CropParameter upper, double same) throws IOException {
        Map<CropParameter, Double> values = values();
        values.put(lower, same);
        values.put(upper, same);
        assertThatThrownBy(() -> CropParameters.of("grass", values))
                .isInstanceOfSatisfying(InputException.class, refused -> assertThat(refused.code())
                        .isEqualTo(ModelError.VALUES_OUT_OF_ORDER))
                .hasMessageContaining(lower.key())
                .hasMessageContaining(upper.key());
    }

    @Test
    void everyParameterIsNeededAndSaysWhatItIs() throws IOException {
        Map<CropParameter, Double> values = values();
        assertThat(CropParameters.of("grass", values).name()).isEqualTo("grass");
        for (CropParameter parameter : CropParameter.values()) {
            assertThat(parameter.unit()).isNotBlank();
            assertThat(parameter.meaning()).isNotBlank();
            Map<CropParameter, Double> lacking = new EnumMap<>(values);
            lacking.remove(parameter);
            assertThatThrownBy(() -> CropParameters.of("grass", lacking)).hasMessageContaining(parameter.key());
        }
    }

    /** What two changes come to counts, not what the first would be on its own. */
    @Test
    void severalChangesAreOrderedOnlyTogether() throws IOException {
        CropParameters grass = CropParameters.of("grass", values());
        double low = grass.get(CropParameter.GROWTH_OPTIMUM_HIGH) + 0.5;
        assertThatThrownBy(() -> grass.with(CropParameter.GROWTH_OPTIMUM_LOW, low))
                .isInstanceOfSatisfying(InputException.class, refused -> assertThat(refused.code())
                        .isEqualTo(ModelError.VALUES_OUT_OF_ORDER));
        CropParameters moved =
                grass.with(Map.of(CropParameter.GROWTH_OPTIMUM_LOW, low, CropParameter.GROWTH_OPTIMUM_HIGH, low + 0.5));
        assertThat(moved.get(CropParameter.GROWTH_OPTIMUM_LOW)).isEqualTo(low);
        assertThat(moved.get(CropParameter.GROWTH_OPTIMUM_HIGH)).isEqualTo(low + 0.5);
        assertThat(CropParameter.ofKey(CropParameter.LEAF_BASE.key())).contains(CropParameter.LEAF_BASE);
        assertThat(CropParameter.ofKey("no such key")).isEmpty();
    }
}
