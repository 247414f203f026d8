package org.thirstline.io.study;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import org.thirstline.io.text.InputFileError;
import org.thirstline.model.error.InputException;

/** Writes a commented study to start from. */
public final class NewStudy {

    private static final String STUDY = "study.yaml";
    private static final String README = "README.md";
    private static final String TEMPLATE = "starter-study.yaml";

    private NewStudy() {}

    /**
     * Writes the study and a page about its fields into a folder, which is made if it does not exist.
     *
     * @return the files written, the study first
     * @throws InputException if one of them exists already; then nothing is written
     */
    public static List<Path> write(Path folder) {
        List<Path> files = List.of(folder.resolve(STUDY), folder.resolve(README));
        for (Path file : files) {
            if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
                throw new InputException(InputFileError.FILE_EXISTS, file);
            }
        }
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new InputException(InputFileError.FILE_EXISTS, folder);
        }
        try {
            Files.createDirectories(folder);
            Files.writeString(files.get(0), template());
            Files.writeString(files.get(1), StudyReference.markdown());
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return files;
    }

    private static String template() throws IOException {
        try (InputStream stream = NewStudy.class.getResourceAsStream(TEMPLATE)) {
            if (stream == null) {
                throw new IllegalStateException("missing resource " + TEMPLATE);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
