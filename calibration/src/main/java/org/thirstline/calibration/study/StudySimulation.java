package org.thirstline.calibration.study;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import org.thirstline.calibration.error.CalibrationError;
import org.thirstline.calibration.response.DroughtResponse;
import org.thirstline.io.study.Study;
import org.thirstline.io.study.Zone;
import org.thirstline.io.text.YearSpan;
import org.thirstline.io.weather.WeatherRecord;
import org.thirstline.model.climate.NormalPeriod;
import org.thirstline.model.climate.Normals;
import org.thirstline.model.climate.RainfallDeficit;
import org.thirstline.model.climate.SeasonClass;
import org.thirstline.model.climate.Terciles;
import org.thirstline.model.climate.WindowRain;
import org.thirstline.model.engine.PairedRuns;
import org.thirstline.model.error.InputException;
import org.thirstline.model.result.SeasonRecord;
import org.thirstline.model.result.SeasonStatus;
import org.thirstline.model.result.SeasonVariable;
import org.thirstline.model.result.StandResult;
import org.thirstline.model.result.YieldLedger;
import org.thirstline.model.weather.DailyDrivers;

/** Simulates every zone of a study and sets each year beside what is normal. Stateless and thread-safe. */
public final class StudySimulation {

    /** Age from which a stand counts as full-grown, so that its drought response is not diluted by youth (common practice, no source). */
    public static final int FULL_GROWN_AGE = 3;

    private StudySimulation() {}

    /**
     * Runs a study.
     *
     * @param study what to run
     * @param weather its weather
     * @param threads zones simulated at once, at least 1; the result does not depend on it
     * @throws InputException if the weather holds no growth year of the stand
     */
    public static StudyOutcome run(Study study, WeatherRecord weather, int threads) {
        DailyDrivers drivers = DailyDrivers.of(study.site(), weather.series());
        RainfallDeficit deficit = deficit(study, weather);
        Map<Integer, SeasonClass> classes = classes(study, deficit);
        List<ZoneOutcome> zones = zones(study, drivers, deficit, threads);
        if (zones.stream().allMatch(zone -> zone.stand().seasons().isEmpty())) {
            throw new InputException(
                    CalibrationError.NO_SEASON,
                    study.stand().plantingDate(),
                    weather.series().start(),
                    weather.series().end());
        }
        return new StudyOutcome(study, weather, drivers, deficit, classes, zones, notices(deficit, zones));
    }

    /** The normal is the study's, or that of the last thirty growth years the weather holds. */
    private static RainfallDeficit deficit(Study study, WeatherRecord weather) {
        if (WindowRain.of(weather.series(), study.site(), study.season()).isEmpty()) {
            throw new InputException(
                    CalibrationError.NO_WINDOW,
                    weather.series().start(),
                    weather.series().end(),
                    study.season().from().toString().substring(2),
                    study.season().until().toString().substring(2));
        }
        RainfallDeficit all = RainfallDeficit.ofWholeRecord(weather.series(), study.site(), study.season());
        int lastYear = all.years().get(all.years().size() - 1).growthYear();
        NormalPeriod period = study.normalYears()
                .map(years -> NormalPeriod.of(years.first(), years.last()))
                .orElseGet(() -> NormalPeriod.of(lastYear - Normals.STANDARD_YEARS + 1, lastYear));
        return RainfallDeficit.of(weather.series(), study.site(), study.season(), period);
    }

    private static Map<Integer, SeasonClass> classes(Study study, RainfallDeficit deficit) {
        Map<Integer, SeasonClass> classes = new HashMap<>();
        List<WindowRain> reliable = deficit.years().stream()
                .filter(year -> deficit.isReliable(year.growthYear()))
                .toList();
        if (study.classes().isGiven()) {
            reliable.forEach(year -> classes.put(year.growthYear(), SeasonClass.MIDDLE));
            study.classes().dry().forEach(year -> classes.put(year, SeasonClass.DRY));
            study.classes().wet().forEach(year -> classes.put(year, SeasonClass.WET));
        } else if (reliable.size() >= Terciles.MINIMUM_SEASONS) {
            Terciles terciles = Terciles.of(
                    reliable.stream().mapToDouble(WindowRain::rainMm).toArray());
            reliable.forEach(year -> classes.put(year.growthYear(), terciles.classOf(year.rainMm())));
        }
        return classes;
    }

    private static List<ZoneOutcome> zones(Study study, DailyDrivers drivers, RainfallDeficit deficit, int threads) {
        ForkJoinPool pool = new ForkJoinPool(Math.max(1, threads));
        try {
            List<ForkJoinTask<ZoneOutcome>> tasks = new ArrayList<>();
            for (Zone zone : study.zones()) {
                tasks.add(pool.submit(() -> zone(study, zone, drivers, deficit)));
            }
            return tasks.stream().map(ForkJoinTask::join).toList();
        } finally {
            pool.shutdown();
        }
    }

    private static ZoneOutcome zone(Study study, Zone zone, DailyDrivers drivers, RainfallDeficit deficit) {
        StandResult simulated =
                PairedRuns.simulate(drivers, study.field(zone), study.weather().missingRainLimitDays());
        List<SeasonRecord> seasons = simulated.seasons().stream()
                .filter(season -> inYears(study, season.growthYear()))
                .map(season -> season.with(
                        SeasonVariable.RAIN_DEFICIT,
                        deficit.deficitMm(season.growthYear()).orElse(Double.NaN)))
                .toList();
        List<YieldLedger> ledgers = simulated.ledgers().stream()
                .filter(ledger -> inYears(study, ledger.growthYear()))
                .toList();
        List<SeasonRecord> used = seasons.stream()
                .filter(season -> season.isComplete()
                        && season.standAge() >= FULL_GROWN_AGE
                        && deficit.isReliable(season.growthYear()))
                .toList();
        return new ZoneOutcome(zone, new StandResult(seasons, ledgers, simulated.daily()), response(used), used);
    }

    private static boolean inYears(Study study, int growthYear) {
        return study.years().map((YearSpan years) -> years.contains(growthYear)).orElse(true);
    }

    private static DroughtResponse response(List<SeasonRecord> seasons) {
        double[] deficits = column(seasons, SeasonVariable.RAIN_DEFICIT);
        double[] penalties = column(seasons, SeasonVariable.DROUGHT_PENALTY);
        int[] years = seasons.stream().mapToInt(SeasonRecord::growthYear).toArray();
        return DroughtResponse.fit(deficits, penalties, years);
    }

    private static double[] column(List<SeasonRecord> seasons, SeasonVariable variable) {
        return seasons.stream().mapToDouble(season -> season.value(variable)).toArray();
    }

    private static List<String> notices(RainfallDeficit deficit, List<ZoneOutcome> zones) {
        List<String> notices = new ArrayList<>();
        deficit.normals().notice().ifPresent(notices::add);
        Map<SeasonStatus, List<Integer>> without = new EnumMap<>(SeasonStatus.class);
        for (SeasonRecord season : zones.get(0).stand().seasons()) {
            if (!season.isComplete()) {
                without.computeIfAbsent(season.status(), status -> new ArrayList<>())
                        .add(season.growthYear());
            }
        }
        without.forEach((status, years) -> notices.add(
                "No yield for " + years.toString().replaceAll("[\\[\\]]", "") + ": " + status.words() + "."));
        if (zones.get(0).stand().completeSeasons().isEmpty()) {
            notices.add("No growth year is complete, so there is no yield to report.");
        }
        return notices;
    }
}
