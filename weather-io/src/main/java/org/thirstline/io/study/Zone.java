package org.thirstline.io.study;

import java.util.OptionalDouble;
import org.thirstline.model.soil.SoilProfile;

/**
 * A part of the field with its own soil. Immutable and thread-safe.
 *
 * @param name what people call it
 * @param areaHa its area [ha], if the study says
 * @param soil the soil under it
 */
public record Zone(String name, OptionalDouble areaHa, SoilProfile soil) {}
