package org.thirstline.validation.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class LarkmoorPlotsTest {

    static final long SEED = 20_260_102L;

    private static final Path STUDY = Path.of("../docs/examples/larkmoor/study.yaml");

    @Test
    void theCommittedPlotsAreWhatTheGeneratorMakes() throws IOException {
        String committed = Files.readString(STUDY.resolveSibling("plots.csv"));
        assertThat(new LarkmoorPlots(SEED).table(STUDY).equals(committed))
                .as("docs/examples/larkmoor/plots.csv equals the generator's output")
                .isTrue();
        assertThat(committed)
                .startsWith("# Larkmoor field station: invented place")
                .contains("# invented: true");
    }

    @Test
    void anotherSeedGivesOtherPlots() {
        assertThat(new LarkmoorPlots(1L).table(STUDY)).isNotEqualTo(new LarkmoorPlots(2L).table(STUDY));
    }
}
