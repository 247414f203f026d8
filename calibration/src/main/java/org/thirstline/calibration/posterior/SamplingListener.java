package org.thirstline.calibration.posterior;

import java.util.function.Supplier;

/** Told after every block of generations how far the sampling is. Called by one thread at a time. */
@FunctionalInterface
public interface SamplingListener {

    /** Listens to nothing and never stops. */
    SamplingListener NONE = (done, total, state) -> true;

    /**
     * Takes note of progress.
     *
     * @param generationsDone generations done since the very start
     * @param generationsTotal generations when all is done
     * @param state takes a snapshot to save, when asked
     * @return whether to go on; if not, sampling ends here and can be continued later
     */
    boolean advanced(long generationsDone, long generationsTotal, Supplier<SamplerState> state);
}
