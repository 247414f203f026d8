package org.thirstline.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

class NumbersTest {

    @Test
    void numbersAreTheSameInEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(Numbers.fixed(1234.56, 1)).isEqualTo("1234.6");
            assertThat(Numbers.ticks(0.5).format(-1.5)).isEqualTo("\u22121.5");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void minusZeroIsWrittenAsZero() {
        assertThat(Numbers.fixed(-0.0, 1)).isEqualTo("0.0");
        assertThat(Numbers.fixed(-0.04, 1)).isEqualTo("0.0");
        assertThat(Numbers.fixed(-0.06, 1)).isEqualTo("\u22120.1");
        assertThat(Numbers.fixed(Double.NaN, 1)).isEqualTo("\u2013");
    }

    @Test
    void quickNumbersReadAsDecimalArithmeticWritesThem() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(11L);
        for (int i = 0; i < 100_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10.0, random.nextInt(14) - 5);
            int decimals = random.nextInt(9);
            assertThat(Numbers.plain(value, decimals)).isEqualTo(Numbers.exact(value, decimals));
        }
        for (int thousandths = -3000; thousandths <= 3000; thousandths++) {
            double value = thousandths / 1000.0;
            for (double near : new double[] {value, Math.nextUp(value), Math.nextDown(value)}) {
                for (int decimals = 0; decimals <= 3; decimals++) {
                    assertThat(Numbers.plain(near, decimals)).isEqualTo(Numbers.exact(near, decimals));
                }
            }
        }
    }

    @Test
    void significantDigitsAreKept() {
        assertThat(Numbers.significant(0.02134, 3)).isEqualTo("0.0213");
        assertThat(Numbers.significant(2.134, 2)).isEqualTo("2.1");
        assertThat(Numbers.significant(213.4, 2)).isEqualTo("213");
        assertThat(Numbers.significant(0.0, 2)).isEqualTo("0");
    }

    @Test
    void stepsAreNiceAndNeverTooMany() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(3L);
        for (int i = 0; i < 500; i++) {
            double span = Math.pow(10.0, random.nextDouble(-3.0, 4.0));
            int parts = random.nextInt(1, 12);
            double step = Numbers.niceStep(span, parts);
            double digit = step / Math.pow(10.0, Math.floor(Math.log10(step) + 1e-9));

            assertThat(span / step).isLessThanOrEqualTo(parts * (1.0 + 1e-6));
            assertThat(List.of(1.0, 2.0, 5.0)).anyMatch(nice -> Math.abs(nice - digit) < 1e-6);
        }
    }

    @Test
    void unitsAreThoseOfTheStandards() {
        // NIST SP 811 Appendix B: short ton 907.18474 kg, acre 4046.873 m2 (to the digits printed).
        assertThat(UnitSystem.US.dryMatter(1.0)).isCloseTo(0.44609, within(5e-6));
        assertThat(UnitSystem.US.water(25.4)).isCloseTo(1.0, within(1e-12));
        assertThat(UnitSystem.US.depth(0.3048)).isCloseTo(1.0, within(1e-12));
        assertThat(UnitSystem.SI.slope(0.021)).isCloseTo(2.1, within(1e-12));
    }

    @Test
    void csvQuotesWhatNeedsIt() {
        DataTable table = new DataTable.Builder("zone", "harvested_mg_ha")
                .row("East, \"upper\"", 12.5)
                .row("West", Double.NaN)
                .row(null, -0.0)
                .build();

        assertThat(table.csv())
                .isEqualTo("zone,harvested_mg_ha\r\n\"East, \"\"upper\"\"\",12.5000\r\nWest,\r\n,0.0000\r\n");
    }
}
