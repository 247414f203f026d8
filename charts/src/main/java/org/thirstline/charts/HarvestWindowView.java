package org.thirstline.charts;

import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.SeasonRecord;

/**
 * The months between the end of the canopy and the cut. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param season its record, with a canopy end
 * @param daily every day of the run it belongs to
 * @param moistureLimitPct moisture over which bales are at risk, or at which the harvest rule cuts [% wet basis]
 */
public record HarvestWindowView(String zone, SeasonRecord season, DailyResults daily, double moistureLimitPct) {}
