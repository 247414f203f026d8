package org.thirstline.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.thirstline.calibration.calibrate.Checkpoint;
import org.thirstline.calibration.posterior.SamplerState;
import org.thirstline.io.tables.ResultFolder;
import org.thirstline.model.error.InputException;

/** Keeps a sampling in the result folder, every few seconds; each state replaces the one before as a whole. Confined to one thread. */
final class SamplerFile implements Checkpoint {

    static final String FILE = "sampler-state.txt";

    private static final long NANOS_BETWEEN = 3_000_000_000L;

    private final Path folder;
    private final boolean resume;
    private long lastNanos = System.nanoTime();

    SamplerFile(Path folder, boolean resume) {
        this.folder = folder;
        this.resume = resume;
    }

    /** Returns whether the last state was saved long enough ago. */
    boolean isDue() {
        return System.nanoTime() - lastNanos >= NANOS_BETWEEN;
    }

    /** Returns whether there is nothing to go on from although somebody asked for it: interrupted too early, or another folder. */
    boolean misses() {
        return resume && !Files.isRegularFile(folder.resolve(FILE));
    }

    @Override
    public Optional<SamplerState> saved() {
        Path file = folder.resolve(FILE);
        if (!resume || misses()) {
            return Optional.empty();
        }
        try {
            return Optional.of(SamplerState.decode(Files.readAllLines(file, StandardCharsets.UTF_8)));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InputException refused) {
            throw refused.at(file.toString());
        }
    }

    @Override
    public void save(SamplerState state) {
        String text = String.join("\n", state.encode()) + "\n";
        ResultFolder.write(folder.resolve(FILE), text.getBytes(StandardCharsets.UTF_8));
        lastNanos = System.nanoTime();
    }
}
