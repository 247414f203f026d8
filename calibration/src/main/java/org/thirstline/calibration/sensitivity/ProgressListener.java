package org.thirstline.calibration.sensitivity;

/** Told how many model runs are done. Called by one thread at a time. */
@FunctionalInterface
public interface ProgressListener {

    /** Listens to nothing. */
    ProgressListener NONE = (done, total) -> {};

    /**
     * Takes note of progress.
     *
     * @param done model runs done
     * @param total model runs in all
     */
    void advanced(int done, int total);
}
