package org.thirstline.io.study;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A folder with the files that test studies refer to. */
final class StudyFolder {

    private final Path folder;

    StudyFolder(Path folder) {
        this.folder = folder;
        for (String name : new String[] {"weather.csv", "later.csv", "plots.csv"}) {
            write(name, "");
        }
    }

    /** Copies a test resource into the folder. */
    Path copy(String resource) {
        return write(resource, text(resource));
    }

    Path write(String name, String text) {
        try {
            return Files.writeString(folder.resolve(name), text);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static String text(String resource) {
        try (InputStream stream = StudyFolder.class.getResourceAsStream(resource)) {
            if (stream == null) {
                throw new IllegalStateException(resource);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
