package org.thirstline.validation.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class LarkmoorWeatherTest {

    private static final long SEED = 20_260_101L;

    @Test
    void theCommittedWeatherIsWhatTheGeneratorMakes() throws IOException {
        String committed = Files.readString(Path.of("../docs/examples/larkmoor/weather.csv"));
        assertThat(new LarkmoorWeather(SEED).table().equals(committed))
                .as("docs/examples/larkmoor/weather.csv equals the generator's output")
                .isTrue();
        assertThat(committed).startsWith("# name: Larkmoor field station (invented place, invented weather)");
    }

    @Test
    void anotherSeedGivesOtherWeather() {
        assertThat(new LarkmoorWeather(1L).table()).isNotEqualTo(new LarkmoorWeather(2L).table());
    }
}
