package org.thirstline.calibration.fit;

/**
 * One point of a profile. Immutable and thread-safe.
 *
 * @param value of the parameter
 * @param residualSumOfSquares smallest sum of squares with the parameter held there
 * @param signedRoot root of the rise of the sum of squares over the residual variance, negative below the best value; a straight line
 *     in the value where linear theory holds
 */
public record ProfilePoint(double value, double residualSumOfSquares, double signedRoot) {}
