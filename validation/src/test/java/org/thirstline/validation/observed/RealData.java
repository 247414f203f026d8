package org.thirstline.validation.observed;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The folder of real files, which are no part of the project: system property {@code thirstline.data}, environment variable
 * {@code THIRSTLINE_DATA}, or {@code ../shared/data} beside the repository.
 */
final class RealData {

    private static final String MARK = "uscrn/CRND0103_IL_Champaign_9_SW.txt";

    private RealData() {}

    static boolean isPresent() {
        return Files.isReadable(file(MARK));
    }

    static Path file(String name) {
        String property = System.getProperty("thirstline.data");
        String environment = System.getenv("THIRSTLINE_DATA");
        String stated = property != null ? property : environment;
        Path folder = stated != null
                ? Path.of(stated)
                : repository().resolveSibling("shared").resolve("data");
        return folder.resolve(name);
    }

    static List<String> lines(String name) {
        try {
            return Files.readAllLines(file(name), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Rows of a file of the project's own, without its notes and header, split into cells. */
    static List<String[]> ownRows(String name) {
        try {
            return Files.readAllLines(Path.of("src/test/resources").resolve(name)).stream()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path repository() {
        Path here = Path.of("").toAbsolutePath();
        while (here.getParent() != null && !Files.exists(here.resolve("thirstline.cmd"))) {
            here = here.getParent();
        }
        return here;
    }
}
