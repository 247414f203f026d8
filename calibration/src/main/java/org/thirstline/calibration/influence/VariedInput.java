package org.thirstline.calibration.influence;

import java.util.Optional;
import org.thirstline.calibration.sensitivity.SensitivityInput;
import org.thirstline.model.crop.CropParameter;

/**
 * A parameter that is varied, every value of its range alike. Immutable and thread-safe.
 *
 * @param key its key in crop files, or the soil's
 * @param unit its unit, "1" where there is none
 * @param standard the value of crop file and study
 * @param low lower end of its range
 * @param high upper end
 * @param published whether the range is the crop file's; otherwise it is a share of the value
 * @param parameter the parameter of the crop; absent for the soil's
 */
public record VariedInput(
        String key,
        String unit,
        double standard,
        double low,
        double high,
        boolean published,
        Optional<CropParameter> parameter) {

    /** Key of the factor on the available water of every soil layer. */
    public static final String SOIL_WATER = "soil_available_water_factor";

    VariedInput between(double newLow, double newHigh) {
        return new VariedInput(key, unit, standard, newLow, newHigh, published, parameter);
    }

    SensitivityInput sampled() {
        return SensitivityInput.between(key, low, high);
    }
}
