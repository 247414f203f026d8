package org.thirstline.io.tables;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvTableTest {

    @ParameterizedTest
    @CsvSource({
        "0, 2, 0.00",
        "-0.0, 2, 0.00",
        "-0.004, 2, 0.00",
        "-0.006, 2, -0.01",
        "1.5, 0, 2",
        "-1.5, 0, -2",
        "12.3456, 3, 12.346",
        "0.05, 1, 0.1",
        "999.9999, 2, 1000.00",
        "1e18, 1, 1000000000000000000.0",
        "-9007199254740993, 3, -9007199254740992.000",
        "NaN, 3, ''",
        "1e-300, 9, 0.000000000",
    })
    void writesFixedDecimals(double value, int decimals, String expected) {
        assertThat(field(new CsvTable().number(value, decimals))).isEqualTo(expected);
    }

    @Test
    void agreesWithDecimalArithmeticToHalfAUnitAndADoublesPrecision() {
        Random random = new Random(4180);
        for (int trial = 0; trial < 20_000; trial++) {
            int decimals = random.nextInt(10);
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(14) - 4);
            String written = field(new CsvTable().number(value, decimals));
            BigDecimal off =
                    new BigDecimal(written).subtract(new BigDecimal(value)).abs();
            BigDecimal half = new BigDecimal("0.5").movePointLeft(decimals);
            assertThat(off).isLessThanOrEqualTo(half.add(new BigDecimal(Math.ulp(value) * 2)));
            assertThat(new BigDecimal(written).scale()).isEqualTo(decimals);
        }
    }

    @Test
    void refusesInfinity() {
        assertThatIllegalArgumentException().isThrownBy(() -> new CsvTable().number(Double.POSITIVE_INFINITY, 2));
    }

    @Test
    void writesWholeNumbersAndDates() {
        CsvTable table = new CsvTable()
                .whole(-12)
                .whole(0)
                .whole(1234567890123L)
                .whole(Integer.MAX_VALUE)
                .whole(1L + Integer.MAX_VALUE)
                .whole(-Long.MAX_VALUE)
                .date(LocalDate.of(2012, 7, 4))
                .date(null)
                .date(LocalDate.of(42, 1, 9))
                .endRow();
        assertThat(text(table))
                .isEqualTo("-12,0,1234567890123,2147483647,2147483648,-9223372036854775807,2012-07-04,,0042-01-09\n");
    }

    @Test
    void anyTextReadsBack() throws IOException {
        Random random = new Random(1);
        String signs = "ab,\"\n\r é'";
        for (int trial = 0; trial < 300; trial++) {
            StringBuilder word = new StringBuilder("x");
            random.ints(random.nextInt(8), 0, signs.length()).forEach(i -> word.append(signs.charAt(i)));
            CsvTable table =
                    new CsvTable().text(word.toString()).text(null).text("z").endRow();
            List<CSVRecord> rows =
                    CSVFormat.RFC4180.parse(new StringReader(text(table))).getRecords();
            assertThat(rows).hasSize(1);
            assertThat(rows.get(0).toList()).containsExactly(word.toString(), "", "z");
        }
    }

    private static String field(CsvTable table) {
        return text(table);
    }

    private static String text(CsvTable table) {
        return new String(table.toBytes(), StandardCharsets.UTF_8);
    }
}
