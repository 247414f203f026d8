package org.thirstline.io.crop;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.thirstline.io.text.DocumentReader;
import org.thirstline.io.text.InputFileError;
import org.thirstline.io.text.Nearest;
import org.thirstline.model.error.InputException;

/** Finds and reads crop files. */
public final class CropFiles {

    private static final Map<String, String> BUNDLED = bundledResources();

    /** Each is read once; they do not change. */
    private static final Map<String, CropFile> READ = new ConcurrentHashMap<>();

    private CropFiles() {}

    private static Map<String, String> bundledResources() {
        Map<String, String> resources = new LinkedHashMap<>();
        resources.put("giant miscanthus", "giant-miscanthus.yaml");
        resources.put("switchgrass", "switchgrass.yaml");
        return resources;
    }

    /** Returns the names of the crops that come with the program. */
    public static List<String> names() {
        return List.copyOf(BUNDLED.keySet());
    }

    /** Returns whether a crop of this name comes with the program. */
    public static boolean isBundled(String name) {
        return BUNDLED.containsKey(normalised(name));
    }

    /**
     * Returns a crop that comes with the program.
     *
     * @throws InputException if there is none of this name
     */
    public static CropFile bundled(String name) {
        String resource = Optional.ofNullable(BUNDLED.get(normalised(name)))
                .orElseThrow(() -> new InputException(
                        InputFileError.NOT_ALLOWED, name, String.join(", ", names()), Nearest.hint(name, names())));
        return READ.computeIfAbsent(
                resource, file -> CropFileReader.read(file, DocumentReader.parse(file, textOf(file))));
    }

    /**
     * Reads a crop file, YAML or JSON. It may be based on a crop that comes with the program and hold only what differs.
     *
     * @throws InputException with file, line and key if anything in it cannot be used
     */
    public static CropFile read(Path path) {
        return CropFileReader.read(path.toString(), DocumentReader.read(path));
    }

    private static String normalised(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    private static String textOf(String resource) {
        try (InputStream stream = CropFiles.class.getResourceAsStream(resource)) {
            if (stream == null) {
                throw new IllegalStateException("missing resource " + resource);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
