package org.thirstline.charts;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.result.DailyResults;
import org.thirstline.model.result.DailyVariable;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.soil.SoilLayer;
import org.thirstline.model.soil.SoilProfile;

/**
 * One season day by day. Immutable and thread-safe.
 *
 * @param zone name of the zone; may be empty
 * @param season its record
 * @param daily every day of the run it belongs to
 * @param soil the soil of that run
 * @param seasonClass how wet it was, if known
 */
public record SeasonView(
        String zone,
        SeasonRecord season,
        DailyResults daily,
        SoilProfile soil,
        @Nullable SeasonClass seasonClass) {

    private static final int DAYS_BEFORE = 21;
    private static final int DAYS_AFTER = 35;

    /** Returns the days to show: the canopy's life and a few weeks on both sides, as far as there are days. */
    MonthScale scale() {
        LocalDate emergence = season.dates().emergence();
        LocalDate end = season.dates().canopyEnd();
        LocalDate from = emergence == null ? LocalDate.of(season.growthYear(), 1, 1) : emergence.minusDays(DAYS_BEFORE);
        LocalDate to = end == null ? from.plusDays(364) : end.plusDays(DAYS_AFTER);
        LocalDate last = daily.date(daily.days() - 1);
        LocalDate start = from.isBefore(daily.start()) ? daily.start() : from;
        LocalDate stop = to.isAfter(last) ? last : to;
        return new MonthScale(daily.start(), start, stop.isBefore(start) ? start : stop);
    }

    double at(DailyVariable variable, int day) {
        return daily.at(variable, day);
    }

    /** Returns the water of a layer as a share of what plants can take: 0 at wilting point, 1 at field capacity. */
    double availableShare(int layer, int day) {
        SoilLayer part = soil.layers().get(layer);
        double dry = part.wiltingPoint() * part.thicknessM() * 1000.0;
        return (daily.soilWaterMm(layer, day) - dry) / part.availableWaterMm();
    }

    /** Returns whether the canopy was green on a day. */
    boolean isGreen(int day) {
        LocalDate date = daily.date(day);
        LocalDate emergence = season.dates().emergence();
        LocalDate end = season.dates().canopyEnd();
        return emergence != null && !date.isBefore(emergence) && (end == null || date.isBefore(end));
    }

    /** Returns whether the canopy was green on a day and had less than nine tenths of the water it could have used. */
    boolean shortOfWater(int day) {
        return isGreen(day) && at(DailyVariable.WATER_FACTOR, day) < 0.9;
    }
}
