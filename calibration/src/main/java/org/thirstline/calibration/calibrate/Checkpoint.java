package org.thirstline.calibration.calibrate;

import java.util.Optional;
import org.thirstline.calibration.posterior.SamplerState;

/** Where a sampling is kept so that it can go on after an interruption. */
public interface Checkpoint {

    /** Keeps nothing. */
    Checkpoint NONE = new Checkpoint() {
        @Override
        public Optional<SamplerState> saved() {
            return Optional.empty();
        }

        @Override
        public void save(SamplerState state) {
            // Nothing is kept.
        }
    };

    /** Returns the state to go on from, if there is one. */
    Optional<SamplerState> saved();

    /**
     * Keeps a state in the place of the one before, whole or not at all.
     *
     * @param state the state
     */
    void save(SamplerState state);
}
