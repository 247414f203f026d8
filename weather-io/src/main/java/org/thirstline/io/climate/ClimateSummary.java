package org.thirstline.io.climate;

import java.util.List;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.StandardizedPrecipitation;

/**
 * Climate of a weather record at a glance. Immutable and thread-safe.
 *
 * @param firstYear first calendar year asked for
 * @param lastYear last calendar year asked for
 * @param southern whether growing seasons span the turn of the year
 * @param months normals of the twelve months
 * @param season normals of the growing season as one
 * @param years frost and growth in each whole year
 * @param lastSpringFrost day of the last frost, by the share of years that have it earlier or none
 * @param firstAutumnFrost day of the first frost, by the share of years that have it by then
 * @param rain monthly rain of the whole record, unknown where more than five days were filled
 * @param indices standardized precipitation index, from the shortest to the longest scale
 */
public record ClimateSummary(
        int firstYear,
        int lastYear,
        boolean southern,
        List<ClimateNormal> months,
        ClimateNormal season,
        List<YearSeason> years,
        List<FrostDate> lastSpringFrost,
        List<FrostDate> firstAutumnFrost,
        MonthlyRain rain,
        List<StandardizedPrecipitation> indices) {

    /** Copies the lists. */
    public ClimateSummary {
        months = List.copyOf(months);
        years = List.copyOf(years);
        lastSpringFrost = List.copyOf(lastSpringFrost);
        firstAutumnFrost = List.copyOf(firstAutumnFrost);
        indices = List.copyOf(indices);
    }

    /**
     * A frost date by probability.
     *
     * @param sharePct share of years [%]
     * @param day day of the year, from 1 January or 1 July; NaN where that share of years is beyond those with frost
     */
    public record FrostDate(int sharePct, double day) {}

    /** Returns the mean days between last and first frost over the years with both, NaN if there is none. */
    public double meanFrostFreeDays() {
        return years.stream()
                .mapToDouble(YearSeason::frostFreeDays)
                .filter(days -> !Double.isNaN(days))
                .average()
                .orElse(Double.NaN);
    }

    /** Returns the number of years with frost on both sides of summer. */
    public int yearsWithBothFrosts() {
        return (int) years.stream()
                .filter(year -> !Double.isNaN(year.frostFreeDays()))
                .count();
    }

    /** Returns the mean days of the growing season by temperature, NaN if no year is whole. */
    public double meanGrowingDays() {
        return years.stream().mapToInt(YearSeason::growingDays).average().orElse(Double.NaN);
    }
}
