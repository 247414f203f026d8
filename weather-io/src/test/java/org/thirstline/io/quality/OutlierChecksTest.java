package org.thirstline.io.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OutlierChecksTest {

    @Test
    void medianDistanceIsThatOfTheSortedDistances() {
        Random random = new Random(3);
        for (int i = 0; i < 2000; i++) {
            double[] values = new double[1 + random.nextInt(40)];
            Arrays.setAll(values, k -> Math.rint(random.nextGaussian() * 30.0) / 10.0);
            Arrays.sort(values);
            double median = values[values.length / 2];
            double[] distances = Arrays.stream(values)
                    .map(v -> Math.abs(v - median))
                    .sorted()
                    .toArray();
            assertThat(OutlierChecks.medianDistance(values, median)).isEqualTo(distances[distances.length / 2]);
        }
    }
}
