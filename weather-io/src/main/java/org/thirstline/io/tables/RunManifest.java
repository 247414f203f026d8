package org.thirstline.io.tables;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.thirstline.io.text.JsonText;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What is needed to repeat a run: versions, inputs with checksums, options. Timings stand last; all else is the same for
 * the same run. Immutable and thread-safe.
 *
 * @param command the command that ran
 * @param versions versions by name, the program's own first
 * @param inputs files that were read
 * @param options options that could change the results, by name
 * @param timingsS seconds by step
 */
public record RunManifest(
        String command,
        Map<String, String> versions,
        List<Input> inputs,
        Map<String, String> options,
        Map<String, Double> timingsS) {

    /** File name inside the result folder. */
    public static final String FILE = "run.json";

    /** Copies the collections, in their order. */
    public RunManifest {
        versions = ordered(versions);
        inputs = List.copyOf(inputs);
        options = ordered(options);
        timingsS = ordered(timingsS);
    }

    /**
     * A file that was read.
     *
     * @param path its path, relative to the study where it can be
     * @param bytes its size
     * @param sha256 its checksum
     */
    public record Input(String path, long bytes, String sha256) {

        /** Reads size and checksum of a file; its path is given relative to a folder, with slashes on every machine. */
        public static Input of(Path file, Path relativeTo) {
            Path absolute = file.toAbsolutePath().normalize();
            Path base = relativeTo.toAbsolutePath().normalize();
            boolean related = Objects.equals(absolute.getRoot(), base.getRoot());
            String path =
                    (related ? base.relativize(absolute) : absolute).toString().replace('\\', '/');
            try {
                return new Input(path, Files.size(file), Sha256.of(file));
            } catch (IOException failed) {
                throw new UncheckedIOException(failed);
            }
        }
    }

    /** Returns the text of {@code run.json}. */
    public String text() {
        ObjectNode manifest = JsonNodeFactory.instance.objectNode();
        manifest.put("command", command);
        ObjectNode versionNode = manifest.putObject("versions");
        versions.forEach(versionNode::put);
        ArrayNode inputNode = manifest.putArray("inputs");
        for (Input input : inputs) {
            ObjectNode node = inputNode.addObject();
            node.put("path", input.path());
            node.put("bytes", input.bytes());
            node.put("sha256", input.sha256());
        }
        ObjectNode optionNode = manifest.putObject("options");
        options.forEach(optionNode::put);
        ObjectNode timingNode = manifest.putObject("timings_s");
        timingsS.forEach((step, seconds) -> timingNode.put(step, Math.round(seconds * 1000.0) / 1000.0));
        return JsonText.of(manifest);
    }

    private static <V> Map<String, V> ordered(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
