package org.thirstline.charts;

import org.thirstline.calibration.years.PenaltySplit;

/**
 * Drought penalty by year, parted. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param split the years
 */
public record PenaltySplitView(String zone, PenaltySplit split) {}
