package org.thirstline.model.engine;

import java.time.LocalDate;
import java.util.List;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.crop.HarvestRule;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;

/**
 * Runs of one stand as it is, over one weather, with one crop and soil after another: what follows from the weather alone is worked out
 * once, no twin is run, and only the days asked for are kept. Immutable and thread-safe.
 */
public final class RepeatedRuns {

    /** Parameters that {@link CropWeather} depends on; a test changes every parameter in turn. */
    private static final List<CropParameter> OF_THE_WEATHER = List.of(
            CropParameter.EMERGENCE_BASE,
            CropParameter.LEAF_BASE,
            CropParameter.LEAF_UPPER,
            CropParameter.PAR_FRACTION,
            CropParameter.GROWTH_MIN,
            CropParameter.GROWTH_OPTIMUM_LOW,
            CropParameter.GROWTH_OPTIMUM_HIGH,
            CropParameter.GROWTH_MAX,
            CropParameter.LIVING_MOISTURE,
            CropParameter.DRYING_RATE,
            CropParameter.DRYING_RATE_PER_ET0,
            CropParameter.REWETTING);

    private final DailyDrivers drivers;
    private final FieldConditions field;
    private final int maxFilledDays;
    private final int[] watchedDays;
    private final CropWeather cropWeather;
    private final YearTable table;

    /**
     * Prepares runs.
     *
     * @param drivers site and weather; no longer than it need be, for speed
     * @param field stand and management, with the crop and the soil that most runs are near
     * @param maxFilledDays days of a growth year on which rain, or temperature, may be filled from the climatology before its yields are
     *     left out [d]
     * @param watchedDays indices of the days to keep, in ascending order; copied
     */
    public RepeatedRuns(DailyDrivers drivers, FieldConditions field, int maxFilledDays, int[] watchedDays) {
        this.drivers = drivers;
        this.field = field;
        this.maxFilledDays = maxFilledDays;
        this.watchedDays = watchedDays.clone();
        cropWeather = new CropWeather(drivers, field.crop());
        table = new YearTable(drivers.site(), drivers.weather(), field.season(), field.harvest());
    }

    /**
     * Returns the day on which a growth year's stand is cut at the latest: no weather after it changes the year's yield.
     *
     * @param site where
     * @param growthYear which year
     * @param harvest when it is cut
     */
    public static LocalDate lastHarvestDay(Site site, int growthYear, HarvestRule harvest) {
        return YearTable.harvestUntil(site, growthYear, harvest);
    }

    /**
     * Runs the stand.
     *
     * @param crop the grass
     * @param soil the soil
     */
    public RepeatedRun run(CropParameters crop, SoilProfile soil) {
        FieldConditions changed = new FieldConditions(
                crop,
                field.stand(),
                soil,
                field.harvest(),
                field.stubbleM(),
                field.pickUpShare(),
                field.irrigation(),
                field.season(),
                field.co2Ppm());
        CropWeather weather = sharesWeather(crop) ? cropWeather : new CropWeather(drivers, crop);
        PairedRuns runs = new PairedRuns(drivers, changed, maxFilledDays, weather, table);
        StandSimulation simulation = runs.simulation(Scenario.ACTUAL);
        if (watchedDays.length == 0) {
            return new RepeatedRun(runs.records(simulation.run()), null);
        }
        WatchedDays watched = new WatchedDays(watchedDays, soil, simulation.gramsPerLeafArea());
        List<SeasonRecord> seasons = runs.records(simulation.observedBy(watched).run());
        return new RepeatedRun(seasons, watched);
    }

    private boolean sharesWeather(CropParameters crop) {
        for (CropParameter parameter : OF_THE_WEATHER) {
            if (crop.get(parameter) != field.crop().get(parameter)) {
                return false;
            }
        }
        return true;
    }
}
