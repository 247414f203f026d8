package org.thirstline.io.climate;

import java.util.List;
import org.thirstline.model.climate.MonthlyRain;
import org.thirstline.model.climate.StandardizedPrecipitation;

/**
 * Climate of a weather record at a glance. Immutable and thread-safe.
 *
 * @param firstYear first calendar year of the normals
 * @param lastYear last calendar year of the normals
 * @param months the twelve months
 * @param season the growing season as one
 * @param lastSpringFrost day of the year of the last frost, by the share of years that have it earlier
 * @param firstAutumnFrost day of the year of the first frost, by the share of years that have it earlier
 * @param growingSeasonDays mean days between them
 * @param frostYears whole years behind the frost dates
 * @param rain monthly rain, unknown where more than five days were filled
 * @param precipitationIndex standardized precipitation index of three months
 */
public record ClimateSummary(
        int firstYear,
        int lastYear,
        List<ClimateNormal> months,
        ClimateNormal season,
        List<FrostDate> lastSpringFrost,
        List<FrostDate> firstAutumnFrost,
        double growingSeasonDays,
        int frostYears,
        MonthlyRain rain,
        StandardizedPrecipitation precipitationIndex) {

    /** Copies the lists. */
    public ClimateSummary {
        months = List.copyOf(months);
        lastSpringFrost = List.copyOf(lastSpringFrost);
        firstAutumnFrost = List.copyOf(firstAutumnFrost);
    }

    /**
     * Mean of a month or season.
     *
     * @param name month as two digits, or {@code season}
     * @param tminC mean minimum temperature [°C]
     * @param tmaxC mean maximum temperature [°C]
     * @param rainMm mean total of rain [mm]
     * @param solarMjM2 mean radiation [MJ m⁻² d⁻¹]
     * @param et0Mm mean total of reference evapotranspiration [mm]
     * @param years years that are whole in the record
     * @param measuredRainPct share of rain days that were measured [%]
     */
    public record ClimateNormal(
            String name,
            double tminC,
            double tmaxC,
            double rainMm,
            double solarMjM2,
            double et0Mm,
            int years,
            double measuredRainPct) {}

    /**
     * A frost date by probability.
     *
     * @param sharePct share of years that have the frost on that day or earlier [%]
     * @param dayOfYear day of the year
     */
    public record FrostDate(int sharePct, double dayOfYear) {}
}
