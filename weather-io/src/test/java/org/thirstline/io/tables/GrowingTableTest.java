package org.thirstline.io.tables;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.thirstline.io.text.InputErrors;

/** Tables written in parts, cut short at any byte and continued. */
class GrowingTableTest {

    private static final String HEADER = "cell,year,note\n";

    private static final List<String> PARTS = List.of(
            "a,1,x\na,2,y\n",
            "\"b, north\",1,\"says \"\"no\"\"\"\n",
            "ab,1,\"two\nlines\"\n",
            "a b,1,\na b,2,\n",
            "ö,1,ß\n");

    private static final String WHOLE = HEADER + String.join("", PARTS);

    @TempDir
    private Path folder;

    private Path place;

    @BeforeEach
    void place() {
        place = folder.resolve("results/table.csv");
    }

    private GrowingTable open(boolean resume) {
        return GrowingTable.open(place, "input 1", bytes(HEADER), resume);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private void write(boolean resume) throws IOException {
        try (GrowingTable table = open(resume)) {
            PARTS.stream().skip(table.parts()).forEach(part -> table.append(bytes(part)));
            table.finish();
        }
    }

    private List<String> names() throws IOException {
        try (var files = Files.list(place.getParent())) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void appearsWhole() throws IOException {
        write(false);

        assertThat(place).hasContent(WHOLE);
        assertThat(names()).containsExactly("table.csv");
    }

    @Test
    void isTheSameWhereverItWasCutShort() throws IOException {
        byte[] whole = bytes(WHOLE);
        for (int length = 1; length <= whole.length; length++) {
            open(true).close();
            Files.write(place.resolveSibling("table.csv.part"), Arrays.copyOf(whole, length));

            write(true);

            assertThat(Files.readAllBytes(place)).as("cut to %d bytes", length).isEqualTo(whole);
            Files.delete(place);
        }
    }

    @Test
    void keepsEveryPartThatAnotherFollows() throws IOException {
        open(false).close();
        Files.write(place.resolveSibling("table.csv.part"), bytes(HEADER + PARTS.get(0) + PARTS.get(1) + PARTS.get(2)));

        try (GrowingTable table = open(true)) {
            assertThat(table.parts()).isEqualTo(2);
        }
        assertThat(place.resolveSibling("table.csv.part")).hasContent(HEADER + PARTS.get(0) + PARTS.get(1));
    }

    @Test
    void doesNotOverwriteUnfinishedWorkUnasked() throws IOException {
        try (GrowingTable table = open(false)) {
            table.append(bytes(PARTS.get(0)));
        }

        InputErrors.assertRefused(() -> open(false), TableError.UNFINISHED, "table.csv.part", "--resume");
        assertThat(place.resolveSibling("table.csv.part")).hasContent(HEADER + PARTS.get(0));
    }

    @Test
    void doesNotMixResultsOfDifferentInput() throws IOException {
        try (GrowingTable table = open(false)) {
            table.append(bytes(PARTS.get(0)));
        }

        InputErrors.assertRefused(
                () -> GrowingTable.open(place, "input 2", bytes(HEADER), true), TableError.OF_OTHER_INPUT, "anew");
    }
}
