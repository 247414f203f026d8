package org.thirstline.io.tables;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.stream.Stream;

/**
 * A set of result files that appears whole or not at all. Files are written into a hidden folder beside the result
 * folder; {@link #publish} moves them into place, and takes everything back if that fails half-way. Files of the result
 * folder that the set does not hold stay as they are. Closing without publishing leaves no trace. Confined to one run.
 *
 * <pre>{@code
 * try (ResultFolder results = ResultFolder.open(folder)) {
 *     table.writeTo(results.file("seasons.csv"));
 *     results.publish();
 * }
 * }</pre>
 */
public final class ResultFolder implements AutoCloseable {

    private final Path target;
    private final Path staging;
    private final Path replaced;
    private boolean restored = true;

    /** A file in place and, where there was one before, its former self. */
    private record Moved(Path file, Path former) {}

    private ResultFolder(Path target, Path staging, Path replaced) {
        this.target = target;
        this.staging = staging;
        this.replaced = replaced;
    }

    /** Starts a set of results for a folder, which need not exist. */
    public static ResultFolder open(Path folder) {
        Path target = folder.toAbsolutePath().normalize();
        String mark = "." + target.getFileName() + "." + ProcessHandle.current().pid() + "-" + System.nanoTime();
        Path staging = target.resolveSibling(mark + ".new");
        try {
            Files.createDirectories(staging);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return new ResultFolder(target, staging, target.resolveSibling(mark + ".old"));
    }

    /** Returns where to write a file of the set, e.g. {@code charts/waterfall.svg}; its folder exists. */
    public Path file(String name) {
        Path file = staging.resolve(name).normalize();
        if (!file.startsWith(staging) || file.equals(staging)) {
            throw new IllegalArgumentException(name + " is not inside the result folder");
        }
        try {
            Files.createDirectories(file.getParent() == null ? staging : file.getParent());
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        return file;
    }

    /** Returns the files written so far by name, sorted. */
    public List<String> names() {
        return filesUnder(staging).stream()
                .map(file -> staging.relativize(file).toString().replace('\\', '/'))
                .sorted()
                .toList();
    }

    /** Moves the files into place. */
    public void publish() throws IOException {
        if (Files.notExists(target)) {
            move(staging, target);
            return;
        }
        Deque<Moved> moved = new ArrayDeque<>();
        try {
            for (Path file : filesUnder(staging)) {
                Path name = staging.relativize(file);
                Path place = target.resolve(name);
                Files.createDirectories(parent(place));
                Path former = replaced.resolve(name);
                if (Files.exists(place)) {
                    Files.createDirectories(parent(former));
                    move(place, former);
                }
                moved.push(new Moved(place, former));
                move(file, place);
            }
        } catch (IOException | RuntimeException failed) {
            takeBack(moved, failed);
            throw failed;
        }
    }

    private void takeBack(Deque<Moved> moved, Exception cause) {
        for (Moved file : moved) {
            try {
                Files.deleteIfExists(file.file());
                if (Files.exists(file.former())) {
                    move(file.former(), file.file());
                }
            } catch (IOException failed) {
                restored = false;
                cause.addSuppressed(failed);
            }
        }
    }

    @Override
    public void close() {
        delete(staging);
        if (restored) {
            delete(replaced);
        }
    }

    /** Writes one file beside its place, then moves it there. */
    public static void write(Path file, byte[] bytes) {
        Path place = file.toAbsolutePath();
        Path beside = place.resolveSibling("." + place.getFileName() + "." + System.nanoTime() + ".new");
        try {
            Files.createDirectories(parent(place));
            try {
                Files.write(beside, bytes);
                move(beside, place);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static Path parent(Path file) {
        Path parent = file.getParent();
        return parent == null ? Path.of("") : parent;
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException unsupported) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static List<Path> filesUnder(Path folder) {
        try (Stream<Path> paths = Files.walk(folder)) {
            return paths.filter(path -> !Files.isDirectory(path)).sorted().toList();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private static void delete(Path folder) {
        if (Files.notExists(folder)) {
            return;
        }
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
