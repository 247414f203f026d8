package org.thirstline.charts.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Our quick way to write coordinates against Java's own format of the same pattern. */
class SvgNumbersTest {

    private static final int MANY = 200_000;

    private final DecimalFormat quick = new SvgContext.Hundredths();
    private final DecimalFormat plain = new DecimalFormat("#.##", DecimalFormatSymbols.getInstance(Locale.US));

    @Test
    void coordinatesReadAsJavaWritesThem() {
        Random random = new Random(7);
        for (int i = 0; i < MANY; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10.0, random.nextInt(10) - 3);
            assertThat(quick.format(value)).isEqualTo(plain.format(value));
        }
    }

    @Test
    void halvesAndFewDecimalsReadAsJavaWritesThem() {
        for (int thousandths = -20_000; thousandths <= 20_000; thousandths++) {
            double value = thousandths / 1000.0;
            assertThat(quick.format(value)).isEqualTo(plain.format(value));
            assertThat(quick.format(Math.nextUp(value))).isEqualTo(plain.format(Math.nextUp(value)));
            assertThat(quick.format(Math.nextDown(value))).isEqualTo(plain.format(Math.nextDown(value)));
        }
    }

    @Test
    void whatIsNoCoordinateReadsAsJavaWritesIt() {
        double[] odd = {Double.NaN, Double.POSITIVE_INFINITY, -1e300, 1e8, 123456789.987, Double.MIN_VALUE, -0.0};
        for (double value : odd) {
            assertThat(quick.format(value)).isEqualTo(plain.format(value));
        }
    }
}
