package org.thirstline.calibration.problem;

/**
 * A measured value that is not fitted to. Immutable and thread-safe.
 *
 * @param observation the value
 * @param reason why not
 */
public record DroppedValue(Observation observation, String reason) {}
