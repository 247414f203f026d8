package org.thirstline.io.weather;

/**
 * Radiation estimated from the temperature range, held against measured radiation on days that have both. Immutable.
 *
 * @param coefficient k_Rs of FAO-56 eq. 50 that was used [°C⁻⁰·⁵]
 * @param fitted whether it was fitted to these days
 * @param days number of days with both
 * @param rootMeanSquareError of the estimates [MJ m⁻² d⁻¹]
 * @param bias mean of estimated less measured [MJ m⁻² d⁻¹]
 */
public record RadiationSkill(double coefficient, boolean fitted, int days, double rootMeanSquareError, double bias) {}
