package org.thirstline.calibration.posterior;

import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * A parameter to sample. Immutable and thread-safe.
 *
 * @param name what it is, without line breaks
 * @param prior what is believed of it before the data; its bounds are never left
 */
public record SampledParameter(String name, Prior prior) {

    /** Refuses a name that would break a saved state. */
    public SampledParameter {
        if (name.isBlank() || name.chars().anyMatch(Character::isISOControl)) {
            throw new InputException(ModelError.INCONSISTENT, "a parameter's name must be one line of text");
        }
    }
}
