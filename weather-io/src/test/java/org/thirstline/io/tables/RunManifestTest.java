package org.thirstline.io.tables;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class RunManifestTest {

    /** FIPS 180-2, appendix B.1: the message "abc". */
    private static final String SHA256_OF_ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    private Path folder;

    @Test
    void checksumsAreSha256() throws IOException {
        assertThat(Sha256.of("abc".getBytes(StandardCharsets.UTF_8))).isEqualTo(SHA256_OF_ABC);
        assertThat(Sha256.of(Files.writeString(folder.resolve("f"), "abc"))).isEqualTo(SHA256_OF_ABC);
    }

    @Test
    void holdsWhatARepetitionNeeds() throws IOException {
        Path study = Files.createDirectories(folder.resolve("study"));
        Path weather = Files.writeString(
                Files.createDirectories(folder.resolve("data")).resolve("w.csv"), "abc");
        JsonNode manifest =
                new JsonMapper().readTree(manifest(study, weather, 1.23456).text());

        assertThat(manifest.propertyNames()).containsExactly("command", "versions", "inputs", "options", "timings_s");
        assertThat(manifest.get("command").asString()).isEqualTo("run");
        assertThat(manifest.get("versions").propertyNames()).containsExactly("thirstline", "java");
        JsonNode input = manifest.get("inputs").get(0);
        assertThat(input.get("path").asString()).isEqualTo("../data/w.csv");
        assertThat(input.get("bytes").asInt()).isEqualTo(3);
        assertThat(input.get("sha256").asString()).isEqualTo(SHA256_OF_ABC);
        assertThat(manifest.get("options").get("seed").asString()).isEqualTo("7");
        assertThat(manifest.get("timings_s").get("simulate").asDouble()).isEqualTo(1.235);
    }

    @Test
    void onlyTimingsDifferBetweenEqualRuns() throws IOException {
        Path weather = Files.writeString(folder.resolve("w.csv"), "abc");
        String first = manifest(folder, weather, 1).text();
        String second = manifest(folder, weather, 2).text();

        assertThat(first).isNotEqualTo(second);
        assertThat(first.substring(0, first.indexOf("timings_s")))
                .isEqualTo(second.substring(0, second.indexOf("timings_s")));
    }

    private static RunManifest manifest(Path study, Path weather, double seconds) {
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("thirstline", "0.1.0");
        versions.put("java", "17");
        return new RunManifest(
                "run",
                versions,
                List.of(RunManifest.Input.of(weather, study)),
                Map.of("seed", "7"),
                Map.of("simulate", seconds));
    }
}
