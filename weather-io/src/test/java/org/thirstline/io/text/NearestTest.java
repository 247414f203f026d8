package org.thirstline.io.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {

    @ParameterizedTest
    @CsvSource({"'', abc, 3", "soil, soil, 0", "siol, soil, 1", "kitten, sitting, 3", "ca, abc, 3"})
    void countsEdits(String a, String b, int expected) {
        assertThat(Nearest.distance(a, b)).isEqualTo(expected);
    }

    @Test
    void findsTheWordMeantAndNothingFarAway() {
        List<String> keys = List.of("field_capacity", "wilting_point", "thickness");
        assertThat(Nearest.to("fieldCapcity", keys)).contains("field_capacity");
        assertThat(Nearest.to("Thickness", keys)).contains("thickness");
        assertThat(Nearest.to("latitude", keys)).isEmpty();
    }

    @Test
    void distanceIsSymmetricAndBoundedByTheLongerWord() {
        Random random = new Random(7);
        for (int trial = 0; trial < 500; trial++) {
            String a = word(random);
            String b = word(random);
            int distance = Nearest.distance(a, b);
            assertThat(distance)
                    .isEqualTo(Nearest.distance(b, a))
                    .isBetween(Math.abs(a.length() - b.length()), Math.max(a.length(), b.length()));
            assertThat(distance == 0).isEqualTo(a.equals(b));
        }
    }

    private static String word(Random random) {
        return random.ints(random.nextInt(9), 'a', 'd')
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
