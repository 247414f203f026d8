package org.thirstline.io.weather;

import java.time.LocalDate;

/**
 * Rain of several days measured in one. Immutable.
 *
 * @param lastDay the day it was read
 * @param days days it fell on, the last one included; 0 where the source does not say
 * @param mm what fell [mm]
 */
public record RainSum(LocalDate lastDay, int days, double mm) {}
