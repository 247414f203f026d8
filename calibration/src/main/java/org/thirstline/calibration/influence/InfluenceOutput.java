package org.thirstline.calibration.influence;

/** What is asked about a stand. Yields of years in which the stand is dead, or never emerges, count as nothing. */
public enum InfluenceOutput {
    /** Mean harvest. */
    MEAN_HARVEST("mean_harvest", "mean harvest", "Mg/ha", "Mean harvested dry matter of full-grown years"),
    /** Mean drought penalty. */
    DROUGHT_PENALTY(
            "mean_drought_penalty",
            "mean drought penalty",
            "Mg/ha",
            "Mean harvest lost to lack of water in these years"),
    /** Harvest of the driest year. */
    DRIEST_YEAR_HARVEST(
            "driest_year_harvest",
            "harvest of the driest year",
            "Mg/ha",
            "Harvested dry matter of the full-grown year with the largest rainfall deficit"),
    /** Spread between years. */
    HARVEST_SPREAD(
            "harvest_spread",
            "spread between years",
            "Mg/ha",
            "Standard deviation of harvested dry matter between full-grown years"),
    /** First harvests. */
    FIRST_HARVESTS(
            "first_harvests", "harvest of the first two years", "Mg/ha", "Harvested dry matter of stand ages 1 and 2"),
    /** Moisture. */
    HARVEST_MOISTURE(
            "mean_harvest_moisture",
            "moisture at harvest",
            "% wet basis",
            "Mean moisture at harvest of full-grown years, wet basis"),
    /** Water use. */
    WATER_USE(
            "mean_water_use",
            "water use of the season",
            "mm",
            "Mean transpiration, soil evaporation and interception of the growing season in these years");

    private final String key;
    private final String words;
    private final String unit;
    private final String meaning;

    InfluenceOutput(String key, String words, String unit, String meaning) {
        this.key = key;
        this.words = words;
        this.unit = unit;
        this.meaning = meaning;
    }

    /** Returns the name in tables. */
    public String key() {
        return key;
    }

    /** Returns what it is, as in a sentence. */
    public String words() {
        return words;
    }

    /** Returns its SI unit as text. */
    public String unit() {
        return unit;
    }

    /** Returns what it means. */
    public String meaning() {
        return meaning;
    }
}
