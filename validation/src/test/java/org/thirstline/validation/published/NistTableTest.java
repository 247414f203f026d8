package org.thirstline.validation.published;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The page of certified digits is what the fits give: {@code -Dthirstline.regenerate=true} writes it. */
class NistTableTest {

    private static final Path PAGE = Path.of("../docs/nist-least-squares.md");

    /** The last digit can turn with the processor's exponential; what is reached cannot. */
    private static final int TURN = 1;

    @Test
    void theCommittedDigitsAreThoseOfTheFits() throws IOException {
        if (Boolean.getBoolean("thirstline.regenerate")) {
            Files.writeString(PAGE, NistTable.page());
        }
        List<NistTable.Row> committed = Files.readAllLines(PAGE).stream()
                .filter(line -> line.matches("\\| \\w+ \\| (far|near).*"))
                .map(NistTable.Row::parse)
                .toList();
        List<NistTable.Row> computed = NistTable.rows();
        assertThat(committed).hasSameSizeAs(computed);
        for (int i = 0; i < computed.size(); i++) {
            NistTable.Row row = computed.get(i);
            assertThat(committed.get(i).problem() + committed.get(i).start()).isEqualTo(row.problem() + row.start());
            assertThat(committed.get(i).reached()).as(row.line()).isEqualTo(row.reached());
            assertThat(Math.abs(committed.get(i).parameters() - row.parameters()))
                    .as(row.line())
                    .isLessThanOrEqualTo(TURN);
            assertThat(Math.abs(committed.get(i).deviations() - row.deviations()))
                    .as(row.line())
                    .isLessThanOrEqualTo(TURN);
        }
    }

    @Test
    void allIsReachedFromBothStartsButWhatThePageExplains() {
        assertThat(NistTable.rows())
                .filteredOn(row -> !row.reached())
                .extracting(row -> row.problem() + ", " + row.start())
                .containsExactly("BoxBOD, far", "Lanczos1, far", "Lanczos1, near");
    }
}
