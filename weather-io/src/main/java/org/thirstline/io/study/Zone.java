package org.thirstline.io.study;

import java.util.OptionalDouble;
import org.thirstline.model.soil.SoilProfile;

/**
 * A part of the field with its own soil. Immutable and thread-safe.
 *
 * @param name what people call it
 * @param areaHa its area [ha], if the study says
 * @param soil the soil under it, with the factors below already in it
 * @param availableWaterFactor factor on its available water that the study gives, 1 if none
 * @param depthFactor factor on its depth that the study gives, 1 if none
 */
public record Zone(
        String name, OptionalDouble areaHa, SoilProfile soil, double availableWaterFactor, double depthFactor) {

    /** Takes a soil as it is described, without factors from a calibration. */
    public Zone(String name, OptionalDouble areaHa, SoilProfile soil) {
        this(name, areaHa, soil, 1.0, 1.0);
    }
}
