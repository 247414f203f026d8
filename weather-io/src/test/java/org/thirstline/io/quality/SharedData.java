package org.thirstline.io.quality;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/**
 * Finds the folder of real files, which are no part of the project: system property {@code thirstline.data}, environment variable
 * {@code THIRSTLINE_DATA}, or {@code ../shared/data} beside the repository.
 */
final class SharedData {

    private SharedData() {}

    /** Returns a real file; the test is skipped, and says so, where it is absent. */
    static Path file(String name) {
        Path file = folder().resolve(name);
        Assumptions.assumeTrue(
                Files.isReadable(file),
                () -> "skipped: no real weather file " + file
                        + "; set -Dthirstline.data or THIRSTLINE_DATA to the folder");
        return file;
    }

    private static Path folder() {
        String property = System.getProperty("thirstline.data");
        String environment = System.getenv("THIRSTLINE_DATA");
        String stated = property != null ? property : environment;
        return stated != null
                ? Path.of(stated)
                : repository().resolveSibling("shared").resolve("data");
    }

    private static Path repository() {
        Path here = Path.of("").toAbsolutePath();
        while (here.getParent() != null && !Files.exists(here.resolve("thirstline.cmd"))) {
            here = here.getParent();
        }
        return here;
    }
}
