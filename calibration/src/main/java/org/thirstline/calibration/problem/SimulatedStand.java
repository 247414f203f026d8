package org.thirstline.calibration.problem;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thirstline.io.plots.PlotVariable;
import org.thirstline.io.study.CalibrationPlan.SoilFactor;
import org.thirstline.model.crop.CropParameter;
import org.thirstline.model.crop.CropParameters;
import org.thirstline.model.engine.FieldConditions;
import org.thirstline.model.engine.GrowthCalendar;
import org.thirstline.model.engine.SeasonRuns;
import org.thirstline.model.engine.WatchedRun;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.soil.SoilProfile;
import org.thirstline.model.weather.DailyDrivers;
import org.thirstline.model.weather.Site;

/** One stand that plots share, ready to be run with other parameters. Immutable and thread-safe. */
final class SimulatedStand {

    private static final int NOT_WATCHED = -1;

    private final Observation.StandKey key;
    private final Site site;
    private final SoilProfile soil;
    private final FieldConditions field;
    private final SeasonRuns runs;
    private final int[] days;
    private final List<Observation> observations;
    private final int[] places;
    private final int[] watched;

    /**
     * Prepares a stand.
     *
     * @param source its study
     * @param key which stand
     * @param observations what was measured on it
     * @param places where each of them stands among all observations
     */
    SimulatedStand(StudySource source, Observation.StandKey key, List<Observation> observations, int[] places) {
        this.key = key;
        this.observations = List.copyOf(observations);
        this.places = places.clone();
        site = source.study().site();
        soil = source.zone(key.zone()).soil();
        DailyDrivers drivers = source.driversFor(key.plantingYear(), observations);
        days = observations.stream()
                .filter(observation -> observation.variable().timing() == PlotVariable.Timing.DAY)
                .mapToInt(observation -> source.dayOf(drivers, observation))
                .sorted()
                .distinct()
                .toArray();
        watched = observations.stream()
                .mapToInt(observation -> observation.variable().timing() == PlotVariable.Timing.DAY
                        ? Arrays.binarySearch(days, source.dayOf(drivers, observation))
                        : NOT_WATCHED)
                .toArray();
        field = source.field(key.zone(), key.plantingYear());
        runs = new SeasonRuns(drivers, field, source.study().weather().missingRainLimitDays());
    }

    Observation.StandKey key() {
        return key;
    }

    WatchedRun run(List<CalibratedParameter> parameters, double[] point, CropParameters crop) {
        SoilProfile changed = soil;
        for (SoilFactor factor : SoilFactor.values()) {
            double product = 1.0;
            for (int i = 0; i < point.length; i++) {
                CalibratedParameter parameter = parameters.get(i);
                if (parameter.soil().equals(Optional.of(factor)) && parameter.isOfSoil(key.site(), key.zone())) {
                    product *= point[i];
                }
            }
            if (product != 1.0) {
                changed = factor == SoilFactor.AVAILABLE_WATER
                        ? changed.withAvailableWaterTimes(product)
                        : changed.withDepthTimes(product);
            }
        }
        return runs.simulate(field.withCrop(crop).withSoil(changed), days);
    }

    static CropParameters crop(CropParameters base, List<CalibratedParameter> parameters, double[] point) {
        Map<CropParameter, Double> changes = new EnumMap<>(CropParameter.class);
        for (int i = 0; i < point.length; i++) {
            Optional<CropParameter> changed = parameters.get(i).crop();
            if (changed.isPresent()) {
                changes.put(changed.get(), point[i]);
            }
        }
        return base.with(changes);
    }

    /** Writes the simulated values into their places. */
    void fill(WatchedRun run, double[] simulated) {
        for (int i = 0; i < places.length; i++) {
            simulated[places[i]] = value(run, observations.get(i), watched[i]);
        }
    }

    private double value(WatchedRun run, Observation observation, int day) {
        SeasonRecord season = season(run, observation.growthYear());
        return switch (observation.variable()) {
            case YIELD -> of(season, SeasonVariable.HARVESTED);
            case HARVEST_MOISTURE -> of(season, SeasonVariable.HARVEST_MOISTURE);
            case LEAF_AREA_INDEX -> run.leafAreaIndex(day);
            case INTERCEPTED_FRACTION -> run.interceptedFraction(day);
            case STANDING -> run.standingMgHa(day);
            case SOIL_WATER -> run.soilWaterMm(day, observation.depthM());
            case EMERGENCE ->
                season == null ? Double.NaN : dayOfYear(season, season.dates().emergence());
            case CANOPY_END ->
                season == null ? Double.NaN : dayOfYear(season, season.dates().canopyEnd());
        };
    }

    private double dayOfYear(SeasonRecord season, @Nullable LocalDate date) {
        return date == null
                ? Double.NaN
                : ChronoUnit.DAYS.between(GrowthCalendar.firstDay(site, season.growthYear()), date) + 1.0;
    }

    private static double of(@Nullable SeasonRecord season, SeasonVariable variable) {
        return season == null ? Double.NaN : season.value(variable);
    }

    /** Returns the season of a growth year, null if the run has none. */
    static @Nullable SeasonRecord season(WatchedRun run, int growthYear) {
        List<SeasonRecord> seasons = run.seasons();
        if (seasons.isEmpty()) {
            return null;
        }
        int at = growthYear - seasons.get(0).growthYear();
        return at >= 0 && at < seasons.size() ? seasons.get(at) : null;
    }
}
