package org.thirstline.calibration.sweep;

import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.weather.DailyDrivers;

/**
 * The weather of one or more cells, ready for runs. Thread-safe.
 *
 * @param drivers weather and place
 * @param runs runs over it
 */
record CellWeather(DailyDrivers drivers, SeasonRuns runs) {}
