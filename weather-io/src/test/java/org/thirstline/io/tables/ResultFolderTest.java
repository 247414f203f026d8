package org.thirstline.io.tables;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultFolderTest {

    @TempDir
    private Path parent;

    @Test
    void aSetAppearsWhole() throws IOException {
        Path folder = parent.resolve("deep/results");
        try (ResultFolder results = ResultFolder.open(folder)) {
            Files.writeString(results.file("seasons.csv"), "a");
            Files.writeString(results.file("charts/waterfall.svg"), "b");
            assertThat(folder).doesNotExist();
            assertThat(results.names()).containsExactly("charts/waterfall.svg", "seasons.csv");
            results.publish();
        }
        assertThat(folder.resolve("seasons.csv")).hasContent("a");
        assertThat(folder.resolve("charts/waterfall.svg")).hasContent("b");
        assertThat(children(folder.getParent())).containsExactly("results");
    }

    @Test
    void aSecondSetReplacesItsFilesAndLeavesOthers() throws IOException {
        Path folder = Files.createDirectory(parent.resolve("results"));
        Files.writeString(folder.resolve("seasons.csv"), "old");
        Files.writeString(folder.resolve("my-notes.txt"), "mine");
        try (ResultFolder results = ResultFolder.open(folder)) {
            Files.writeString(results.file("seasons.csv"), "new");
            results.publish();
        }
        assertThat(folder.resolve("seasons.csv")).hasContent("new");
        assertThat(folder.resolve("my-notes.txt")).hasContent("mine");
        assertThat(children(parent)).containsExactly("results");
    }

    @Test
    void aSetThatIsNotPublishedLeavesNoTrace() throws IOException {
        Path folder = Files.createDirectory(parent.resolve("results"));
        Files.writeString(folder.resolve("seasons.csv"), "old");
        try (ResultFolder results = ResultFolder.open(folder)) {
            Files.writeString(results.file("seasons.csv"), "half");
        }
        assertThat(folder.resolve("seasons.csv")).hasContent("old");
        assertThat(children(parent)).containsExactly("results");
    }

    /** The second file cannot take its place because a folder that is not empty stands there. */
    @Test
    void aSetThatFailsHalfWayIsTakenBack() throws IOException {
        Path folder = Files.createDirectory(parent.resolve("results"));
        Files.writeString(folder.resolve("a.csv"), "old");
        Files.writeString(folder.resolve("z"), "a file where the set has a folder");
        try (ResultFolder results = ResultFolder.open(folder)) {
            Files.writeString(results.file("a.csv"), "new");
            Files.writeString(results.file("b.csv"), "new");
            Files.writeString(results.file("z/c.csv"), "new");
            assertThatThrownBy(results::publish).isInstanceOf(IOException.class);
        }
        assertThat(folder.resolve("a.csv")).hasContent("old");
        assertThat(children(folder)).containsExactly("a.csv", "z");
        assertThat(children(parent)).containsExactly("results");
    }

    @Test
    void refusesNamesOutsideTheFolder() {
        try (ResultFolder results = ResultFolder.open(parent.resolve("results"))) {
            assertThatIllegalArgumentException().isThrownBy(() -> results.file("../seasons.csv"));
        }
    }

    @Test
    void writesOneFileBesideItsPlace() throws IOException {
        Path file = parent.resolve("sub/weather.csv");
        ResultFolder.write(file, "first".getBytes(StandardCharsets.UTF_8));
        ResultFolder.write(file, "second".getBytes(StandardCharsets.UTF_8));
        assertThat(file).hasContent("second");
        assertThat(children(file.getParent())).containsExactly("weather.csv");
    }

    private static List<String> children(Path folder) throws IOException {
        try (Stream<Path> paths = Files.list(folder)) {
            return paths.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }
}
