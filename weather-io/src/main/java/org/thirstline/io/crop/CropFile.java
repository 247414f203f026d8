package org.thirstline.io.crop;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.error.InputException;
import org.thirstline.model.error.ModelError;

/**
 * A crop with everything that is known about its numbers. Immutable and thread-safe.
 *
 * @param name what people call it
 * @param species botanical name
 * @param parameters the numbers
 * @param notes what is known about each of them, one for every parameter
 * @param cautions what to mind when growing it
 * @param calibration how its fitted numbers came about, if it was calibrated
 */
public record CropFile(
        String name,
        String species,
        CropParameters parameters,
        Map<CropParameter, ParameterNote> notes,
        List<String> cautions,
        Optional<CropCalibration> calibration) {

    /** Copies the collections and refuses parameters without a note. */
    public CropFile {
        for (CropParameter parameter : CropParameter.values()) {
            if (!notes.containsKey(parameter)) {
                throw new InputException(ModelError.VALUE_MISSING, "note of " + parameter.key());
            }
        }
        notes = java.util.Collections.unmodifiableMap(new EnumMap<>(notes));
        cautions = List.copyOf(cautions);
    }

    /** Returns what is known about a parameter. */
    public ParameterNote note(CropParameter parameter) {
        ParameterNote note = notes.get(parameter);
        if (note == null) {
            throw new IllegalStateException(parameter.key());
        }
        return note;
    }
}
